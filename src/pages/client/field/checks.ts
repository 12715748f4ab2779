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

/** What is wrong in rows of counted samples: each needs both its numbers. */
export function wrongWithSamples(samples: readonly Readonly<Record<string, string>>[]): FaceWord | null {
  for (const { eggs = '', amount = '' } of samples) {
    if (eggs === '' && amount === '') continue;
    const wrong =
      wrongWith({ as: 'count', must: true }, eggs) ?? wrongWith({ as: 'figure', must: true }, amount);
    if (wrong !== null) return wrong;
  }
  return null;
}

/** A measure as the service takes it. */
export const plainFigure = (given: string): string => given.replace(',', '.').replace('−', '-');

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
  const apart = lot?.temperBeyond ?? null;
  if (apart !== null && Math.abs(transportC - siteC) > apart) said.push('temper-now');
  const coldBelow = lot?.coldBelow ?? null;
  if (coldBelow !== null && siteC < coldBelow) said.push('cold-start');
  return said;
}

/** Seconds a clock that shows a time of day is fast beside the phone's: the shorter way round the day. */
export function secondsFast(shown: string, now: Date): number | null {
  const [hours, minutes, seconds = 0] = shown.split(':').map(Number);
  if (hours === undefined || minutes === undefined || !Number.isFinite(hours + minutes + seconds))
    return null;
  const phone = (now.getHours() * 60 + now.getMinutes()) * 60 + now.getSeconds();
  const apart = (hours * 60 + minutes) * 60 + seconds - phone;
  const DAY = 86_400;
  return ((((apart + DAY / 2) % DAY) + DAY) % DAY) - DAY / 2;
}
