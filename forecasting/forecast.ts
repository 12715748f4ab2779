import type { StationDays } from './day-series.js';
import type { BoxCheck } from './lifting/check.js';
import type { LotDraws } from './lifting/lot-draws.js';
import type { StageObservation } from './observations/likelihood.js';
import type { Remark } from './remark.js';
import type { DevelopmentTable, StageName } from './table.js';
import type { Celsius, DayNumber, DayTime, Progress, ThermalUnits } from './units.js';
import type { SeasonalCurve, Water, WaterRemark, WaterSighting } from './water.js';

/** Where eggs of a lot were before they reached the box. */
export type BeforePlanting =
  | { readonly kind: 'none' }
  | { readonly kind: 'stated'; readonly celsius: Celsius }
  | { readonly kind: 'station'; readonly station: string };

export interface LotInput {
  readonly lot: string;
  readonly fertilised: DayTime;
  readonly table: DevelopmentTable;
  readonly before: BeforePlanting;
}

export interface FillInput {
  readonly lot: string;
  readonly eggs: number;
  readonly planted: DayTime;
}

export interface BoxInput {
  readonly box: string;
  readonly site: string;
  readonly fills: readonly FillInput[];
  readonly lifted: DayTime | null;
  /** End of the day on which it was looked for in vain: nothing is known of its eggs since. */
  readonly notFound?: DayTime | null;
  /** Its stations in order of trust. */
  readonly stations: readonly string[];
  /**
   * Those of them whose logger lies in the box, tied to it or in the gravel beside it: they read the eggs' own
   * water, and reading one out may mean opening the box. Stations of kind 'gravel' read the eggs' water anyway.
   */
  readonly withEggs?: readonly string[];
}

export interface ForecastInput {
  readonly asOf: DayNumber;
  readonly stations: readonly StationDays[];
  readonly sightings: readonly WaterSighting[];
  readonly curve: SeasonalCurve | null;
  readonly lots: readonly LotInput[];
  readonly boxes: readonly BoxInput[];
  /** Stages seen in lots; those of later days than `asOf` count for nothing. */
  readonly observations?: readonly StageObservation[];
  /** Days on which no box may be opened; every site where none is named. */
  readonly blocked?: readonly {
    readonly from: DayNumber;
    readonly to: DayNumber;
    readonly site: string | null;
  }[];
  /** The group's fixed rule: hatch at so many degree-days above base. */
  readonly oldRule: { readonly thermalUnits: ThermalUnits; readonly base: Celsius };
  readonly seed: number;
  /** Boxes that were opened, found still occupied and put back: they bear on hatch and on leaving. */
  readonly checks?: readonly BoxCheck[];
}

/** A name in both languages. */
export interface BothNames {
  readonly en: string;
  readonly fr: string;
}

/** A date with its 80 % interval, as moments on the day axis; null where the record cannot reach the stage. */
export interface Interval {
  readonly p10: DayTime | null;
  readonly p50: DayTime | null;
  readonly p90: DayTime | null;
}

export interface StageWindow {
  readonly stage: StageName;
  readonly first: Interval;
  readonly median: Interval;
  readonly last: Interval;
  /** The median egg has passed it by the as-of day. */
  readonly passed: boolean;
  /** Why there is no date, when there is none. */
  readonly unreached: ForecastRemark | null;
  /** The window leans on water outside the row's range of validity. */
  readonly outsideValidity: boolean;
}

export interface OldRuleAnswer {
  /** The group's fixed rule itself: hatch at so many degree-days. */
  readonly thermalUnits: ThermalUnits;
  readonly hatch: DayTime | null;
  /** Why it differs from the window, in one remark. */
  readonly why: ForecastRemark;
}

export interface LotForecast {
  readonly lot: string;
  readonly eggs: number;
  /**
   * The last stage the median egg has passed; 'fertilised' before the first, 'not-fertilised' before the lot's
   * date, 'unknown' where nothing is known of its water.
   */
  readonly stage: StageName | 'fertilised' | 'not-fertilised' | 'unknown';
  /** To each stage of the table, at the end of the as-of day or when the box was lifted; empty where unknown. */
  readonly progress: Readonly<Record<string, Progress>>;
  /** Degree-days gathered by then, above the table's base; null where the water is not known. */
  readonly thermalUnits: ThermalUnits | null;
  readonly windows: readonly StageWindow[];
  readonly oldRule: OldRuleAnswer;
  /** The draws behind the windows; draw k is the same possible winter in every box. Absent where nothing is known. */
  readonly draws?: LotDraws;
}

export interface BoxForecast {
  readonly box: string;
  readonly site: string;
  readonly eggs: number;
  readonly lots: readonly LotForecast[];
  readonly water: Water | null;
  readonly dataThrough: DayNumber | null;
  readonly days: { readonly measured: number; readonly filled: number; readonly projected: number };
  readonly windows: readonly StageWindow[];
  readonly oldRule: OldRuleAnswer;
  readonly method: readonly ForecastRemark[];
  readonly assumptions: readonly ForecastRemark[];
  readonly sharpenBy: readonly ForecastRemark[];
}

/** The one value every face reads. */
export interface Forecast {
  readonly asOf: DayNumber;
  readonly boxes: readonly BoxForecast[];
}

/** Codes and figures; words in src/words/<lang>/forecasting. */
export interface ForecastWords extends OldRuleWords, SharpenWords, AssumptionWords, EvidenceWords {
  'cannot-say': { needs: 'station' | 'readings' | 'later-water'; station: string };
  'water-ends': { stage: StageName; station: string; from: DayNumber };
  'not-reached': { stage: StageName; through: DayNumber; share: number };
  'rate-summation': { table: BothNames };
}

/** What a forecast takes for granted, so that a person can put it right. */
export interface AssumptionWords {
  'logger-accuracy': { station: string; accuracy: Celsius };
  'accuracy-not-stated': { station: string; assumed: Celsius };
  'gravel-offset': { station: string; spread: Celsius };
  'leads-instead': { station: string; first: string; spread: Celsius };
  'unknown-station': { station: string };
  'few-winters': { winters: number };
  'before-stated': { lot: string; celsius: Celsius; days: number };
  'before-station': { lot: string; station: string; days: number; missing: number };
  'before-station-silent': { lot: string; station: string; days: number };
  'before-as-stream': { lot: string; days: number };
  'planted-before-fertilised': { lot: string };
  'not-fertilised': { lot: string; day: DayNumber };
  'not-planted': { day: DayNumber };
  'lifted-already': { day: DayNumber };
  'no-fills': Record<string, never>;
  'unknown-lot': { lot: string };
  'table-from-memory': { table: BothNames };
  'table-spread-ours': { table: BothNames };
  'stage-equated': { stage: StageName; with: StageName };
  'outside-validity': { stage: StageName; min: Celsius; max: Celsius };
  'stage-not-in-every-table': { stage: StageName; lots: string };
}

/** Stages that were seen, and what they did to the window: `moved` is days later, below 0 earlier. */
export interface EvidenceWords {
  'observation-used': SeenStage;
  'observation-surprises': SeenStage;
}

interface SeenStage {
  lot: string;
  stage: StageName;
  day: DayNumber;
  seen: number;
  of: number;
  moved: number;
}

/** Why the fixed rule and the window differ: `days` between them, `needed` what the law needs in this water. */
export interface OldRuleWords {
  'old-rule-agrees': { days: number };
  'old-rule-late-cold': { days: number; coldDays: number; share: number; units: ThermalUnits };
  'old-rule-late': { days: number; needed: ThermalUnits; rule: ThermalUnits };
  'old-rule-early': { days: number; needed: ThermalUnits; rule: ThermalUnits };
  'old-rule-never': { gathered: ThermalUnits; rule: ThermalUnits; through: DayNumber };
  'old-rule-alone': { rule: ThermalUnits };
  'old-rule-no-water': { rule: ThermalUnits };
}

/** What would narrow the next window; `narrower` is days off its 80 % interval. */
export interface SharpenWords {
  'read-logger': { station: string; days: number; narrower: number; stage: StageName };
  'read-logger-after-ice': { station: string; days: number; narrower: number; stage: StageName };
  'read-logger-after-eggs': {
    station: string;
    days: number;
    narrower: number;
    stage: StageName;
    until: DayNumber | null;
  };
  /** It lies with eggs, and today no box may be opened. */
  'read-logger-other-day': { station: string; days: number; narrower: number; stage: StageName };
  /** A further station in the same water, as good as the best that speaks for it now. */
  'one-more-station': { narrower: number; stage: StageName };
  /** So many eggs looked at today for `seen`. */
  'observe-stage': { eggs: number; seen: StageName; narrower: number; stage: StageName };
  'observe-not-now': {
    seen: StageName;
    narrower: number;
    stage: StageName;
    why: 'handling' | 'ice' | 'blocked';
  };
  'read-logger-to-lead': { station: string; days: number };
  'name-a-station': Record<string, never>;
  'history-or-curve': Record<string, never>;
}

export type ForecastRemark = Remark<ForecastWords> | WaterRemark;
