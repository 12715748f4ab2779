import type { Catalogue, Write } from './catalogue.js';
import type { EpochMillis, LoadNumber, SeriesNumber } from './entries.js';

/** Readings of one series as columns; instants strictly rise. `load` is the load each reading came with. */
export interface SeriesColumns {
  readonly at: Float64Array;
  readonly value: Float64Array;
  readonly load: Int32Array;
}

/** Readings of one series on their way into the store. */
export interface ReadingRun {
  readonly series: SeriesNumber;
  readonly length: number;
  readonly at: Float64Array;
  /** °C, m or m³/s; rounded in place to the 1e-4 that is kept. */
  readonly value: Float64Array;
  /** Line of the file each came from; null where the run's instants rise and follow all before it in the series. */
  readonly line: Float64Array | null;
}

/** A reading that shares its instant with an earlier line of the same file, and was left. */
export interface Duplicate {
  readonly line: number;
  readonly series: SeriesNumber;
  readonly at: EpochMillis;
  readonly kept: number;
  readonly left: number;
}

export interface SeriesOutcome {
  readonly series: SeriesNumber;
  readonly readings: number;
  readonly first: EpochMillis;
  readonly last: EpochMillis;
  readonly min: number;
  readonly max: number;
  readonly overlapping: number;
  readonly differing: number;
  readonly largestDifference: number;
}

export interface WriterOutcome {
  readonly series: readonly SeriesOutcome[];
  readonly duplicates: { readonly count: number; readonly examples: readonly Duplicate[] };
}

/** Takes the readings of one load. None is visible to readers before the write they belong to has committed. */
export interface LoadWriter {
  append(run: ReadingRun): Promise<void>;
  /** Forgets everything appended so far. */
  startAgain(): Promise<void>;
  /** All readings are with the store. Settles instants that an unordered file gave twice (first kept). */
  finish(): Promise<WriterOutcome>;
}

/**
 * Where readings are kept. Two implementations behind this contract: embedded (rows resolved on load and
 * withdraw) and server (points tagged with station and load, resolved on reading).
 *
 * A load keeps all its own readings, also those that agree with an earlier one. Visible is, at each instant of a
 * series, the reading of the newest load that stands in the catalogue: the catalogue's row is the commit.
 * Readings are as the file gave them and are never rewritten; corrections are applied by who reads.
 */
export interface ReadingStore {
  readonly kind: 'embedded' | 'server';
  /** Begins to take the readings of a load that `write` is making. */
  beginLoad(write: Write, load: LoadNumber): Promise<LoadWriter>;
  /** The load no longer stands: what it covered shows again. */
  withdraw(write: Write, load: LoadNumber): Promise<void>;
  /** Visible readings of a series with from <= instant < to, as `catalogue` sees them (in a write: as it will be). */
  read(
    catalogue: Catalogue,
    series: SeriesNumber,
    from: EpochMillis,
    to: EpochMillis,
  ): Promise<SeriesColumns>;
  /** All readings a load brought to a series, also covered ones. */
  readLoad(catalogue: Catalogue, load: LoadNumber, series: SeriesNumber): Promise<SeriesColumns>;
  /** How many visible readings each series has. */
  count(catalogue: Catalogue): Promise<ReadonlyMap<SeriesNumber, number>>;
  /** All readings a load brought, series by series, instants rising, in pieces that fit in memory. */
  scan(
    catalogue: Catalogue,
    load: LoadNumber,
    take: (series: SeriesNumber, at: Float64Array, value: Float64Array) => Promise<void>,
  ): Promise<void>;
  /** What all readings a standing load brought add up to, by series. */
  sums(catalogue: Catalogue, load: LoadNumber): Promise<ReadonlyMap<SeriesNumber, ReadingSum>>;
  /** Called last in a write, before it commits: once it resolves, all its readings are where they stay. */
  settle(write: Write): Promise<void>;
}

/** How many readings there are, where they lie, and a sum that another value or instant would change. */
export interface ReadingSum {
  readonly readings: number;
  readonly first: EpochMillis;
  readonly last: EpochMillis;
  readonly min: number;
  readonly max: number;
  readonly checksum: number;
}
