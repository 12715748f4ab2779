import {
  type DayNumber,
  measuredDays,
  type StationDays,
  type Water,
  type WaterInput,
} from '../../../forecasting/index.js';

/** An invented country: one weather, streams that follow it each in its own way, the same every time. */

export const dayOf = (iso: string): DayNumber => Date.parse(`${iso}T00:00Z`) / 86_400_000;

const FIRST = dayOf('2014-01-01');
const LAST = dayOf('2027-12-31');

/** Red noise: each day keeps `keep` of the day before (an autoregression of order one), standard deviation `sd`. */
export function redNoise(seed: number, keep: number, sd: number): (day: DayNumber) => number {
  let state = seed >>> 0;
  const uniform = () => {
    // Numerical Recipes' quick generator (Press et al. 1992: memory): enough for weather
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 4294967296;
  };
  const normal = () => Math.sqrt(-2 * Math.log(uniform() + 1e-12)) * Math.cos(2 * Math.PI * uniform());
  const values = new Float64Array(LAST - FIRST + 1);
  for (let d = 1; d < values.length; d++)
    values[d] = keep * values[d - 1] + Math.sqrt(1 - keep * keep) * sd * normal();
  return (day) => values[day - FIRST];
}

const slow = redNoise(5, 0.985, 1.3);
const fast = redNoise(9, 0.8, 1);

/** Air: colder than any water in winter. */
export const air = (day: DayNumber): number =>
  4 - 14 * Math.cos((2 * Math.PI * ((day % 365.25) - 20)) / 365.25) + 2 * (slow(day) + fast(day));

/** A stream that freezes: an autumn, a plateau at 0 °C, a melt. */
export const stream = (day: DayNumber): number =>
  Math.max(0, 6 - 9 * Math.cos((2 * Math.PI * ((day % 365.25) - 32)) / 365.25) + slow(day) + fast(day));

/** A stream that springs keep from freezing. */
export const springs = (day: DayNumber): number =>
  8 - 3.5 * Math.cos((2 * Math.PI * ((day % 365.25) - 32)) / 365.25) + 0.5 * (slow(day) + fast(day));

export interface Invented {
  readonly from?: string;
  readonly to?: string;
  readonly kind?: StationDays['kind'];
  readonly place?: readonly [number, number] | null;
}

/** A station whose record is `celsius` of each day; NaN is a day without a reading. */
export function station(
  name: string,
  celsius: (day: DayNumber) => number,
  { from = '2018-09-01', to = '2026-12-31', kind = 'stream', place = [47.5, -66.1] }: Invented = {},
): StationDays {
  const first = dayOf(from);
  const means = Float64Array.from({ length: dayOf(to) - first + 1 }, (_, d) => celsius(first + d));
  return {
    station: name,
    kind,
    latitude: place === null ? null : place[0],
    longitude: place === null ? null : place[1],
    accuracy: 0.2,
    reports: true,
    days: measuredDays(first, means),
  };
}

export const between = (day: DayNumber, from: string, to: string): boolean =>
  day >= dayOf(from) && day <= dayOf(to);

/** What a forecast of 15 February asks, of eggs fertilised on 1 November. */
export function asked(
  target: StationDays,
  neighbours: readonly StationDays[],
  more: Partial<WaterInput> = {},
) {
  const input: WaterInput = {
    asOf: dayOf('2026-02-15'),
    from: dayOf('2025-11-01'),
    to: dayOf('2026-07-31'),
    target,
    neighbours,
    sightings: [],
    curve: null,
    seed: 7,
    traces: 101,
    ...more,
  };
  return input;
}

/** One column of the water between two days, both included. */
export const cut = (water: Water, column: ArrayLike<number>, from: string, to: string): number[] =>
  Array.from(column).slice(dayOf(from) - water.days.firstDay, dayOf(to) - water.days.firstDay + 1);

export const meanOf = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / values.length;

/** Days of a stretch, as numbers. */
export const daysFrom = (from: string, to: string): DayNumber[] =>
  Array.from({ length: dayOf(to) - dayOf(from) + 1 }, (_, d) => dayOf(from) + d);

/** Standard deviation over the traces of the degree-days between two days: how wide the water is. */
export function widthOf(water: Water, from: string, to: string): number {
  const sums = water.traces.map((trace) =>
    cut(water, trace, from, to).reduce((sum, value) => sum + value, 0),
  );
  const mean = meanOf(sums);
  return Math.sqrt(meanOf(sums.map((sum) => (sum - mean) ** 2)));
}

export const codes = (water: Water): string[] => water.remarks.map(({ code }) => code);
