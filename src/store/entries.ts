import type { Celsius, EpochMillis, Quantity } from '../../adapters/batch.js';
import type { StationKind } from '../../forecasting/day-series.js';
import type { Finding } from '../../forecasting/quality/finding.js';

export type { Celsius, EpochMillis, Quantity, StationKind };

/** Loads are numbered 1, 2, 3 … in the order they were accepted; a number is never given twice. */
export type LoadNumber = number;
/** A series is one station's readings of one quantity, as instants or as daily means. */
export type SeriesNumber = number;
export type SeasonVersion = number;

/** A reading is a value at a moment, or the mean of the local day its instant falls in. */
export type Span = 'instant' | 'day';

export interface StationEntry {
  readonly id: string;
  readonly kind: StationKind;
  /** Zone its downloads are read in when they state none: IANA name, `UTC` or `UTC±HH:MM`. */
  readonly zone: string;
  /** Fixed standard-time offset its days are cut at, minutes east of UTC. */
  readonly offsetMinutes: number;
  readonly latitude: number | null;
  readonly longitude: number | null;
}

/**
 * A check of an instrument against a better one: from it on, `add` is added to what the instrument gave.
 * Between two checks the correction drifts in a straight line; before the first and after the last it stays.
 */
export interface Check {
  readonly at: EpochMillis;
  readonly add: number;
}

/** One logger at one station for a stretch of time. Readings of its downloads outside that stretch are trimmed. */
export interface DeploymentEntry {
  readonly station: string;
  readonly logger: string | null;
  readonly from: EpochMillis;
  /** null while it lies there. */
  readonly to: EpochMillis | null;
  /** Zone its clock kept, where that is not the station's. */
  readonly zone: string | null;
  /** Milliseconds to add to its instants. */
  readonly clock: readonly Check[];
  /** °C to add to its readings. */
  readonly temperature: readonly Check[];
}

/** A season document as the store needs it: the canonical text, and what of it bears on readings. */
export interface SeasonEntry {
  readonly text: string;
  readonly stations: readonly StationEntry[];
  readonly deployments: readonly DeploymentEntry[];
}

/** A station as the catalogue holds it. */
export interface Station extends StationEntry {
  readonly number: number;
  /** Named by the season document in force; false for one made by a load, or dropped from the document. */
  readonly inSeason: boolean;
}

export interface Series {
  readonly number: SeriesNumber;
  readonly station: number;
  readonly quantity: Quantity;
  readonly span: Span;
}

/** What one load brought to one series. */
export interface LoadedSeries {
  readonly station: string;
  readonly quantity: Quantity;
  readonly span: Span;
  readonly readings: number;
  readonly first: EpochMillis;
  readonly last: EpochMillis;
  readonly min: number;
  readonly max: number;
  /** Readings that stood at the same instants before. */
  readonly overlapping: number;
  /** Of those, how many differ, and by how much at most. */
  readonly differing: number;
  readonly largestDifference: number;
}

export interface Load {
  readonly load: LoadNumber;
  /** The file's name as the person gave it. */
  readonly file: string;
  /** SHA-256 of the file's bytes, hexadecimal. */
  readonly sha256: string;
  readonly bytes: number;
  readonly by: string;
  readonly at: EpochMillis;
  readonly withdrawn: { readonly at: EpochMillis; readonly by: string } | null;
  readonly series: readonly LoadedSeries[];
  /** What was understood, assumed and not usable, as the loading wrote it (JSON). */
  readonly understood: string;
}

/** A season that was closed: whose version of the document, worked out by which method. Rows are never changed. */
export interface ClosedSeasonRow {
  readonly season: string;
  readonly version: SeasonVersion;
  readonly method: number;
  readonly by: string;
  readonly at: EpochMillis;
}

export interface SeasonRow {
  readonly version: SeasonVersion;
  readonly text: string;
  readonly by: string;
  readonly at: EpochMillis;
}

/** QARTOD: 1 pass, 2 not evaluated, 3 suspect or of high interest, 4 fail, 9 missing. */
export type Flag = 1 | 2 | 3 | 4 | 9;

/** A year of one record, from 1 August to 31 July: `year` is that of the August. */
export interface JudgedYear {
  readonly station: string;
  readonly quantity: Quantity;
  readonly year: number;
  /** What the judgement rests on; where it would rest on something else by now, it is stale. */
  readonly restsOn: string;
}

/** What the checks said of a year of a record, and the flags that follow from it. */
export interface Judgement extends Omit<JudgedYear, 'restsOn'> {
  /** null: nothing is left there to judge. */
  readonly restsOn: string | null;
  /** First and last instant of the year. */
  readonly from: EpochMillis;
  readonly to: EpochMillis;
  readonly findings: readonly Finding[];
  readonly flags: readonly Pick<FlagEntry, 'from' | 'to' | 'flag' | 'set' | 'note'>[];
}

/** A dated interval in which readings of a station carry a flag; a person's ruling goes before a test's. */
export interface FlagEntry {
  readonly station: string;
  readonly quantity: Quantity;
  readonly from: EpochMillis;
  /** Last instant it holds for. */
  readonly to: EpochMillis;
  readonly flag: Flag;
  /**
   * The test that set it ('spike', 'flat-line' …); 'judged' where all tests passed; 'person', or 'ruling' where it
   * follows from a ruling in the season document.
   */
  readonly set: string;
  readonly by: string;
  readonly at: EpochMillis;
  readonly note: string;
}
