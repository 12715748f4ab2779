import { hindcastRows } from '../forecasting/hindcast/index.js';
import { atlanticSalmon, emptyDays, Origin, type StationDays } from '../forecasting/index.js';
import { type BenchRow, lessIsBetter } from './row.js';

const DAY = 86_400_000;
const FIRST = Date.parse('2012-07-01T00:00Z') / DAY;
const LEADS = [
  { month: 11, day: 1 },
  { month: 12, day: 15 },
  { month: 3, day: 1 },
];

/** Invented water: a sine, a plateau at 0, winters and brooks that differ. */
function brook(number: number, winters: number): StationDays {
  const days = emptyDays(FIRST, winters * 365 + 180);
  for (let d = 0; d < days.mean.length; d++) {
    const day = FIRST + d;
    const year = 6 - 8.5 * Math.cos((2 * Math.PI * ((day % 365.25) - 32)) / 365.25);
    const winter = 0.8 * Math.sin(3 * Math.floor(day / 365.25));
    days.mean[d] = Math.max(0, year + winter + Math.sin(day / 6) + 0.3 * Math.sin(day * (1.7 + number / 9)));
    days.coverage[d] = 1;
    days.spread[d] = 0;
    days.origin[d] = Origin.measured;
  }
  return {
    station: `brook-${number}`,
    kind: 'stream',
    latitude: 46 + number / 50,
    longitude: -66,
    accuracy: 0.2,
    reports: true,
    days,
  };
}

/** Hiding every one of ten winters at eight stations, three lead dates, beside the same for one station times eight. */
export function hindcastBench({ quick }: { readonly quick: boolean }): BenchRow[] {
  const stations = Array.from({ length: quick ? 3 : 8 }, (_, i) => brook(i, 10));
  const options = {
    cases: ['history', 'late-download', 'under-ice'] as const,
    table: atlanticSalmon,
    stages: ['hatch'] as const,
    fertilised: { month: 11, day: 1 },
    leads: LEADS,
    gapDays: [],
    winters: 'leave-one-out' as const,
    seed: 5,
    traces: 201,
  };
  const spent = (part: { part: number; of: number }): [seconds: number, rows: number] => {
    const begin = performance.now();
    const { rows } = hindcastRows(stations, options, part);
    return [(performance.now() - begin) / 1000, rows.length];
  };
  const [alone] = spent({ part: 0, of: stations.length });
  const [all, rows] = spent({ part: 0, of: 1 });
  return [
    lessIsBetter('hindcast', all, 's', {
      name: `one station times ${stations.length}`,
      value: alone * stations.length,
    }),
    lessIsBetter('hindcast-a-forecast', (1000 * all) / rows, 'ms', {
      name: 'one station alone',
      value: (1000 * alone * stations.length) / rows,
    }),
  ];
}
