import type { BoxForecast } from '../../../forecasting/forecast.js';
import { type DaySeries, Origin } from '../../../forecasting/index.js';
import type { Water } from '../../../forecasting/water.js';
import { waterChart } from '../../charts/index.js';
import { decimal } from '../../words/index.js';
import { ChartFigure, Figures } from '../parts/figure.js';
import { WorkedOut } from '../parts/frame.js';
import type { View } from '../view.js';

interface WaterProps {
  readonly view: View;
  readonly box: BoxForecast;
  readonly asOf: number;
  readonly stationName: (station: string) => string;
}

/** A box's water by origin, and where each filled stretch came from. */
export function WaterSection({ view, box, asOf, stationName }: WaterProps) {
  const { say } = view;
  const { water } = box;
  if (water === null || water.days.origin.every((origin) => origin === Origin.none))
    return (
      <section>
        <h2>{say('page-box-water', {})}</h2>
        <p>{say('page-box-water-none', {})}</p>
      </section>
    );
  const title = say('page-box-water-finding', { station: stationName(water.station), ...box.days });
  const unit = say('page-box-water-unit', {});
  return (
    <section>
      <h2>{say('page-box-water', {})}</h2>
      <ChartFigure
        view={view}
        title={title}
        svg={waterChart({ language: view.language, title, days: water.days, asOf, unit })}
        note={say('page-box-water-key', {})}
        columns={[
          { name: say('page-week-of', {}) },
          { name: say('page-mean-c', {}), number: true },
          { name: say('page-low-c', {}), number: true },
          { name: say('page-high-c', {}), number: true },
          { name: say('page-origin', {}) },
        ]}
        rows={weeks(view, water.days)}
      />
      <p class="no-print">
        <WorkedOut view={view} about="projected" />
      </p>
      <h3>{say('page-box-filled', {})}</h3>
      <Filled view={view} water={water} box={box.box} stationName={stationName} />
    </section>
  );
}

interface FilledProps {
  readonly view: View;
  readonly water: Water;
  readonly box: string;
  readonly stationName: (station: string) => string;
}

function Filled({ view, water, box, stationName }: FilledProps) {
  const { say, language } = view;
  if (water.stretches.length === 0) return <p>{say('page-box-filled-none', {})}</p>;
  const figure = (value: number, digits = 2) => decimal(language, value, digits);
  const [first, second] = [stationName(water.station), ''];
  return (
    <>
      <Figures
        caption={say('page-box-filled', {})}
        columns={[
          { name: say('page-box-filled-days', {}) },
          { name: say('page-box-filled-from', {}) },
          { name: say('page-box-weight', {}), number: true },
          { name: say('page-box-slope', {}), number: true },
          { name: say('page-box-intercept', {}), number: true },
          { name: say('page-box-n', {}), number: true },
          { name: 'r²', number: true },
          { name: say('page-box-error', {}), number: true },
        ]}
        rows={water.stretches.flatMap(({ from, to, sources }) =>
          sources.map((source, i) => [
            i > 0 ? '' : from === to ? view.short(from) : `${view.short(from)} – ${view.short(to)}`,
            stationName(source.station),
            view.percent(source.weight),
            figure(source.slope),
            figure(source.intercept),
            view.whole(source.n),
            figure(source.r2),
            figure(source.error),
          ]),
        )}
      />
      <p class="onward">
        <a href={`/boxes/${encodeURIComponent(box)}/filled`}>
          {say('page-box-scatter-link', { from: first, to: second })}
        </a>
      </p>
    </>
  );
}

/** Seven days a row: their mean, least and greatest, and where they come from. */
function weeks(view: View, days: DaySeries): string[][] {
  const names: Record<number, string> = {
    [Origin.measured]: view.say('page-origin-measured', {}),
    [Origin.filled]: view.say('page-origin-filled', {}),
    [Origin.projected]: view.say('page-origin-projected', {}),
  };
  const rows: string[][] = [];
  for (let start = 0; start < days.mean.length; start += 7) {
    const means = [...days.mean.slice(start, start + 7)].filter(Number.isFinite);
    if (means.length === 0) continue;
    const origins = [...new Set(days.origin.slice(start, start + 7))].flatMap(
      (origin) => names[origin] ?? [],
    );
    const figure = (value: number) => decimal(view.language, value, 1);
    rows.push([
      view.long(days.firstDay + start),
      figure(means.reduce((sum, mean) => sum + mean, 0) / means.length),
      figure(Math.min(...means)),
      figure(Math.max(...means)),
      origins.join(', '),
    ]);
  }
  return rows;
}
