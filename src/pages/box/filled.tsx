import { Origin } from '../../../forecasting/day-series.js';
import type { FilledStretch, Water } from '../../../forecasting/water.js';
import { scatterChart } from '../../charts/index.js';
import type { Group } from '../../group/index.js';
import { decimal } from '../../words/index.js';
import { ChartFigure } from '../parts/figure.js';
import { Frame, WorkedOut } from '../parts/frame.js';
import type { View } from '../view.js';

type SourceOfDays = FilledStretch['sources'][number];

export interface Pairing {
  readonly source: SourceOfDays;
  readonly pairs: readonly { readonly x: number; readonly y: number }[];
}

/** The stations that filled a box's gaps, each once (as it stood in the longest gap), with the days both measured. */
export async function pairings(group: Group, water: Water): Promise<Pairing[]> {
  const longest = [...water.stretches].sort((a, b) => b.to - b.from - (a.to - a.from));
  const sources = new Map<string, SourceOfDays>();
  for (const { sources: those } of longest)
    for (const source of those) if (!sources.has(source.station)) sources.set(source.station, source);
  const measured = async (station: string) => {
    const days = await group.days({ station, from: null, to: null });
    const known = new Map<number, number>();
    days.mean.forEach((mean, i) => {
      if (days.origin[i] === Origin.measured) known.set(days.firstDay + i, mean);
    });
    return known;
  };
  const own = await measured(water.station);
  const made: Pairing[] = [];
  for (const source of sources.values()) {
    const other = await measured(source.station);
    const pairs = [...own].flatMap(([day, y]) => {
      const x = other.get(day);
      return x === undefined ? [] : [{ x, y }];
    });
    made.push({ source, pairs });
  }
  return made;
}

interface FilledProps {
  readonly view: View;
  readonly box: string;
  readonly made: readonly Pairing[];
  readonly station: string;
  readonly stationName: (station: string) => string;
}

export function FilledPage({ view, box, made, station, stationName }: FilledProps) {
  const { say, language } = view;
  const figure = (value: number) => decimal(language, value, 2);
  const number = true;
  return (
    <Frame
      view={view}
      title={say('page-box-scatter-title', { box })}
      answer={say('page-box-scatter-answer', { count: made.length })}
      current="season"
    >
      <p>
        <a href={`/boxes/${encodeURIComponent(box)}`}>← {box}</a>
      </p>
      <p>
        {say('page-box-scatter-note', {})} <WorkedOut view={view} about="filled" />
      </p>
      <div class="pair">
        {made.map(({ source, pairs }) => {
          const [yName, xName] = [stationName(station), stationName(source.station)];
          const { n, error, slope, intercept } = source;
          const title = say('page-box-scatter-finding', { station: yName, from: xName, n, error });
          return (
            <ChartFigure
              view={view}
              title={title}
              svg={scatterChart({ language, title, pairs: thinned(pairs), slope, intercept, xName, yName })}
              columns={[
                { name: `${xName} (°C)`, number },
                { name: `${yName} (°C)`, number },
              ]}
              rows={everySo(pairs, 40).map(({ x, y }) => [figure(x), figure(y)])}
            />
          );
        })}
      </div>
    </Frame>
  );
}

/** More dots than this say no more. */
const thinned = (pairs: Pairing['pairs']) => everySo(pairs, 500);

function everySo<T>(all: readonly T[], most: number): T[] {
  const step = Math.max(1, Math.ceil(all.length / most));
  return all.filter((_, i) => i % step === 0);
}
