/** Milliseconds since 1970-01-01T00:00Z. */
export type EpochMillis = number;
/** Degrees Celsius. */
export type Celsius = number;

/** What a reading measures. Temperature in °C, level in m, discharge in m³/s. */
export type Quantity = 'temperature' | 'level' | 'discharge';

/** One series inside a download: the station as the file names it (null when it names none) and the quantity. */
export interface SeriesKey {
  readonly station: string | null;
  readonly quantity: Quantity;
}

/**
 * Readings as columns. `series` indexes `ReadBatches.series`, a list that only grows while a file is read.
 * Rows stand in file order; `line` is the 1-based line (or element number, in XML) each reading came from.
 */
export interface ReadingBatch {
  readonly length: number;
  readonly series: Uint32Array;
  readonly at: Float64Array;
  readonly value: Float64Array;
  readonly line: Float64Array;
}

/** Bytes that can be read more than once, in chunks; nothing here ever holds the whole file. */
export interface ByteSource {
  /** The name the person gave, for messages only: never opened, never trusted. */
  readonly name: string;
  /** Bytes as stored (compressed size when compressed); null when unknown. */
  readonly size: number | null;
  open(): AsyncIterable<Uint8Array>;
}
