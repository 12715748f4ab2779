import { type FaceWord, isFaceWord } from '../field/face-words.js';
import type { SeasonProblem } from '../season/index.js';

/** Sentences that say what is wrong with a value, and not whose value it is. */
const BARE: readonly SeasonProblem['code'][] = [
  'season.not-text-value',
  'season.unprintable',
  'season.text-too-long',
  'season.bad-id',
  'season.not-a-number',
  'season.not-whole',
  'season.grouped-number',
  'season.decimal-comma',
  'season.out-of-range',
  'season.not-one-of',
  'season.not-a-date',
  'season.not-a-moment',
  'season.no-such-day',
];

/** The question of the phone that a problem's value answered; null where the sentence says it by itself. */
export function askedFor({ code, path }: SeasonProblem): FaceWord | null {
  if (!BARE.includes(code)) return null;
  const name = path.findLast((step) => typeof step === 'string') ?? '';
  if (name === 'amount') return 'sample-amount';
  return isFaceWord(name) ? name : null;
}
