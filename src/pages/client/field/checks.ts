import type { FaceWord } from '../../../field/face-words.js';
import type { Question } from './forms.js';

/** 13 000, 13.000, 13,000: thousands set apart, which a program would read as 13. */
const GROUPED = /^\d{1,3}(?:[.,'’\s]\d{3})+$/;
const NUMBER = /^[+\-−]?\d+(?:[.,]\d+)?$/;

/** What is wrong with an answer, before it is kept; the service looks at it again. */
export function wrongWith({ as, must }: Pick<Question, 'as' | 'must'>, given: string): FaceWord | null {
  if (given === '') return must === true ? 'must' : null;
  if (as === 'count') {
    if (GROUPED.test(given)) return 'grouped';
    return /^\d+$/.test(given) ? null : NUMBER.test(given) ? 'whole-only' : 'not-number';
  }
  return as === 'figure' && !NUMBER.test(given) ? 'not-number' : null;
}

/** A measure as the service takes it. */
export const plainFigure = (given: string): string => given.replace(',', '.').replace('−', '-');

/** Degrees between transport and site from which tempering is asked for, as src/autumn has it. */
const TEMPERING_LIMIT = 2;

export function mustTemper(transport: string, site: string): boolean {
  if (transport === '' || site === '') return false;
  return Math.abs(Number(plainFigure(transport)) - Number(plainFigure(site))) > TEMPERING_LIMIT;
}

/** Eggs the counted samples come to; null before there is enough. */
export function samplesComeTo(
  samples: readonly Readonly<Record<string, string>>[],
  total: string,
): number | null {
  const sum = (name: string) =>
    samples.reduce((all, one) => all + Number(plainFigure(one[name] ?? '') || Number.NaN), 0);
  const eggs = (sum('eggs') / sum('amount')) * Number(plainFigure(total) || Number.NaN);
  return Number.isFinite(eggs) && eggs > 0 ? Math.round(eggs) : null;
}
