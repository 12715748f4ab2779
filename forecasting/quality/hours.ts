import type { DayNumber, EpochMillis } from '../units.js';

export const HOUR = 3_600_000;
export const DAY = 86_400_000;

/** Hourly means in a row, NaN where there is no reading; index i is hour `first + i` since 1970 UTC. */
export interface Hours {
  readonly first: number;
  readonly mean: Float64Array;
}

export const NO_HOURS: Hours = { first: 0, mean: new Float64Array(0) };

/** Means of the hours in which readings lie. */
export function hourly(at: Float64Array, value: Float64Array): Hours {
  if (at.length === 0) return NO_HOURS;
  const first = Math.floor(at[0] / HOUR);
  const length = Math.floor(at[at.length - 1] / HOUR) - first + 1;
  const mean = new Float64Array(length);
  const count = new Uint32Array(length);
  for (let i = 0; i < at.length; i++) {
    const hour = Math.floor(at[i] / HOUR) - first;
    mean[hour] += value[i];
    count[hour]++;
  }
  for (let i = 0; i < length; i++) mean[i] = count[i] === 0 ? Number.NaN : mean[i] / count[i];
  return { first, mean };
}

export function hourAt({ first, mean }: Hours, hour: number): number {
  return mean[hour - first] ?? Number.NaN;
}

/** What a day of hourly means looked like. */
export interface DayOfHours {
  readonly mean: number;
  readonly min: number;
  readonly max: number;
  /** Hours that have a reading. */
  readonly hours: number;
}

/** Days from `firstDay`; a day with fewer than half of its hours is NaN throughout. */
export interface Days {
  readonly firstDay: DayNumber;
  readonly mean: Float64Array;
  /** Highest less lowest hour; NaN where only a daily mean is known. */
  readonly swing: Float64Array;
  readonly min: Float64Array;
}

const LEAST_HOURS = 12;

/** A day's hours at the station's fixed offset. */
export function daily({ first, mean }: Hours, offsetMinutes: number): Days {
  const shift = Math.round(offsetMinutes / 60);
  const firstDay = Math.floor((first + shift) / 24);
  const length = mean.length === 0 ? 0 : Math.floor((first + shift + mean.length - 1) / 24) - firstDay + 1;
  const days = {
    firstDay,
    mean: new Float64Array(length).fill(Number.NaN),
    swing: new Float64Array(length).fill(Number.NaN),
    min: new Float64Array(length).fill(Number.NaN),
  };
  for (let d = 0; d < length; d++) {
    let [sum, count, low, high] = [0, 0, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
    const start = (firstDay + d) * 24 - shift - first;
    for (let i = Math.max(0, start); i < Math.min(mean.length, start + 24); i++) {
      const one = mean[i];
      if (Number.isNaN(one)) continue;
      sum += one;
      count++;
      low = Math.min(low, one);
      high = Math.max(high, one);
    }
    if (count < LEAST_HOURS) continue;
    days.mean[d] = sum / count;
    days.swing[d] = high - low;
    days.min[d] = low;
  }
  return days;
}

export function dayAt(
  days: { readonly firstDay: number; readonly mean: Float64Array },
  day: DayNumber,
): number {
  return days.mean[day - days.firstDay] ?? Number.NaN;
}

export function swingAt(days: Days, day: DayNumber): number {
  return days.swing[day - days.firstDay] ?? Number.NaN;
}

/** First hour of a day at an offset. */
export function firstHourOf(day: DayNumber, offsetMinutes: number): number {
  return day * 24 - Math.round(offsetMinutes / 60);
}

export function startOfHour(hour: number): EpochMillis {
  return hour * HOUR;
}

/** Middle value of those that are numbers; NaN where there is none. */
export function median(values: Iterable<number>): number {
  const sorted = Float64Array.from([...values].filter(Number.isFinite)).sort();
  if (sorted.length === 0) return Number.NaN;
  const middle = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}

/** Lowest and highest of those that are numbers; infinite where there is none. */
export function extremes(values: Float64Array): { readonly low: number; readonly high: number } {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const one of values) {
    if (one < low) low = one;
    if (one > high) high = one;
  }
  return { low, high };
}
