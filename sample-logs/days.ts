import { type Kept, rounded } from './download.js';
import { DAY, FIRST, HOUR, type Hourly } from './hours.js';

/** Mean, lowest and highest hour of one local day. */
export interface Day {
  /** Midnight, local standard time. */
  readonly at: number;
  readonly mean: number;
  readonly min: number;
  readonly max: number;
}

/** The days from midnight `from` up to and without midnight `to`. */
export function daysOf(hourly: Hourly, from: number, to: number, decimals = 1): Day[] {
  return Array.from({ length: (to - from) / DAY }, (_, d) => {
    const first = (from - FIRST) / HOUR + 24 * d;
    const hours = Array.from(hourly.subarray(first, first + 24));
    const mean = hours.reduce((sum, value) => sum + value, 0) / hours.length;
    return {
      at: from + d * DAY,
      mean: rounded(mean, decimals),
      min: rounded(Math.min(...hours), decimals),
      max: rounded(Math.max(...hours), decimals),
    };
  });
}

export const means = (days: readonly Day[]): Kept[] => days.map(({ at, mean }) => ({ at, value: mean }));

/** A local date as ISO: 2025-11-04. */
export const localDate = (midnight: number): string =>
  new Date(midnight - 4 * HOUR).toISOString().slice(0, 10);
