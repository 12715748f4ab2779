import type { DuckDBConnection } from '@duckdb/node-api';
import duckdb from '@duckdb/node-bindings';
import type { SeriesColumns } from '../reading-store.js';
import { rising } from '../rising.js';

/** What a query for readings asks for: one series, from <= instant < to; of one load, or of any. */
export interface ReadingsAsked {
  readonly series: number;
  readonly load: number | null;
  readonly from: number;
  readonly to: number;
}

/**
 * Rows `(instant DOUBLE, value DOUBLE, load INTEGER, series INTEGER)` of a query as columns, copied chunk by chunk out
 * of the database's vectors. The query need not sort: rows come in the few rising runs the loads left, and are merged.
 *
 * What was asked is looked at again here. While another load commits, DuckDB 1.5.6 may hand out rows of a filtered scan
 * that do not meet the filter: it drops a filter that a segment's statistics make needless, and then reads what was
 * appended to that segment since (seen once in some ten loads on a crowded machine, two rows of the other series).
 */
export async function readColumns(
  connection: DuckDBConnection,
  query: string,
  asked: ReadingsAsked,
): Promise<SeriesColumns> {
  const columns = new GrowingColumns();
  for await (const chunk of chunksOf(connection, query)) {
    const [at, value, load, series] = [
      chunk.doubles(0),
      chunk.doubles(1),
      chunk.integers(2),
      chunk.integers(3),
    ];
    const meets = (i: number) =>
      series[i] === asked.series &&
      at[i] >= asked.from &&
      at[i] < asked.to &&
      (asked.load === null || load[i] === asked.load);
    let begun = -1;
    for (let i = 0; i <= at.length; i++) {
      const taken = i < at.length && meets(i);
      if (taken && begun < 0) begun = i;
      if (taken || begun < 0) continue;
      columns.add(at.subarray(begun, i), value.subarray(begun, i), load.subarray(begun, i));
      begun = -1;
    }
  }
  return rising(columns.taken());
}

/** Rows `(DOUBLE, DOUBLE)` of a query in order, some thousands at once, as columns of their own. */
export async function* doubleColumns(
  connection: DuckDBConnection,
  query: string,
): AsyncIterable<readonly [Float64Array, Float64Array]> {
  let pieces: Float64Array[][] = [[], []];
  let rows = 0;
  const gathered = () => [joined(pieces[0]), joined(pieces[1])] as const;
  for await (const chunk of chunksOf(connection, query)) {
    for (const i of [0, 1]) pieces[i].push(chunk.doubles(i).slice());
    rows += pieces[0].at(-1)?.length ?? 0;
    if (rows < ROWS_AT_ONCE) continue;
    yield gathered();
    pieces = [[], []];
    rows = 0;
  }
  if (rows > 0) yield gathered();
}

/** Rows `(INTEGER, DOUBLE, DOUBLE)` of a query chunk by chunk; each is gone with the next. */
export async function* threeColumns(
  connection: DuckDBConnection,
  query: string,
): AsyncIterable<readonly [Int32Array, Float64Array, Float64Array]> {
  for await (const chunk of chunksOf(connection, query)) {
    yield [chunk.integers(0), chunk.doubles(1), chunk.doubles(2)];
  }
}

/** The kept days of some stations, by station and day. `where` is a condition on `station`, or empty. */
export async function readDayColumns(connection: DuckDBConnection, where: string) {
  const query = `SELECT station, day, mean, min, max, coverage FROM day ${where} ORDER BY station, day`;
  const columns: (Int32Array | Float64Array)[][] = [[], [], [], [], [], []];
  for await (const chunk of chunksOf(connection, query)) {
    for (const [i, parts] of columns.entries()) {
      parts.push(i < 2 ? chunk.integers(i).slice() : chunk.doubles(i).slice());
    }
  }
  const [station, day, mean, min, max, coverage] = columns.map(joined);
  return { station, day, mean, min, max, coverage };
}

const ROWS_AT_ONCE = 20_000;

/** Columns of one chunk, lying in the database's own memory: gone with the next chunk. */
interface Chunk {
  integers(column: number): Int32Array;
  doubles(column: number): Float64Array;
}

async function* chunksOf(connection: DuckDBConnection, query: string): AsyncIterable<Chunk> {
  const answer = await connection.stream(query);
  for (;;) {
    const chunk = await answer.fetchChunk();
    if (chunk === null || chunk.rowCount === 0) return;
    const rows = chunk.rowCount;
    const bytes = (column: number, width: number): Uint8Array =>
      duckdb.vector_get_data(duckdb.data_chunk_get_vector(chunk.chunk, column), rows * width);
    yield {
      integers(column) {
        const { buffer, byteOffset } = bytes(column, 4);
        return new Int32Array(buffer, byteOffset, rows);
      },
      doubles(column) {
        const { buffer, byteOffset } = bytes(column, 8);
        return new Float64Array(buffer, byteOffset, rows);
      },
    };
  }
}

function joined(parts: readonly (Int32Array | Float64Array)[]): Float64Array {
  const whole = new Float64Array(parts.reduce((length, part) => length + part.length, 0));
  let filled = 0;
  for (const part of parts) {
    whole.set(part, filled);
    filled += part.length;
  }
  return whole;
}

/** Room for a month of readings every two minutes or so. */
const FIRST_ROWS = 16_384;

class GrowingColumns {
  private at = new Float64Array(FIRST_ROWS);
  private value = new Float64Array(FIRST_ROWS);
  private load = new Int32Array(FIRST_ROWS);
  private length = 0;

  add(at: Float64Array, value: Float64Array, load: Int32Array): void {
    const needed = this.length + at.length;
    if (needed > this.at.length) this.grow(Math.max(needed, 2 * this.at.length));
    this.at.set(at, this.length);
    this.value.set(value, this.length);
    this.load.set(load, this.length);
    this.length = needed;
  }

  taken(): SeriesColumns {
    return {
      at: this.at.subarray(0, this.length),
      value: this.value.subarray(0, this.length),
      load: this.load.subarray(0, this.length),
    };
  }

  private grow(size: number): void {
    const { at, value, load } = this;
    this.at = new Float64Array(size);
    this.value = new Float64Array(size);
    this.load = new Int32Array(size);
    this.at.set(at);
    this.value.set(value);
    this.load.set(load);
  }
}
