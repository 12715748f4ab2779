/** Milliseconds since 1970-01-01T00:00Z. */
export type EpochMillis = number;
/** Degrees Celsius. */
export type Celsius = number;

/** What a reading measures. Temperature in °C, level in m, discharge in m³/s. */
export type Quantity = 'temperature' | 'level' | 'discharge';

/** A place as a file states it, in decimal degrees north and east. */
export interface StatedPlace {
  readonly latitude: number;
  readonly longitude: number;
}

/** One series inside a download: the station as the file names it (null when it names none) and the quantity. */
export interface SeriesKey {
  readonly station: string | null;
  readonly quantity: Quantity;
  /** 'day': each value is the mean of a local standard day, and `at` is 00:00 of that day in the zone's standard offset. */
  readonly span: 'instant' | 'day';
  /** What the file says was measured; null where it does not say. */
  readonly medium: 'water' | 'air' | null;
  /** Where the station lies, when the file states it. */
  readonly place: StatedPlace | null;
}

/**
 * Readings as columns. `series` indexes `keys`, a list that only grows while a file is read.
 * Rows stand in file order; `line` is the 1-based line (or element number, in XML) each reading came from.
 * Only the first `length` entries count, and the arrays are used again once `Sink.take` has returned (or its
 * promise has settled): a sink that keeps rows copies them.
 */
export interface ReadingBatch {
  readonly length: number;
  readonly keys: readonly SeriesKey[];
  readonly series: Uint32Array;
  readonly at: Float64Array;
  readonly value: Float64Array;
  readonly line: Float64Array;
}

/**
 * Bytes that can be read more than once, in chunks; nothing here ever holds the whole file. A chunk's memory may be
 * used again once the next chunk is asked for.
 */
export interface ByteSource {
  /** The name the person gave, for messages only: never opened, never trusted. */
  readonly name: string;
  /** Bytes as stored (compressed size when compressed); null when unknown. */
  readonly size: number | null;
  open(): AsyncIterable<Uint8Array>;
}
