import type { AutumnPageWords } from './autumn-words.js';
import type { BoxPageWords } from './box-words.js';
import type { DownloadsPageWords } from './downloads-words.js';
import type { EditingPageWords } from './editing-words.js';
import type { HindcastPageWords } from './hindcast-words.js';
import type { KeepingPageWords } from './keeping-words.js';
import type { LeadingPageWords } from './leading-words.js';
import type { PeoplePageWords } from './people-words.js';
import type { StationPageWords } from './station-words.js';
import type { TablesPageWords } from './tables-words.js';

type Nothing = Record<never, never>;

/** What a season of boxes comes down to, for the sentence at the top. `from` and `to` are day numbers. */
export interface SeasonAnswerWords {
  'page-season-no-eggs': Nothing;
  'page-season-closed': { readonly season: string };
  'page-season-empty': Nothing;
  'page-season-unknown': { readonly boxes: number };
  'page-season-all-over': { readonly boxes: number; readonly stage: string };
  'page-season-passed': { readonly passed: number; readonly boxes: number; readonly stage: string };
  'page-season-none-passed': { readonly boxes: number; readonly stage: string };
  'page-season-next': { readonly stage: string; readonly from: number; readonly to: number };
  'page-season-next-open': { readonly stage: string; readonly from: number };
  'page-season-cannot-say': { readonly boxes: number };
}

/** The frame around every page. */
export interface FrameWords {
  'page-skip': Nothing;
  'page-menu': Nothing;
  'page-nav-season': Nothing;
  'page-nav-downloads': Nothing;
  'page-nav-stations': Nothing;
  'page-nav-tables': Nothing;
  'page-nav-editing': Nothing;
  'page-nav-help': Nothing;
  'page-cautions': Nothing;
  'page-worked-out': Nothing;
  'page-same-json': Nothing;
  'page-same-csv': Nothing;
  'page-back-season': Nothing;
  'page-refused': Nothing;
  'page-table-behind': Nothing;
  'page-open': Nothing;
  'page-signed-in': { readonly name: string };
  'page-sign-out': Nothing;
}

/** The season at a glance. */
export interface SeasonPageWords extends SeasonAnswerWords {
  'page-season-title': { readonly day: number };
  'page-season-list': { readonly boxes: number };
  'page-season-key': Nothing;
  'page-season-key-band': Nothing;
  'page-season-key-solid': Nothing;
  'page-season-key-tick': Nothing;
  'page-season-key-passed': Nothing;
  'page-season-key-today': Nothing;
  'page-season-key-water': Nothing;
  'page-season-water-through': { readonly day: number };
  'page-season-water-ago': { readonly days: number };
  'page-now-stage': { readonly stage: string | null; readonly next: string | null; readonly share: string };
  'page-season-water-today': Nothing;
  'page-season-water-none': Nothing;
  'page-season-sharpen': Nothing;
  'page-season-sharpen-none': Nothing;
  'page-season-sort': Nothing;
  'page-season-sort-site': Nothing;
  'page-season-sort-next': Nothing;
  'page-season-filter': Nothing;
  'page-season-next-stage': Nothing;
  'page-season-stage-any': Nothing;
  'page-season-show': Nothing;
  'page-season-shown': { readonly shown: number; readonly boxes: number };
  'page-season-strip': { readonly box: string; readonly windows: string };
  'page-season-strip-window': {
    readonly stage: string;
    readonly first: string;
    readonly median: string;
    readonly last: string;
  };
  'page-interval': { readonly date: string; readonly from: string; readonly to: string };
  'page-no-date': Nothing;
}

export interface PagesWords
  extends FrameWords,
    SeasonPageWords,
    BoxPageWords,
    StationPageWords,
    DownloadsPageWords,
    TablesPageWords,
    EditingPageWords,
    HindcastPageWords,
    KeepingPageWords,
    LeadingPageWords,
    PeoplePageWords,
    AutumnPageWords {}
