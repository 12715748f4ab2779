import type { Celsius, DayNumber } from './units.js';

/** Where a day's value comes from. */
export const Origin = { none: 0, measured: 1, filled: 2, projected: 3 } as const;
export type Origin = (typeof Origin)[keyof typeof Origin];

/**
 * One value per local day, days in a row from `firstDay`; index i is day `firstDay + i`. All columns have the
 * same length. A day without a value has NaN in mean, min, max and origin `none`. A day of which only the mean is
 * known (a file of daily means, a filled or projected day) has NaN in min and max.
 */
export interface DaySeries {
  readonly firstDay: DayNumber;
  /** Time-weighted mean, °C. */
  readonly mean: Float64Array;
  readonly min: Float64Array;
  readonly max: Float64Array;
  /** Fraction of the day covered by usable readings, 0-1. */
  readonly coverage: Float64Array;
  /** One standard deviation of the mean, °C (0 for a measured day: the logger's accuracy is kept apart). */
  readonly spread: Float64Array;
  readonly origin: Uint8Array;
}

/** `length` days from `firstDay` without a value: NaN means, coverage 0, origin none. */
export function emptyDays(firstDay: DayNumber, length: number): DaySeries {
  return {
    firstDay,
    mean: new Float64Array(length).fill(Number.NaN),
    min: new Float64Array(length).fill(Number.NaN),
    max: new Float64Array(length).fill(Number.NaN),
    coverage: new Float64Array(length),
    spread: new Float64Array(length).fill(Number.NaN),
    origin: new Uint8Array(length),
  };
}

/** Measured daily means in a row from `firstDay` (NaN: no value), as a DaySeries. */
export function measuredDays(firstDay: DayNumber, means: ArrayLike<number>): DaySeries {
  const days = emptyDays(firstDay, means.length);
  for (let i = 0; i < means.length; i++) {
    if (!Number.isFinite(means[i])) continue;
    days.mean[i] = means[i];
    days.coverage[i] = 1;
    days.spread[i] = 0;
    days.origin[i] = Origin.measured;
  }
  return days;
}

export type StationKind = 'stream' | 'gravel' | 'air' | 'tank' | 'gauge';

/** A station's days as the forecast sees it, up to and including the as-of day and nothing later. */
export interface StationDays {
  readonly station: string;
  readonly kind: StationKind;
  readonly latitude: number | null;
  readonly longitude: number | null;
  /** Stated accuracy of its loggers, °C: one shared error over a deployment, never one a day. */
  readonly accuracy: Celsius;
  /** Whether it reports through the winter (false: readable only on an ice-free visit). */
  readonly reports: boolean;
  readonly days: DaySeries;
}
