import type { DaySeries } from '../../forecasting/day-series.js';

/** A quantity that gathers day by day, as far as the possible winters agree: columns of one length. */
export interface Fan {
  readonly firstDay: number;
  readonly low: Float64Array;
  readonly middle: Float64Array;
  readonly high: Float64Array;
}

/** What a fan is gathered from: the best series, the possible ones beside it (both from `days.firstDay`). */
export interface Course {
  readonly days: DaySeries;
  readonly traces: readonly Float64Array[];
  readonly from: number;
  /** Gained in a day at so many °C. */
  readonly gain: (celsius: number) => number;
  /** What stands gathered at the end of a day already, where it is known better than by this water: the fan passes it. */
  readonly through: { readonly day: number; readonly value: number } | null;
}

/** Traces that are gathered: enough for an 80 % interval, few enough for a page. */
const TRACES = 120;

/** Gathers a quantity over the days from `from` on: the best course, and 10 % and 90 % of the possible ones. */
export function fanOf({ days, traces, from, gain, through }: Course): Fan {
  const start = Math.max(0, Math.floor(from) - days.firstDay);
  const length = days.mean.length - start;
  const some = traces.filter((_, i) => i % Math.max(1, Math.floor(traces.length / TRACES)) === 0);
  const best = gathered(days.mean, start, gain);
  const shift = through === null ? 0 : through.value - (best[through.day - days.firstDay - start] ?? 0);
  const possible = some.map((trace) => gathered(trace, start, gain));
  const low = new Float64Array(length);
  const high = new Float64Array(length);
  for (let d = 0; d < length; d++) {
    const those = possible
      .map((course) => course[d]!)
      .filter(Number.isFinite)
      .sort((a, b) => a - b);
    low[d] = (those[Math.floor(0.1 * (those.length - 1))] ?? Number.NaN) + shift;
    high[d] = (those[Math.ceil(0.9 * (those.length - 1))] ?? Number.NaN) + shift;
  }
  return { firstDay: days.firstDay + start, low, middle: best.map((value) => value + shift), high };
}

function gathered(mean: Float64Array, start: number, gain: Course['gain']): Float64Array {
  const sums = new Float64Array(Math.max(0, mean.length - start));
  let sum = 0;
  for (let d = 0; d < sums.length; d++) {
    sum += gain(mean[start + d]!);
    sums[d] = sum;
  }
  return sums;
}
