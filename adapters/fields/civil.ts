/** Milliseconds in a day of 24 hours. */
export const DAY = 86_400_000;
export const HOUR = 3_600_000;
export const MINUTE = 60_000;

const lengths = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

export function isLeap(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** Days in a month of the Gregorian calendar, `month` 1-12; 0 for any other month. */
export function daysInMonth(year: number, month: number): number {
  if (month < 1 || month > 12) return 0;
  return month === 2 && isLeap(year) ? 29 : lengths[month - 1];
}

/**
 * Days from 1970-01-01 to a date of the proleptic Gregorian calendar; NaN where the calendar has no such date.
 * Era arithmetic with years that begin in March, so that the leap day comes last.
 */
export function dayNumber(year: number, month: number, day: number): number {
  if (day < 1 || day > daysInMonth(year, month)) return Number.NaN;
  const y = month <= 2 ? year - 1 : year;
  const era = Math.floor(y / 400);
  const yearOfEra = y - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + day - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

/** Two-digit years: 70-99 are 1970-1999, the rest 2000-2069 (POSIX puts the change at 69; no logger is that old). */
export function fullYear(twoDigits: number): number {
  return twoDigits >= 70 ? 1900 + twoDigits : 2000 + twoDigits;
}
