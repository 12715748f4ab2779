import { performance } from 'node:perf_hooks';
import {
  atlanticSalmon,
  type BoxInput,
  brownTrout,
  emptyDays,
  type ForecastInput,
  ForecastMemory,
  forecast,
  Origin,
  type StationDays,
} from '../forecasting/index.js';
import { type BenchRow, lessIsBetter, median } from './row.js';

const DAY = 86_400_000;
const dayOf = (iso: string) => Date.parse(`${iso}T00:00Z`) / DAY;
const AS_OF = dayOf('2026-02-15');
const PLANTED = dayOf('2025-11-03') + 0.5;
/** Five boxes lie at a site, and a site has one station; no more than forty of them, as a region would have. */
const BOXES_A_SITE = 5;
const MOST_SITES = 40;

/** An invented station with twelve past winters and the one at hand. */
function station(number: number): StationDays {
  const firstDay = dayOf('2013-09-01');
  const days = emptyDays(firstDay, AS_OF - firstDay + 1);
  for (let i = 0; i < days.mean.length; i++) {
    const day = firstDay + i;
    const winter = Math.floor(day / 365.25);
    const season = 7 - 10.5 * Math.cos((2 * Math.PI * ((day % 365.25) - 28)) / 365.25);
    const celsius = season + 1.3 * Math.sin(winter * 7.3) + Math.sin(day / 9 + number) + (number % 7) * 0.2;
    days.mean[i] = Math.max(0, celsius);
    days.coverage[i] = 1;
    days.spread[i] = 0;
    days.origin[i] = Origin.measured;
  }
  return {
    station: `station-${number}`,
    kind: 'stream',
    latitude: null,
    longitude: null,
    accuracy: 0.2,
    reports: true,
    days,
  };
}

/** A season of so many boxes, every third of them holding two lots. */
export function benchSeason(boxes: number): ForecastInput {
  const sites = Math.min(MOST_SITES, Math.ceil(boxes / BOXES_A_SITE));
  const before = { kind: 'stated', celsius: 6 } as const;
  return {
    asOf: AS_OF,
    stations: Array.from({ length: sites }, (_, i) => station(i)),
    sightings: [],
    curve: null,
    lots: [
      { lot: 'A', fertilised: PLANTED - 2, table: atlanticSalmon, before },
      { lot: 'B', fertilised: PLANTED - 9, table: brownTrout, before },
    ],
    boxes: Array.from({ length: boxes }, (_, i): BoxInput => {
      const first = { lot: 'A', eggs: 700 + i, planted: PLANTED };
      const second = { lot: 'B', eggs: 300, planted: PLANTED };
      return {
        box: `box-${i}`,
        site: `site-${i % sites}`,
        fills: i % 3 === 0 ? [first, second] : [first],
        lifted: null,
        stations: [`station-${i % sites}`],
      };
    }),
    oldRule: { thermalUnits: 500, base: 0 },
    seed: 11,
  };
}

export function milliseconds(work: () => void): number {
  const begin = performance.now();
  work();
  return performance.now() - begin;
}

/** The same boxes, each worked out alone: nothing shared. Timed on up to five of them and taken as many times. */
function eachAlone(input: ForecastInput): number {
  const sample = input.boxes.slice(0, 5);
  const spent = milliseconds(() => {
    for (const box of sample) forecast({ ...input, boxes: [box] });
  });
  return (spent / sample.length) * input.boxes.length;
}

/** Seconds of all boxes worked out anew into an empty memory, and again after one new download at one of the stations. */
function renewed(boxes: number, times: number): { readonly anew: number; readonly after: number } {
  const now = benchSeason(boxes);
  const unread = emptyDays(now.stations[0].days.firstDay, 0);
  const kept = now.stations[0].days.mean.length - 30;
  const earlier = { ...unread };
  for (const column of ['mean', 'min', 'max', 'coverage', 'spread'] as const)
    earlier[column] = now.stations[0].days[column].slice(0, kept);
  earlier.origin = now.stations[0].days.origin.slice(0, kept);
  const [first, ...others] = now.stations;
  const before = { ...now, stations: [{ ...first, days: earlier }, ...others] };
  const turns = Array.from({ length: times }, () => {
    const memory = new ForecastMemory();
    const anew = milliseconds(() => void forecast(before, memory));
    return { anew, after: milliseconds(() => void forecast(now, memory)) };
  });
  return {
    anew: median(turns.map(({ anew }) => anew)) / 1000,
    after: median(turns.map(({ after }) => after)) / 1000,
  };
}

/**
 * The forecast of 1 to 1000 boxes beside the same boxes worked out one by one, and of 1000 after one more download.
 * `quick` keeps 200 and 1000, the latter as the service works it out first, with a memory to fill.
 */
export function forecastBench({ quick }: { readonly quick: boolean }): BenchRow[] {
  const sizes = quick ? [200] : [1, 10, 100, 200, 1000];
  forecast(benchSeason(10));
  const rows = sizes.map((boxes) => rowOf(boxes, secondsOf(boxes, boxes <= 10 ? 15 : 3)));
  const { anew, after } = renewed(1000, quick ? 1 : 3);
  const reference = { name: 'everything worked out anew', value: anew };
  return [
    ...rows,
    ...(quick ? [rowOf(1000, anew)] : []),
    lessIsBetter('forecast-1000-after-download', after, 's', reference),
  ];
}

function secondsOf(boxes: number, times: number): number {
  const input = benchSeason(boxes);
  return median(Array.from({ length: times }, () => milliseconds(() => void forecast(input)))) / 1000;
}

function rowOf(boxes: number, seconds: number): BenchRow {
  const value = eachAlone(benchSeason(boxes)) / 1000;
  return lessIsBetter(`forecast-${boxes}`, seconds, 's', { name: 'each box worked out alone', value });
}
