import type { LayoutRemark } from '../../adapters/formats/remark.js';
import type { TableProblem } from '../../forecasting/index.js';
import { Refusal } from '../refusal.js';
import type { CountProblemWords } from './counts.js';

/** What can be wrong with a season, each with the figures its sentence needs; words in src/words/<lang>/season. */
export interface SeasonProblemWords extends CountProblemWords {
  'season.not-yaml': { reason: string };
  'season.not-text': Record<string, never>;
  /** A letter that came out as U+FFFD: the bytes were not UTF-8. */
  'season.not-utf8': Record<string, never>;
  'season.not-a-season': Record<string, never>;
  'season.too-large': { bytes: number; most: number };
  'season.too-deep': { most: number };
  'season.tab-indent': Record<string, never>;
  'season.several-documents': Record<string, never>;
  'season.repeated-key': { key: string };
  'season.alias-used': { name: string };
  'season.tag-used': { tag: string };
  'season.key-not-text': Record<string, never>;
  'season.unknown-key': { key: string; known: string };
  'season.missing': { key: string };
  'season.not-a-map': Record<string, never>;
  'season.not-a-list': Record<string, never>;
  'season.not-text-value': Record<string, never>;
  'season.unprintable': Record<string, never>;
  'season.text-too-long': { most: number };
  'season.bad-id': { given: string };
  'season.not-a-number': { given: string };
  'season.not-whole': { given: string };
  'season.grouped-number': { given: string; meant: string };
  'season.decimal-comma': { given: string; meant: string };
  'season.out-of-range': { given: string; least: number; most: number };
  'season.not-one-of': { given: string; choices: string };
  'season.not-yes-no': { given: string };
  'season.not-a-date': { given: string };
  'season.not-a-moment': { given: string };
  'season.no-such-day': { given: string };
  'season.skipped-hour': { given: string; zone: string };
  'season.repeated-hour': { given: string; first: string; second: string };
  'season.unknown-zone': { given: string };
  'season.twelve-months': { given: number };
  'season.before-what': Record<string, never>;
  'season.duplicate-id': { thing: ThingName; id: string };
  'season.no-such': { thing: ThingName; id: string; known: string };
  'season.ends-before-start': { from: string; to: string };
  'season.overlapping-deployment': { logger: string; from: string; other: string };
  'season.read-outside': { logger: string; at: string; from: string; to: string | null };
  'season.planted-before-fertilised': { lot: string; planted: string; fertilised: string };
  'season.lifted-before-planted': { box: string; lifted: string; planted: string };
  'season.too-many-eggs': { lot: string; eggs: number; inBoxes: number };
  'season.more-out-than-in': { lot: string; eggs: number; inBoxes: number; elsewhere: number };
  'season.more-than-compartments': { box: string; eggs: number; compartments: number; doubled: number };
  'season.more-fertilised-than-looked-at': { fertilised: number; of: number };
  'season.not-that-sex': { cross: string; adult: string; sex: string };
  'season.not-a-photograph': { given: string };
  'season.no-temperature': { station: string };
  'season.history-loop': { loop: string };
  'season.shipped-table-id': { id: string };
  'season.no-such-stage': { stage: string; table: string; known: string };
  'season.lot-not-in-box': { lot: string; box: string };
  'season.which-lot': { box: string; lots: string };
  'season.seen-of-what': Record<string, never>;
  'season.more-seen-than-looked-at': { seen: number; of: number };
  'season.stage-needs-what': Record<string, never>;
  'season.table-rule': { table: string; problem: TableProblem };
  'season.bad-layout': { problem: LayoutRemark };
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
  | 'table'
  | 'layout'
  | 'putBack'
  | 'tally'
  | 'permit'
  | 'cross'
  | 'entry'
  | 'ruling'
  | 'table';

export type SeasonProblemCode = keyof SeasonProblemWords;

/** A problem's code and figures, before it has a place in the file. */
export type Trouble = {
  [Code in SeasonProblemCode]: { readonly code: Code; readonly with: SeasonProblemWords[Code] };
}[SeasonProblemCode];

/** Where in the season, as the keys and 0-based list positions that lead there. */
export type SeasonPath = readonly (string | number)[];

/** One of the things a season lists, by what tells it from the others. */
export interface ThingNamed {
  readonly thing: ThingName;
  readonly id: string;
}

/** One thing wrong in a season file. Line and column are 1-based; null where the season did not come as text. */
export type SeasonProblem = Trouble & {
  readonly line: number | null;
  readonly column: number | null;
  readonly path: SeasonPath;
  /** The thing of a list that it lies in. */
  readonly of: ThingNamed | null;
  /** What stood there, shortened; null where nothing did. */
  readonly value: string | null;
};

/** An entry that a person made, where it is that entry and no file that was not taken. */
export type EntryRefused =
  | { readonly kind: 'tally' | 'putBack'; readonly box: string }
  /** Written down in the field: who reads why knows no season file. */
  | { readonly kind: 'field' };

export interface SeasonRefusal {
  readonly file: string;
  readonly problems: readonly SeasonProblem[];
  readonly entry?: EntryRefused;
}

/** The season file cannot be used as it is; nothing of it was taken. */
export class SeasonRefused extends Refusal {
  readonly exit = 2;
  readonly remark: { readonly code: 'season.refused'; readonly with: SeasonRefusal };

  constructor(file: string, problems: readonly SeasonProblem[], entry?: EntryRefused) {
    const first = problems[0];
    super(`${file}: ${first ? `${first.path.join('.')}: ${first.code}` : 'season refused'}`);
    this.name = 'SeasonRefused';
    this.remark = { code: 'season.refused', with: { file, problems, ...(entry && { entry }) } };
  }
}
