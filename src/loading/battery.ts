import { z } from 'zod';
import type { DownloadReport, EpochMillis } from '../../adapters/index.js';

const figure = z.object({ value: z.number(), at: z.number() });
const batterySchema = z.object({
  station: z.string(),
  column: z.string().nullable(),
  unit: z.enum(['V', '%']).nullable(),
  highest: figure.nullable(),
  lowest: figure.nullable(),
  last: figure.nullable(),
  low: z.object({ text: z.string(), at: z.number() }).nullable(),
});

/** What a load's file says of the battery of a station's logger; moments in epoch milliseconds, mV given in V. */
export type LoadedBattery = z.infer<typeof batterySchema>;

/** What a file says of batteries, by station; a figure without a moment is taken to be of its last reading. */
export function batteriesOf(
  { battery, series, summaries }: Pick<DownloadReport, 'battery' | 'series' | 'summaries'>,
  stationOf: (name: string | null) => string | null,
): LoadedBattery[] {
  return battery.flatMap(({ station: name, column, unit, highest, lowest, last, low }) => {
    const station = stationOf(name);
    const lasts = summaries
      .filter((_, i) => name === null || series[i]?.station === name)
      .map((one) => one.last);
    if (station === null || lasts.length === 0) return [];
    const end = Math.max(...lasts);
    const timed = <One extends { readonly at: EpochMillis | null }>(one: One | null) =>
      one === null ? null : { ...one, at: one.at ?? end };
    return [
      {
        station,
        column,
        unit,
        highest: timed(highest),
        lowest: timed(lowest),
        last: timed(last),
        low: timed(low),
      },
    ];
  });
}

/** What a load's file said of batteries, as the catalogue remembers it; nothing where an earlier version wrote it. */
export function batteriesIn(remembered: string): readonly LoadedBattery[] {
  const { success, data } = z.object({ battery: z.array(batterySchema) }).safeParse(JSON.parse(remembered));
  return success ? data.battery : [];
}

/** Both as one, station by station: a gathered load tells of the battery what its files told. */
export function mergedBatteries(
  before: readonly LoadedBattery[],
  after: readonly LoadedBattery[],
): LoadedBattery[] {
  const all = new Map(before.map((one) => [one.station, one]));
  for (const next of after) {
    const known = all.get(next.station);
    // V and % are no one scale: the later file's stands.
    if (known === undefined || (known.unit !== null && next.unit !== null && known.unit !== next.unit)) {
      all.set(next.station, next);
      continue;
    }
    const choose = (
      key: 'highest' | 'lowest' | 'last',
      better: (one: number, other: number) => boolean,
      of: 'value' | 'at',
    ) => {
      const [one, other] = [known[key], next[key]];
      if (one === null || other === null) return one ?? other;
      return better(other[of], one[of]) ? other : one;
    };
    const [first, second] = [known.low, next.low];
    all.set(next.station, {
      station: next.station,
      column: next.column ?? known.column,
      unit: next.unit ?? known.unit,
      highest: choose('highest', (one, other) => one > other, 'value'),
      lowest: choose('lowest', (one, other) => one < other, 'value'),
      last: choose('last', (one, other) => one >= other, 'at'),
      low: first === null || second === null ? (first ?? second) : second.at < first.at ? second : first,
    });
  }
  return [...all.values()];
}

/** What the catalogue remembers of a load, with other batteries in it. */
export function rememberedWith(remembered: string, battery: readonly LoadedBattery[]): string {
  const known: unknown = JSON.parse(remembered);
  return JSON.stringify({ ...(typeof known === 'object' ? known : {}), battery });
}
