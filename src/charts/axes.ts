import type { Language } from '../words/index.js';
import { decimal, shortDay } from '../words/index.js';

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

const rounded = (value: number, digits: number) => Math.round(value * 10 ** digits) / 10 ** digits;

/** Numbers of an axis with the language's decimal mark and no more digits than they need. */
export function numberTicks(language: Language) {
  return (value: number): string =>
    decimal(language, value, [0, 1].find((digits) => Math.abs(value - rounded(value, digits)) < 1e-9) ?? 2);
}
