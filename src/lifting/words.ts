type Nothing = Record<never, never>;

/** The plan in sentences. Days are day numbers, shares and chances 0 to 1. */
export interface LiftingPlanWords {
  /** Digits after the point are those the table shows: what is outside its interval is told by them. */
  'lifting-share': {
    readonly mean: number;
    readonly from: number;
    readonly to: number;
    readonly digits: number;
  };
  'lifting-one-day': { readonly day: number; readonly boxes: number; readonly sites: number };
  'lifting-days': { readonly days: readonly { readonly day: number; readonly boxes: number }[] };
  'lifting-sure': { readonly chance: number; readonly boxes: number };
  'lifting-single-site-trade': { readonly single: number; readonly day: number };
  'lifting-none-good': { readonly chance: number; readonly stillInBox: number; readonly emerged: number };
  'lifting-least-bad': { readonly days: readonly { readonly day: number; readonly boxes: number }[] };
  'lifting-far-off': { readonly days: number };
  'lifting-price': {
    readonly alevins: number;
    readonly fry: number;
    readonly eggs: number;
    readonly after: boolean;
  };
  'lifting-earlier': { readonly alevins: number; readonly fry: number; readonly chance: number };
  'lifting-later': { readonly alevins: number; readonly fry: number; readonly chance: number };
  'lifting-later-after': { readonly fry: number; readonly chance: number };
  'lifting-earlier-after': { readonly fry: number; readonly alevins: number; readonly chance: number };
  'lifting-costs': Nothing;
  'lifting-look-again': { readonly day: number };
  'lifting-all-blocked': { readonly boxes: number };
  'lifting-some-blocked': { readonly boxes: readonly string[] };
  'lifting-would-free': { readonly chance: number };
  'lifting-would-stagger': { readonly chance: number; readonly single: number };
  'lifting-would-levels': Nothing;
  'lifting-would-apart': { readonly chance: number };
  'lifting-would-download': {
    readonly stations: readonly string[];
    readonly stage: string;
    readonly narrower: number;
  };
  'lifting-nothing-left': Nothing;
  'lifting-no-boxes': Nothing;
  /** `why`: whole sentences, with what it would take. */
  'lifting-no-forecast': { readonly boxes: readonly string[]; readonly why: readonly string[] };
  'lifting-stage-stands-in': { readonly stage: string; readonly boxes: readonly string[] };
  'lifting-no-gravel-stage': { readonly boxes: readonly string[] };
  'lifting-outside-permit': { readonly permits: string };
  'lifting-gauge-high': {
    readonly station: string;
    readonly quantity: 'level' | 'discharge';
    readonly value: number;
    readonly most: number;
  };
  'lifting-gauge-rule': {
    readonly station: string;
    readonly quantity: 'level' | 'discharge';
    readonly most: number;
    readonly value: number | null;
  };
  'lifting-approved': { readonly by: string; readonly at: number; readonly zone: string };
  'lifting-draft': Nothing;
  'lifting-moved': { readonly days: number; readonly later: boolean; readonly since: number };
  'lifting-moved-boxes': { readonly boxes: readonly string[] };
  'lifting-not-moved': Nothing;
  'lifting-came-in': { readonly things: readonly string[] };
  'lifting-nothing-to-approve': Nothing;
  'lifting-plan-changed': Nothing;
}

/** A tally in sentences. */
export interface TallyWords {
  'tally-agrees': { readonly counted: number };
  'tally-short': { readonly counted: number; readonly planted: number };
  'tally-over': { readonly counted: number; readonly planted: number };
  'tally-partial': Nothing;
  'tally-two-counts': { readonly counters: readonly string[]; readonly difference: number };
  'tally-gone': { readonly found: string };
  'tally-found-elsewhere': { readonly where: string };
  'tally-kept': { readonly box: string };
  'tally-kept-before': { readonly box: string };
  'tally-put-back-kept': { readonly box: string };
  'tally-empty-left-or-gone': Nothing;
  'tally-found-in-place': Nothing;
  'tally-found-not-found': Nothing;
  'tally-found-carried-away': Nothing;
  'tally-found-found-elsewhere': Nothing;
}

/** The season's end: windows as they stood beside what was seen. */
export interface OutcomeWords {
  'outcome-still': { readonly box: string; readonly day: number; readonly share: number };
  'outcome-left': { readonly box: string; readonly day: number; readonly share: number };
  'outcome-hatched': {
    readonly box: string;
    readonly day: number;
    readonly least: number;
    readonly most: number;
  };
  'outcome-seen': {
    readonly box: string;
    readonly stage: string;
    readonly day: number;
    readonly share: number | null;
  };
  'outcome-said': {
    readonly asOf: number;
    readonly from: number;
    readonly to: number;
    readonly share: number;
  };
  'outcome-agrees': Nothing;
  'outcome-early': Nothing;
  'outcome-late': Nothing;
  'outcome-none': Nothing;
}

export interface LiftingCommandWords {
  'cli-lifting': Nothing;
  'cli-lifting-as-of': Nothing;
  'cli-lifting-approve': Nothing;
  'cli-lifting-outcome': Nothing;
  'cli-lifting-title': { readonly day: number };
  'cli-lifting-would': Nothing;
  'cli-tally': Nothing;
  'cli-tally-box': Nothing;
  'cli-tally-empty': Nothing;
  'cli-tally-dead': Nothing;
  'cli-tally-alive': Nothing;
  'cli-tally-alive-eggs': Nothing;
  'cli-tally-date': Nothing;
  'cli-tally-part': Nothing;
  'cli-tally-counter': Nothing;
  'cli-tally-found': Nothing;
  'cli-tally-kind': Nothing;
  'cli-tally-silt': Nothing;
  'cli-tally-damage': Nothing;
  'cli-tally-note': Nothing;
  'cli-tally-put-back': Nothing;
  'cli-tally-stands': Nothing;
  'cli-tally-entry': Nothing;
  'cli-tally-none': Nothing;
  'column-day': Nothing;
  'column-site': Nothing;
  'column-boxes': Nothing;
  'column-chance': Nothing;
  'column-still': Nothing;
  'column-out': Nothing;
  'column-blocked': Nothing;
  'column-empty': Nothing;
  'column-dead': Nothing;
  'column-alive': Nothing;
  'column-planted': Nothing;
  'column-counter': Nothing;
}

export interface LiftingPageWords {
  'page-nav-lifting': Nothing;
  'page-lifting-title': { readonly day: number };
  'page-lifting-approve': Nothing;
  'page-lifting-approve-note': Nothing;
  'page-lifting-calendar': Nothing;
  'page-lifting-calendar-open': { readonly day: number };
  'page-lifting-sheet': { readonly site: string; readonly day: number };
  'page-lifting-curve-season': {
    readonly day: number;
    readonly stillInBox: number;
    readonly emerged: number;
  };
  'page-lifting-curve-box': { readonly box: string; readonly day: number; readonly chance: number };
  'page-lifting-curve-box-none': { readonly box: string };
  'page-lifting-line-still': Nothing;
  'page-lifting-line-out': Nothing;
  'page-lifting-line-chance': Nothing;
  'page-lifting-axis': Nothing;
  'page-lifting-shift-still': Nothing;
  'page-lifting-shift-out': Nothing;
  'page-lifting-calendar-note': Nothing;
  'page-lifting-recommended': Nothing;
  'page-lifting-boxes': Nothing;
  'page-lifting-shifts': Nothing;
  'page-lifting-shift': Nothing;
  'page-lifting-shift-days': { readonly by: number };
  'page-lifting-rule': { readonly after: boolean; readonly stillInBox: number; readonly emerged: number };
  'page-lifting-rule-change': Nothing;
  'page-lifting-change': Nothing;
  'page-lifting-field-rule': Nothing;
  'page-lifting-rule-before': Nothing;
  'page-lifting-rule-after': Nothing;
  'page-lifting-field-still': Nothing;
  'page-lifting-field-emerged': Nothing;
  'page-lifting-field-boxes': Nothing;
  'page-lifting-field-trips': Nothing;
  'page-lifting-field-gauge': Nothing;
  'page-lifting-field-quantity': Nothing;
  'page-lifting-level': Nothing;
  'page-lifting-discharge': Nothing;
  'page-lifting-field-most': Nothing;
  'page-lifting-field-stop': Nothing;
  'page-lifting-blocked-link': Nothing;
  'page-lifting-tallies': Nothing;
  'page-lifting-outcome': Nothing;
  'page-lifting-outcome-answer': { readonly said: number; readonly within: number };
  'page-tally-eggs': { readonly eggs: number };
  'page-lifting-would': Nothing;
  'page-sheet-title': { readonly site: string; readonly day: number };
  'page-sheet-draft': Nothing;
  'page-sheet-stop': Nothing;
  'page-sheet-stop-rule': { readonly box: string; readonly most: number; readonly boxes: number };
  'page-sheet-stop-alone': { readonly box: string; readonly most: number };
  'page-sheet-stop-enter': Nothing;
  'page-sheet-water': Nothing;
  'page-sheet-where': Nothing;
  'page-sheet-bring': Nothing;
  'page-sheet-bring-list': Nothing;
  'page-sheet-boxes': Nothing;
  'page-sheet-box': {
    readonly box: string;
    readonly eggs: number;
    readonly still: number;
    readonly out: number;
  };
  'page-sheet-form': Nothing;
  'page-sheet-print': Nothing;
  'page-sheet-not-planned': Nothing;
  'page-sheet-signed': Nothing;
  'page-tally-title': Nothing;
  'page-tally-answer': { readonly tallied: number; readonly boxes: number };
  'page-tally-box-title': { readonly box: string };
  'page-tally-box-answer': { readonly box: string; readonly eggs: number; readonly mayCount: boolean };
  'page-tally-empty': Nothing;
  'page-tally-dead': Nothing;
  'page-tally-alive': Nothing;
  'page-tally-alive-eggs': Nothing;
  'page-tally-more': Nothing;
  'page-tally-part': Nothing;
  'page-tally-part-whole': Nothing;
  'page-tally-counter': Nothing;
  'page-tally-found': Nothing;
  'page-tally-found-at': Nothing;
  'page-tally-kinds': Nothing;
  'page-tally-kind-neverFertilised': Nothing;
  'page-tally-kind-beforeEyeUp': Nothing;
  'page-tally-kind-eyedDied': Nothing;
  'page-tally-kind-hatchedDied': Nothing;
  'page-tally-kind-fungus': Nothing;
  'page-tally-kind-silted': Nothing;
  'page-tally-kind-cannotTell': Nothing;
  'page-tally-silt': Nothing;
  'page-tally-damage': Nothing;
  'page-tally-stands': Nothing;
  'page-tally-keep': Nothing;
  'page-tally-next': Nothing;
  'page-tally-yet': Nothing;
  'page-tally-done': Nothing;
  'page-tally-none': Nothing;
  'page-put-back-title': Nothing;
  'page-put-back-note': Nothing;
  'page-put-back-alive': Nothing;
  'page-put-back-keep': Nothing;
  'http-calendar-lifting': { readonly sites: readonly string[]; readonly draft: boolean };
  'http-calendar-lifting-about': {
    readonly boxes: readonly string[];
    readonly chance: number;
    readonly draft: boolean;
  };
}

export interface LiftingWords
  extends LiftingPlanWords,
    TallyWords,
    OutcomeWords,
    LiftingCommandWords,
    LiftingPageWords {}
