import type { DaySeries, StationDays } from './day-series.js';
import type { Remark } from './remark.js';
import type { Celsius, DayNumber } from './units.js';

/** A hand-thermometer reading or ice seen at a station on a day: evidence on the water between. */
export type WaterSighting =
  | {
      readonly kind: 'hand';
      readonly station: string;
      readonly day: DayNumber;
      readonly celsius: Celsius;
      readonly accuracy: Celsius;
    }
  | { readonly kind: 'ice-on' | 'ice-out' | 'under-ice'; readonly station: string; readonly day: DayNumber };

/** Monthly normals stated by the group, °C on the 15th of January..December: the last resort. */
export interface SeasonalCurve {
  readonly monthly: readonly number[];
  /** One standard deviation of a winter's departure from it, °C. */
  readonly spread: Celsius;
}

export interface WaterInput {
  readonly asOf: DayNumber;
  /** The days the forecast needs, from the earliest fertilisation to the last day any stage could need. */
  readonly from: DayNumber;
  readonly to: DayNumber;
  readonly target: StationDays;
  /** Every other station of the group, in any order: the order must not matter. */
  readonly neighbours: readonly StationDays[];
  readonly sightings: readonly WaterSighting[];
  readonly curve: SeasonalCurve | null;
  readonly seed: number;
  /** How many traces to draw; the same number for every station of a forecast. */
  readonly traces: number;
}

/** How one gap was filled, with the regression's figures. */
export interface FilledStretch {
  readonly from: DayNumber;
  readonly to: DayNumber;
  readonly sources: readonly {
    readonly station: string;
    readonly weight: number;
    readonly slope: number;
    readonly intercept: Celsius;
    readonly n: number;
    readonly r2: number;
    /** Blocked cross-validation root mean square error, °C. */
    readonly error: Celsius;
  }[];
}

/** Where the water past the last filled day comes from, best first. */
export type ProjectionSource =
  | { readonly kind: 'own-history'; readonly winters: readonly number[] }
  | {
      readonly kind: 'neighbour-history';
      readonly winters: readonly number[];
      readonly stations: readonly string[];
    }
  | { readonly kind: 'stated-curve' }
  | { readonly kind: 'none' };

/** Codes and figures of what the water rests on; words in src/words/<lang>/water. */
export interface WaterWords {
  'own-history': { winters: number };
  'neighbour-history': { winters: number; stations: string };
  'stated-curve': Record<string, never>;
  'no-water': { station: string };
  'history-not-shared': { station: string; other: string; shared: number; least: number };
  'filled-from': { stations: string; days: number; error: Celsius };
  'same-logger': { station: string; as: string };
  'neighbour-doubted': { station: string; days: number };
  'as-it-stands': { stations: string; error: Celsius };
  'this-season-only': { stations: string };
  'sightings-used': { count: number };
  'ice-doubted': { station: string };
}
export type WaterRemark = Remark<WaterWords>;

/**
 * The water at one station from `from` to `to`: a best day series with origins, and traces for uncertainty.
 * Traces are complete possible winters: measured days equal the record in every trace, filled days carry the
 * fill's correlated error, projected days a past winter's departure. The logger's and the gravel's shared offset
 * is NOT in them: it is drawn once a winter where the windows are made.
 */
export interface Water {
  readonly station: string;
  readonly days: DaySeries;
  /**
   * Trace i, day from + d is traces[i][d], °C; NaN on a day of which nothing can be said. Empty when nothing is
   * known of any day.
   */
  readonly traces: readonly Float64Array[];
  /**
   * How many independent past winters stand behind the projection. The traces are as wide as few winters ask for:
   * what few winters hide is already in them (see `drawnDepartures`), so nothing is to be added for it.
   */
  readonly winters: number;
  readonly stretches: readonly FilledStretch[];
  readonly projection: ProjectionSource;
  readonly lastMeasured: DayNumber | null;
  readonly lastFilled: DayNumber | null;
  readonly remarks: readonly WaterRemark[];
}

export { waterAt } from './water-at.js';
