import type { Hours } from '../hours.js';
import { hourAt, median } from '../hours.js';

/** Hours a clock is looked for to either side: beyond, a day's swing looks the same again. */
const FARTHEST = 11;
/** Days of one comparison, and from one to the next (ours). */
export const WINDOW_DAYS = 12;
export const STEP_DAYS = 4;
/** Without this much of a swing there is nothing to compare: the standard deviation within a day, °C (ours). */
const TELLING = 0.12;
/** A comparison less alike than this says nothing (ours). */
const LIKE = 0.6;

/** What a stretch of days says: hours the record's day runs behind the neighbour's. */
export interface Lag {
  /** First hour of the stretch. */
  readonly hour: number;
  readonly lag: number;
}

/** A record less its own mean of the day around: only the swing is left. */
export function swingOnly({ first, mean }: Hours): Hours {
  const out = new Float64Array(mean.length).fill(Number.NaN);
  let [sum, count] = [0, 0];
  for (let i = 0; i < mean.length + 12; i++) {
    if (i < mean.length && !Number.isNaN(mean[i])) {
      sum += mean[i];
      count++;
    }
    if (i >= 25 && !Number.isNaN(mean[i - 25])) {
      sum -= mean[i - 25];
      count--;
    }
    const centre = i - 12;
    if (centre >= 0 && count >= 20) out[centre] = mean[centre] - sum / count;
  }
  return { first, mean: out };
}

/**
 * Cross-correlation of two records' swings in stretches of days: the lag at which they agree best, to a fraction of an
 * hour (parabola through the best three). Stretches without a swing, or not alike at any lag, are left out.
 */
export function lags(own: Hours, other: Hours): Lag[] {
  const found: Lag[] = [];
  const length = WINDOW_DAYS * 24;
  const [from, to] = [
    Math.max(own.first, other.first),
    Math.min(own.first + own.mean.length, other.first + other.mean.length),
  ];
  for (let hour = from; hour + length <= to; hour += STEP_DAYS * 24) {
    if (deviation(own, hour, length) < TELLING || deviation(other, hour, length) < TELLING) continue;
    const like = Array.from({ length: 2 * FARTHEST + 1 }, (_, i) =>
      correlation(own, other, hour, length, i - FARTHEST),
    );
    const best = like.indexOf(Math.max(...like.map((one) => (Number.isNaN(one) ? -1 : one))));
    if (best < 0 || like[best] < LIKE) continue;
    found.push({ hour, lag: best - FARTHEST + peak(like[best - 1], like[best], like[best + 1]) });
  }
  return found;
}

/** Where between three equally spaced values their parabola is highest, −½ to ½. */
function peak(left: number | undefined, middle: number, right: number | undefined): number {
  if (left === undefined || right === undefined) return 0;
  const curve = left - 2 * middle + right;
  return curve >= 0 || Number.isNaN(curve) ? 0 : Math.max(-0.5, Math.min(0.5, (left - right) / (2 * curve)));
}

function deviation(hours: Hours, from: number, length: number): number {
  let [sum, count] = [0, 0];
  for (let hour = from; hour < from + length; hour++) {
    const one = hourAt(hours, hour);
    if (Number.isNaN(one)) continue;
    sum += one * one;
    count++;
  }
  return count < length * 0.7 ? 0 : Math.sqrt(sum / count);
}

/** Correlation of own(hour) with other(hour − lag): a record that runs `lag` hours behind agrees best there. */
function correlation(own: Hours, other: Hours, from: number, length: number, lag: number): number {
  let [xy, xx, yy, count] = [0, 0, 0, 0];
  for (let hour = from; hour < from + length; hour++) {
    const x = own.mean[hour - own.first];
    const y = other.mean[hour - lag - other.first];
    if (!(Number.isFinite(x) && Number.isFinite(y))) continue;
    xy += x * y;
    xx += x * x;
    yy += y * y;
    count++;
  }
  return count < length * 0.6 || xx === 0 || yy === 0 ? Number.NaN : xy / Math.sqrt(xx * yy);
}

/** Several neighbours' lags in one row: at each stretch the middle of those that speak. */
export function middleLags(each: readonly (readonly Lag[])[]): Lag[] {
  const byHour = new Map<number, number[]>();
  for (const one of each) {
    for (const { hour, lag } of one) {
      const stretch = Math.round(hour / (STEP_DAYS * 24));
      byHour.set(stretch, [...(byHour.get(stretch) ?? []), lag]);
    }
  }
  return [...byHour]
    .sort(([a], [b]) => a - b)
    .map(([stretch, values]) => ({ hour: stretch * STEP_DAYS * 24, lag: median(values) }));
}
