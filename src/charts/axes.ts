import { DateTime } from 'luxon';
import type { Language } from '../words/index.js';
import { clock, decimal, shortDay } from '../words/index.js';

/** A span longer than this needs the year beside the month, days. */
const YEARS = 400;

/** Ticks of a time axis in the page's language: days of a season, months with their year over several. */
export function timeTicks(language: Language, span = 0) {
  const month = new Intl.DateTimeFormat(language === 'fr' ? 'fr-CA' : 'en-CA', {
    month: 'short',
    year: 'numeric',
    timeZone: 'UTC',
  });
  return (date: Date): string =>
    span > YEARS ? month.format(date) : shortDay(language, date.getTime() / 86_400_000);
}

/** Up to so many days an axis of readings names hours too. */
export const HOURS_UP_TO = 3;

/** Ticks of a few hours or days: the clock in the group's zone, and below it the day where it is a new one. */
export function clockTicks(language: Language, zone: string) {
  const day = (date: Date) =>
    shortDay(
      language,
      DateTime.fromJSDate(date, { zone }).startOf('day').setZone('utc', { keepLocalTime: true }).toMillis() /
        86_400_000,
    );
  return (date: Date, index: number, ticks: readonly Date[] = [date]): string => {
    const before = index === 0 ? undefined : ticks[index - 1];
    const named = before === undefined || day(before) !== day(date) ? `\n${day(date)}` : '';
    return `${clock(language, date.getTime(), zone)}${named}`;
  };
}

/** Numbers of an axis with the language's decimal mark, all with as many digits as the one that needs most. */
export function numberTicks(language: Language) {
  return (value: number, _index?: number, ticks: readonly number[] = [value]): string =>
    decimal(language, value, Math.max(...ticks.map(digitsOf)));
}

/** Digits after the mark that a tick needs: 0 to 3. */
function digitsOf(value: number): number {
  return [0, 1, 2].find((digits) => Math.abs(value - Number(value.toFixed(digits))) < 1e-9) ?? 3;
}
