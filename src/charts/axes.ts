import type { Language } from '../words/index.js';
import { decimal, shortDay } from '../words/index.js';

/** Ticks of a time axis in the page's language: months where the span is long, days where it is short. */
export function timeTicks(language: Language) {
  return (date: Date): string => shortDay(language, date.getTime() / 86_400_000);
}

/** Numbers of an axis with the language's decimal mark and no more digits than they need. */
export function numberTicks(language: Language) {
  return (value: number): string =>
    decimal(language, value, Number.isInteger(value) ? 0 : value % 0.1 < 1e-9 ? 1 : 2);
}
