import type { EntryWaitsWords, FieldRefusedWords } from './words.js';

type Nothing = Record<never, never>;

/** What the pages on the phone say: they carry these words with them, in both languages. */
export const faceWords = [
  'title',
  'insecure',
  'no-store',
  'store-full',
  'offline',
  'prepare',
  'prepared',
  'prepare-first',
  'prepare-failed',
  'unsent',
  'all-sent',
  'send-now',
  'not-sent-why',
  'signed-out',
  'kept',
  'sent',
  'waiting',
  'list',
  'back',
  'keep',
  'kind-visit',
  'kind-plant',
  'kind-find',
  'kind-strip',
  'kind-adult',
  'kind-cross',
  'kind-tally',
  'kind-check',
  'empty',
  'dead',
  'alive',
  'aliveEggs',
  'found',
  'found-in-place',
  'found-not-found',
  'found-carried-away',
  'found-found-elsewhere',
  'foundAt',
  'siltMm',
  'damage',
  'countStands',
  'counter',
  'neverFertilised',
  'beforeEyeUp',
  'eyedDied',
  'hatchedDied',
  'fungus',
  'silted',
  'cannotTell',
  'tally-counted',
  'tally-planted',
  'tally-over',
  'sheets',
  'sheet-draft',
  'who-am-i',
  'site',
  'box',
  'lot',
  'eggs',
  'part',
  'unfilled',
  'doubled',
  'transportC',
  'siteC',
  'temperedMinutes',
  'temper-now',
  'must-not-handle',
  'handle-soon',
  'cold-start',
  'find',
  'bankMark',
  'tiedTo',
  'position',
  'position-failed',
  'photo',
  'photo-position',
  'photo-refused',
  'celsius',
  'ice',
  'ice-none',
  'ice-on',
  'ice-under',
  'ice-out',
  'levelM',
  'hours',
  'who',
  'logger',
  'logger-add',
  'did',
  'did-in',
  'did-out',
  'did-read',
  'did-checked',
  'fast',
  'iceBath',
  'putBack',
  'yes',
  'no',
  'note',
  'when',
  'when-now',
  'table',
  'counted',
  'counted-displacement',
  'counted-weight',
  'sample-add',
  'sample-eggs',
  'sample-amount',
  'total',
  'count-comes-to',
  'disinfectedWith',
  'disinfectedMinutes',
  'controlEggs',
  'parents',
  'id',
  'sex',
  'female',
  'male',
  'males',
  'origin',
  'wild',
  'hatchery',
  'lengthCm',
  'sample',
  'fate',
  'released',
  'kept-fate',
  'died',
  'other',
  'must',
  'not-number',
  'grouped',
  'whole-only',
  'eggs-left',
  'next',
  'rest-empty',
  'correct',
  'nothing-yet',
  'unsent-one',
  'see-season',
  'sign-in',
  'prepare-again',
  'on-stripping',
  'on-visits',
  'on-lifting',
  'where',
  'into-lot',
  'cross-id',
  'cross-id-empty',
  'eggs-otherwise',
  'eggs-in-it',
  'eggs-of',
  'compartments-free',
  'more-than-left',
  'more-than-room',
  'part-when',
  'part-which',
  'used-so-far',
  'photos-taken',
  'lay',
  'lay-in-box',
  'lay-tied-to-box',
  'lay-gravel',
  'lay-stream',
  'lay-bank',
  'clock-shows',
  'count-one',
  'count-between',
  'and',
  'sample-ml',
  'sample-g',
  'count-missing',
  'others',
  'with-commas',
  'caution',
  'desk',
] as const;
export type FaceWord = (typeof faceWords)[number];

const known: ReadonlySet<string> = new Set(faceWords);
export const isFaceWord = (name: string): name is FaceWord => known.has(name);

export interface FieldPageWords {
  'page-field-title': Nothing;
  'page-entries-title': Nothing;
  'page-entries-answer': { readonly waiting: number; readonly taken: number };
  'page-entries-waiting': Nothing;
  'page-entries-taken': Nothing;
  'page-entries-by': { readonly who: string; readonly phone: string; readonly entered: string };
  'page-entries-clock': { readonly fast: number };
  'page-entries-take': Nothing;
  'page-entries-correct': Nothing;
  'page-entries-why': Nothing;
  'page-entries-correct-take': Nothing;
  'page-entries-leave': Nothing;
  'page-entries-left': Nothing;
  'page-entries-ready': Nothing;
  'page-entries-kind': { readonly kind: string };
  'cli-field': Nothing;
  'cli-field-send': Nothing;
  'cli-field-list': Nothing;
  'cli-field-settle': Nothing;
  'cli-field-photo': Nothing;
  'cli-field-file': Nothing;
  'cli-field-id': Nothing;
  'cli-field-leave': Nothing;
  'cli-field-position': Nothing;
  'cli-field-received': { readonly taken: number; readonly waiting: number; readonly before: number };
  'cli-field-line': { readonly id: string; readonly state: string; readonly what: string };
  'cli-field-none-waiting': Nothing;
  'cli-field-settled': { readonly id: string };
}

export interface FieldWords
  extends EntryWaitsWords,
    FieldRefusedWords,
    FieldPageWords,
    Record<`face-${FaceWord}`, Nothing> {}
