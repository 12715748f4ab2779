import { Refusal } from '../refusal.js';

/** What can be wrong with a season, each with the figures its sentence needs; words in src/words/<lang>/season. */
export interface SeasonProblemWords {
  'not-yaml': { reason: string };
  'not-text': Record<string, never>;
  'not-a-season': Record<string, never>;
  'too-large': { bytes: number; most: number };
  'too-deep': { most: number };
  'tab-indent': Record<string, never>;
  'several-documents': Record<string, never>;
  'repeated-key': { key: string };
  'alias-used': { name: string };
  'tag-used': { tag: string };
  'key-not-text': Record<string, never>;
  'unknown-key': { key: string; known: string };
  missing: { key: string };
  'not-a-map': Record<string, never>;
  'not-a-list': Record<string, never>;
  'not-text-value': Record<string, never>;
  'text-too-long': { most: number };
  'bad-id': { given: string };
  'not-a-number': { given: string };
  'not-whole': { given: string };
  'grouped-number': { given: string; meant: string };
  'decimal-comma': { given: string; meant: string };
  'out-of-range': { given: string; least: number; most: number };
  'not-one-of': { given: string; choices: string };
  'not-yes-no': { given: string };
  'not-a-date': { given: string };
  'not-a-moment': { given: string };
  'no-such-day': { given: string };
  'skipped-hour': { given: string; zone: string };
  'repeated-hour': { given: string; first: string; second: string };
  'unknown-zone': { given: string };
  'twelve-months': { given: number };
  'before-what': Record<string, never>;
  'empty-list': { key: string };
  'duplicate-id': { thing: ThingName; id: string; line: number | null };
  'no-such': { thing: ThingName; id: string; known: string };
  'ends-before-start': { from: string; to: string };
  'overlapping-deployment': { logger: string; from: string; other: string };
  'planted-before-fertilised': { lot: string; planted: string; fertilised: string };
  'lifted-before-planted': { box: string; lifted: string; planted: string };
  'too-many-eggs': { lot: string; eggs: number; inBoxes: number };
  'no-station': { box: string; site: string };
  'no-temperature': { station: string };
  'history-loop': { loop: string };
  'stage-loop': { table: string; loop: string };
  'shipped-table-id': { id: string };
  'no-such-stage': { stage: string; table: string; known: string };
  'lot-not-in-box': { lot: string; box: string };
  'which-lot': { box: string; lots: string };
  'seen-of-what': Record<string, never>;
  'more-seen-than-looked-at': { seen: number; of: number };
  'own-parent-twice': { id: string };
  'stage-needs-what': Record<string, never>;
  'table-rule': { table: string; reason: string };
}

/** The kinds of thing a season file lists. */
export type ThingName =
  | 'group'
  | 'station'
  | 'logger'
  | 'deployment'
  | 'site'
  | 'broodstock'
  | 'lot'
  | 'box'
  | 'visit'
  | 'observed'
  | 'blocked'
  | 'table';

export type SeasonProblemCode = keyof SeasonProblemWords;

/** A problem's code and figures, before it has a place in the file. */
export type Trouble = {
  [Code in SeasonProblemCode]: { readonly code: Code; readonly with: SeasonProblemWords[Code] };
}[SeasonProblemCode];

/** Where in the season, as the keys and 0-based list positions that lead there. */
export type SeasonPath = readonly (string | number)[];

/** One thing wrong in a season file. Line and column are 1-based; null where the season did not come as text. */
export type SeasonProblem = Trouble & {
  readonly line: number | null;
  readonly column: number | null;
  readonly path: SeasonPath;
  /** What stood there, shortened; null where nothing did. */
  readonly value: string | null;
};

/** The season file cannot be used as it is; nothing of it was taken. */
export class SeasonRefused extends Refusal {
  readonly exit = 2;
  readonly remark: {
    readonly code: 'season-refused';
    readonly with: { readonly file: string; readonly problems: readonly SeasonProblem[] };
  };

  constructor(file: string, problems: readonly SeasonProblem[]) {
    const first = problems[0];
    super(`${file}: ${first ? `${first.path.join('.')}: ${first.code}` : 'season refused'}`);
    this.name = 'SeasonRefused';
    this.remark = { code: 'season-refused', with: { file, problems } };
  }
}
