import type { StageName } from '../../forecasting/table.js';

/**
 * What the command line prints under --json and the API will send: other programs rely on these shapes (README,
 * "For other programs"). Dates are ISO local dates, instants ISO 8601 UTC, sentences in the language asked for.
 */
export interface IntervalAnswer {
  readonly p10: string | null;
  readonly p50: string | null;
  readonly p90: string | null;
}

export interface WindowAnswer {
  readonly stage: StageName;
  readonly first: IntervalAnswer;
  readonly median: IntervalAnswer;
  readonly last: IntervalAnswer;
  readonly passed: boolean;
  /** Why there is no date, where there is none; else null. */
  readonly unreached: string | null;
  /** The window leans on water outside the range in which the table is known to hold. */
  readonly outsideValidity: boolean;
}

export interface OldRuleAnswer {
  readonly thermalUnits: number;
  readonly hatch: string | null;
  readonly why: string;
}

export interface LotAnswer {
  readonly lot: string;
  readonly eggs: number;
  readonly stage: StageName | 'fertilised' | 'not-fertilised' | 'unknown';
  /** Fraction of the way to each stage of the lot's table; empty where nothing is known of the water. */
  readonly progress: Readonly<Record<string, number>>;
  readonly thermalUnits: number | null;
  readonly windows: readonly WindowAnswer[];
  readonly oldRule: OldRuleAnswer;
}

export interface BoxAnswer {
  readonly box: string;
  readonly site: string;
  readonly eggs: number;
  readonly lots: readonly LotAnswer[];
  readonly dataThrough: string | null;
  readonly days: { readonly measured: number; readonly filled: number; readonly projected: number };
  readonly windows: readonly WindowAnswer[];
  readonly oldRule: OldRuleAnswer;
  readonly method: string;
  readonly assumptions: readonly string[];
  readonly sharpenBy: readonly string[];
}

export interface ForecastAnswer {
  readonly asOf: string;
  readonly cautions: readonly string[];
  readonly boxes: readonly BoxAnswer[];
}

export interface LoadedStation {
  readonly station: string;
  readonly quantity: string;
  readonly readings: number;
  readonly first: string;
  readonly last: string;
  /** Lowest and highest value; for level in m and discharge in m³/s the same two fields are null. */
  readonly min_c: number | null;
  readonly max_c: number | null;
}

/** One figure of a battery, in the unit beside it, and when it was. */
export interface BatteryFigure {
  readonly value: number;
  readonly at: string;
}

/** What a file says of the battery of a station's logger; null where it does not say. mV are given in V. */
export interface BatteryAnswer {
  readonly station: string;
  readonly column: string | null;
  readonly unit: 'V' | '%' | null;
  readonly highest: BatteryFigure | null;
  readonly lowest: BatteryFigure | null;
  readonly last: BatteryFigure | null;
  /** The first remark in the file that calls it low. */
  readonly low: { readonly text: string; readonly at: string } | null;
}

export interface FileAnswer {
  readonly file: string;
  readonly stations: readonly LoadedStation[];
  readonly understood: {
    readonly encoding: string;
    readonly delimiter: string | null;
    readonly decimal: string;
    readonly unit: string | null;
    readonly zone: string | null;
    readonly dateOrder: string | null;
    readonly timeColumns: readonly string[];
    readonly valueColumn: string | null;
    readonly daily: boolean;
  } | null;
  readonly assumed: readonly string[];
  readonly unusable: {
    readonly count: number;
    readonly examples: readonly { readonly line: number; readonly reason: string }[];
  };
  readonly battery: readonly BatteryAnswer[];
  readonly load: string | null;
  readonly alreadyLoaded: boolean;
  readonly differing: number;
  readonly largestDifference: number | null;
  readonly refused: null | { readonly reason: string; readonly question: string | null };
}

export interface LoadAnswer {
  readonly files: readonly FileAnswer[];
}

export interface LoadsAnswer {
  readonly loads: readonly {
    readonly load: string;
    readonly file: string;
    readonly stations: readonly string[];
    readonly readings: number;
    readonly at: string;
    readonly withdrawn: string | null;
    readonly battery: readonly BatteryAnswer[];
  }[];
}
