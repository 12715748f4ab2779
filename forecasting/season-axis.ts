import type { DayNumber } from './units.js';

/** Days in the longest season year. */
export const SEASON_DAYS = 366;

/**
 * A run of days with, for each, its season (named by the year it began in) and its day in that season, from 0.
 * A season begins on the calendar day on which the axis is asked to begin one, every year: two months before the
 * eggs, so that no winter is cut in two.
 */
export interface SeasonAxis {
  readonly first: DayNumber;
  readonly length: number;
  readonly season: Int16Array;
  readonly seasonDay: Int16Array;
  /** First day of the season that begins in `year`. */
  starts(year: number): DayNumber;
}

const MS_DAY = 86_400_000;

/** The axis from `first` to `last`, both included, its seasons beginning on the calendar day of `begins`. */
export function seasonAxis(first: DayNumber, last: DayNumber, begins: DayNumber): SeasonAxis {
  const calendar = new Date(begins * MS_DAY);
  const month = calendar.getUTCMonth();
  const date = month === 1 ? Math.min(28, calendar.getUTCDate()) : calendar.getUTCDate();
  const starts = (year: number): DayNumber => Date.UTC(year, month, date) / MS_DAY;
  const length = Math.max(0, last - first + 1);
  const season = new Int16Array(length);
  const seasonDay = new Int16Array(length);
  let year = new Date(first * MS_DAY).getUTCFullYear();
  if (starts(year) > first) year--;
  for (let i = 0; i < length; i++) {
    if (first + i >= starts(year + 1)) year++;
    season[i] = year;
    seasonDay[i] = first + i - starts(year);
  }
  return { first, length, season, seasonDay, starts };
}
