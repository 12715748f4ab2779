import type { FaceWord } from '../../../field/face-words.js';
import type { PreparedLot } from '../../../field/prepared.js';
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

/** Hours before the span in which handling kills from which it is said, as src/autumn has it. */
const WARNED_BEFORE = 24;

/** What is to be heard before eggs of a lot go in, as far as what was answered and prepared can say it. */
export function plantingWords(
  lot: PreparedLot | undefined,
  transport: string,
  site: string,
  at: number,
): readonly FaceWord[] {
  const degrees = (given: string) => (given === '' ? Number.NaN : Number(plainFigure(given)));
  const [transportC, siteC] = [degrees(transport), degrees(site)];
  const said: FaceWord[] = [];
  const kept = Number.isFinite(transportC) ? transportC : siteC;
  if (lot !== undefined && Number.isFinite(kept)) {
    const step = Math.min(Math.max(0, Math.round(kept)), lot.killsFrom.length - 1);
    const hours = (at - lot.fertilised) / 3_600_000;
    const [from, to] = [lot.killsFrom[step] ?? null, lot.killsTo[step] ?? null];
    if (from !== null && to !== null && hours < to) {
      if (hours >= from) said.push('must-not-handle');
      else if (from - hours <= WARNED_BEFORE) said.push('handle-soon');
    }
  }
  if (Math.abs(transportC - siteC) > TEMPERING_LIMIT) said.push('temper-now');
  const coldBelow = lot?.coldBelow ?? null;
  if (coldBelow !== null && siteC < coldBelow) said.push('cold-start');
  return said;
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
