import type { StationDays } from './day-series.js';
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
  /** Its stations in order of trust. */
  readonly stations: readonly string[];
}

export interface ForecastInput {
  readonly asOf: DayNumber;
  readonly stations: readonly StationDays[];
  readonly sightings: readonly WaterSighting[];
  readonly curve: SeasonalCurve | null;
  readonly lots: readonly LotInput[];
  readonly boxes: readonly BoxInput[];
  /** The group's fixed rule: hatch at so many degree-days above base. */
  readonly oldRule: { readonly thermalUnits: ThermalUnits; readonly base: Celsius };
  readonly seed: number;
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
  readonly thermalUnits: ThermalUnits;
  readonly hatch: DayTime | null;
  /** Why it differs from the window, in one remark. */
  readonly why: ForecastRemark;
}

export interface LotForecast {
  readonly lot: string;
  readonly eggs: number;
  /** The last stage the median egg has passed; 'fertilised' before the first. */
  readonly stage: StageName | 'fertilised';
  readonly progress: Readonly<Record<StageName, Progress>>;
  readonly thermalUnits: ThermalUnits;
  readonly windows: readonly StageWindow[];
  readonly oldRule: OldRuleAnswer;
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
export interface ForecastWords {
  'cannot-say': { needs: string };
}
export type ForecastRemark = Remark<ForecastWords> | WaterRemark;
