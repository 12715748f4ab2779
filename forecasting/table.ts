import type { Celsius, Progress } from './units.js';

/** How sure a figure is of its source: as in tests/references. Absent: seen in the source. */
export type Mark = 'memory' | 'abstract' | 'common practice' | 'ours' | 'computed';

export interface Source {
  /** As published, with a note in English where there is one. */
  readonly cite: string;
  /** The same for French readers, where it is not a citation alone: author, year and journal stay as published. */
  readonly inFrench?: string;
  readonly mark?: Mark;
  /** Which numbers of the row it stands behind, where a row has several sources: 'law', 'eggSpread', 'limit'. */
  readonly of?: string;
}

/** Days-to-stage D at constant temperature T, in one of these forms. */
export type Law =
  | { readonly form: 'thermal-units'; readonly units: number; readonly base: Celsius }
  /** log10 D = log10a + b * log10(T - alpha) */
  | { readonly form: 'power'; readonly log10a: number; readonly b: number; readonly alpha: Celsius }
  /** log10 D = log10 d0 + (c1 + c2 * T) * T */
  | { readonly form: 'log-quadratic'; readonly d0: number; readonly c1: number; readonly c2: number }
  /** Monotone interpolation of ln D between listed temperatures. */
  | {
      readonly form: 'days-at';
      readonly rows: readonly { readonly celsius: Celsius; readonly days: number }[];
    };

export type StageName = 'eye-up' | 'hatch' | 'button-up' | 'emergence' | (string & {});

/** What a stage needs: its own law, a multiple of another stage's, a law counted from another stage, or the same. */
export type Needs =
  | { readonly law: Law }
  | { readonly multipleOf: StageName; readonly factor: number }
  | { readonly after: StageName; readonly law: Law }
  | { readonly sameAs: StageName };

/** What a stage is called, in the forms that sentences need. */
export interface StageCalled {
  readonly en: {
    /** "To hatch", "hatch is expected". */
    readonly name: string;
    /** What eggs past it have done: "hatched". */
    readonly done: string;
    /** Eggs that have come to it: "hatched (alevins)". */
    readonly eggs: string;
  };
  readonly fr: {
    readonly name: string;
    /** With its article: "l’éclosion". */
    readonly the: string;
    readonly gender: 'f' | 'm';
    /** What eggs past it have done: ["ont", "éclos"]. */
    readonly done: readonly ['ont' | 'sont', string];
    /** That they are past it, in a few words: "éclos". */
    readonly past: string;
    readonly eggs: string;
  };
}

export interface StageRow {
  readonly stage: StageName;
  /** For a stage of a shipped table that others do not have; the usual ones are in tables/stages. */
  readonly called?: StageCalled;
  readonly needs: Needs;
  /**
   * One standard deviation between eggs of one lot, in progress to this stage. Where the stage is counted after
   * another, it is the whole spread seen from the other stage's median egg.
   */
  readonly eggSpread: Progress;
  /** Water the row is known to hold in, °C: the days on the way, or the water when the stage comes ('at-stage'). */
  readonly validity: {
    readonly min: Celsius;
    readonly max: Celsius;
    readonly judged?: 'on-the-way' | 'at-stage';
  };
  readonly sources: readonly Source[];
}

/** What the literature found to die, and under which conditions it was found. */
export interface PublishedMortality {
  /** Shares of the eggs or alevins, 0 to 1. */
  readonly from: number;
  readonly to: number;
  readonly conditions: { readonly en: string; readonly fr: string };
  readonly source: Source;
}

/** A temperature limit for eggs in some stages; judged on readings, beyond the logger's accuracy. */
export interface HarmLimit {
  readonly kind: 'warm' | 'freezing' | 'sudden-change' | 'cold-start' | 'cold';
  readonly severity: 'lethal' | 'lowers-survival' | 'advice';
  /** Applies while progress to hatch lies in this span. */
  readonly fromProgress: Progress;
  readonly toProgress: Progress;
  /** °C for warm, freezing, cold-start, cold; °C per hour for sudden-change. */
  readonly limit: number;
  /** Hours beyond the limit that make it so; 0 when any reading does. */
  readonly hours: number;
  readonly sources: readonly Source[];
  /** Only where the literature gives a figure; a limit found at constant temperature gives none. */
  readonly mortality?: PublishedMortality;
}

export interface DevelopmentTable {
  readonly id: string;
  readonly species: string;
  readonly name: { readonly en: string; readonly fr: string };
  /** In the order the eggs pass them. */
  readonly stages: readonly StageRow[];
  /** One standard deviation between lots and stocks, in progress. */
  readonly lotSpread: Progress;
  /** One standard deviation of the table itself, in progress. */
  readonly ownSpread: Progress;
  /** Progress to hatch between which eggs must not be handled. */
  readonly doNotHandle: {
    readonly from: Progress;
    readonly to: Progress;
    readonly sources: readonly Source[];
  };
  /** Degrees between the water eggs were carried in and the site's from which they are brought together slowly. */
  readonly temper: { readonly limit: Celsius; readonly sources: readonly Source[] };
  /** Days an alevin takes to leave the box after hatch. */
  readonly leavesBox: {
    readonly days: number;
    readonly min: number;
    readonly max: number;
    readonly sources: readonly Source[];
  };
  readonly harm: readonly HarmLimit[];
  readonly sources: readonly Source[];
}
