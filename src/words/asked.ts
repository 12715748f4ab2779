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

/** Keys of the season under which an entry's answers lie, where the question has another name. */
const QUESTIONS: Readonly<Record<string, FaceWord>> = {
  amount: 'sample-amount',
  fertilised: 'when',
  planted: 'when',
  lifted: 'when',
  from: 'when',
  to: 'when',
  read: 'when',
  latitude: 'position',
  longitude: 'position',
  photographs: 'photo',
  hand: 'celsius',
  'samples.eggs': 'sample-eggs',
  'disinfected.with': 'disinfectedWith',
  'disinfected.minutes': 'disinfectedMinutes',
  'control.eggs': 'controlEggs',
  'clockChecks.fast': 'fast',
};

/** The question of the phone that a problem's value answered; null where it was none. */
export function askedAt({ path }: SeasonProblem): FaceWord | null {
  const [last = '', holder = ''] = path.filter((step) => typeof step === 'string').reverse();
  const question = QUESTIONS[`${holder}.${last}`] ?? QUESTIONS[last];
  return question ?? (isFaceWord(last) ? last : null);
}

/** The same; null also where the sentence says by itself whose value it is. */
export const askedFor = (problem: SeasonProblem): FaceWord | null =>
  BARE.includes(problem.code) ? askedAt(problem) : null;
