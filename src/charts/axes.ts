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

/** Numbers of an axis with the language's decimal mark, all with as many digits as the one that needs most. */
export function numberTicks(language: Language) {
  return (value: number, _index?: number, ticks: readonly number[] = [value]): string =>
    decimal(language, value, Math.max(...ticks.map(digitsOf)));
}

/** Digits after the mark that a tick needs: 0 to 3. */
function digitsOf(value: number): number {
  return [0, 1, 2].find((digits) => Math.abs(value - Number(value.toFixed(digits))) < 1e-9) ?? 3;
}
