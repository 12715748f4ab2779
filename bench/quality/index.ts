// `npm run bench -- --only quality [--winters 60] FILE.csv.gz…` (columns station,latitude,longitude,date,water_c,air_c): faults from a seed put into clean winters of public records
// (daily means made into hours, see network.ts): how many the checks find, kind by kind, and what they doubt in the
// clean winters, for each station and year.
import { type DaySeries, measuredDays } from '../../forecasting/day-series.js';
import { daily } from '../../forecasting/quality/hours.js';
import {
  type Finding,
  hourly as hours,
  judgeStation,
  type LoggerBattery,
  type RecordToJudge,
} from '../../forecasting/quality/index.js';
import type { BenchRow } from '../row.js';
import { faults } from './faults.js';
import {
  type DailyWinter,
  HOUR,
  type HourlyWinter,
  hourly,
  seedOf,
  WINTER_DAYS,
  wholeWinters,
} from './network.js';

const NEIGHBOURS = 4;
/** What is promised: at least this share of the faults of a kind found, and fewer false alarms a station and year. */
const PROMISED = { recall: 90, alarms: 0.5 };

const show = process.env.SHOW;

/** Days of all winters of a station, as its folder would keep them. */
const historyOf = new Map<string, DaySeries>();

/** Recall by kind of fault, and false alarms on the clean winters, over `most` winters of these files. */
export function qualityBench(files: readonly string[], most: number): BenchRow[] {
  if (files.length === 0) throw new Error('Name the files with daily records: --only quality FILE.csv.gz …');
  const tally = new Map(faults.map(({ name }) => [name, { put: 0, found: 0 }]));
  const alarms = new Map<string, number>();
  let [years, alone] = [0, 0];
  for (const file of files) {
    const winters = wholeWinters(file);
    const chosen = spread(winters, Math.ceil(most / files.length));
    years += chosen.length;
    alone += judgeFile(winters, chosen, tally, alarms);
  }
  const recall = [...tally].map(([name, { put, found }]): BenchRow => {
    const value = put === 0 ? 0 : (100 * found) / put;
    const reference = { name: 'promised', value: PROMISED.recall };
    return {
      name: `quality-${name}`,
      value,
      unit: `% of ${put} found`,
      reference,
      ratio: value / PROMISED.recall,
    };
  });
  const perYear = [...alarms].map(([kind, count]) => [kind, count / years] as const);
  const all = perYear.reduce((sum, [, each]) => sum + each, 0);
  const unit = `a station and year (${years})`;
  return [
    ...recall,
    {
      name: 'quality-winters-without-a-neighbour',
      value: alone,
      unit: `of ${years}: clocks and sensors that drift or jump cannot be told there and were not put`,
      reference: { name: 'all winters', value: years },
      ratio: 1,
    },
    {
      name: 'quality-false-alarms',
      value: all,
      unit,
      reference: { name: 'promised', value: PROMISED.alarms },
      ratio: PROMISED.alarms / all,
    },
    ...perYear.map(([kind, value]) => ({
      name: `quality-false-alarms-${kind}`,
      value,
      unit,
      reference: { name: 'of all', value: all },
      ratio: all / value,
    })),
  ];
}

function judgeFile(
  winters: readonly DailyWinter[],
  chosen: readonly DailyWinter[],
  tally: ReadonlyMap<string, { put: number; found: number }>,
  alarms: Map<string, number>,
): number {
  let alone = 0;
  const cache = new Map<DailyWinter, HourlyWinter>();
  const kept = (winter: DailyWinter) => {
    const made = cache.get(winter) ?? hourly(winter);
    cache.set(winter, made);
    return made;
  };
  for (const station of new Set(winters.map((one) => one.station))) {
    const own = winters.filter((one) => one.station === station).sort((a, b) => a.firstDay - b.firstDay);
    const first = own[0].firstDay;
    const all = new Float64Array(own[own.length - 1].firstDay - first + WINTER_DAYS).fill(Number.NaN);
    for (const winter of own) all.set(winter.water, winter.firstDay - first);
    historyOf.set(station, measuredDays(first, all));
  }
  for (const winter of chosen) {
    const clean = kept(winter);
    const beside = winters
      .filter((one) => one.firstDay === winter.firstDay && one.station !== winter.station)
      .slice(0, NEIGHBOURS)
      .map(kept);
    if (beside.length === 0) alone++;
    const judge = (at: Float64Array, value: Float64Array, battery?: LoggerBattery): Finding[] =>
      judgeStation({
        ...record(clean, beside, at, value),
        batteries: battery === undefined ? [] : [battery],
      });
    for (const { kind, flag, from, figures } of judge(clean.at, clean.water)) {
      if (flag !== 3 && flag !== 4) continue;
      alarms.set(kind, (alarms.get(kind) ?? 0) + 1);
      if (show === 'alarms')
        console.log(winter.station, new Date(from).toISOString(), kind, flag, JSON.stringify(figures));
    }
    for (const fault of faults) {
      if (fault.beside === true && beside.length === 0) continue;
      const put = fault.put(clean, seedOf(`${winter.station} ${winter.firstDay} ${fault.name}`));
      const count = tally.get(fault.name);
      if (put === null || count === undefined) continue;
      count.put++;
      const all = judge(put.at, put.value, put.battery);
      const found = all.some(
        ({ kind, flag, from, to }) =>
          fault.found.includes(kind) &&
          (flag >= 3 || fault.name.startsWith('clock')) &&
          from <= put.to + 12 * HOUR &&
          to >= put.from - 12 * HOUR,
      );
      if (found) count.found++;
      else if (show === fault.name)
        console.log(
          winter.station,
          new Date(put.from).toISOString(),
          new Date(put.to).toISOString(),
          all.map(({ kind, flag }) => `${kind} ${flag}`).join(', '),
        );
    }
  }
  return alone;
}

function spread<T>(all: readonly T[], most: number): T[] {
  const step = Math.max(1, all.length / most);
  return Array.from({ length: Math.min(most, all.length) }, (_, i) => all[Math.floor(i * step)]);
}

function record(
  clean: HourlyWinter,
  beside: readonly HourlyWinter[],
  at: Float64Array,
  value: Float64Array,
): RecordToJudge {
  const comparison = (station: string, times: Float64Array, values: Float64Array) => {
    const grid = hours(times, values);
    const days = daily(grid, 0);
    return { station, hours: grid, days, history: historyOf.get(station) ?? days };
  };
  return {
    kind: 'stream',
    quantity: 'temperature',
    at,
    value,
    offsetMinutes: 0,
    accuracy: 0.2,
    deployments: [],
    batteries: [],
    air: [comparison('air', clean.at, clean.air)],
    neighbours: beside.map((one) => comparison(one.station, one.at, one.water)),
    history: historyOf.get(clean.station) ?? null,
  };
}
