import type { DuckDBConnection } from '@duckdb/node-api';
import duckdb from '@duckdb/node-bindings';
import type { SeriesColumns } from '../reading-store.js';
import { rising } from '../rising.js';

/**
 * Rows `(instant DOUBLE, value DOUBLE, load INTEGER)` of a query as columns, copied chunk by chunk out of the
 * database's vectors. The query need not sort: rows come in the few rising runs the loads left, and are merged.
 */
export async function readColumns(connection: DuckDBConnection, query: string): Promise<SeriesColumns> {
  const columns = new GrowingColumns();
  for await (const chunk of chunksOf(connection, query)) {
    columns.add(chunk.doubles(0), chunk.doubles(1), chunk.integers(2));
  }
  return rising(columns.taken());
}

/** The kept days of some stations, by station and day. `where` is a condition on `station`, or empty. */
export async function readDayColumns(connection: DuckDBConnection, where: string) {
  const query = `SELECT station, day, mean, min, max, coverage FROM day ${where} ORDER BY station, day`;
  const chunks: Chunk[] = [];
  for await (const chunk of chunksOf(connection, query)) chunks.push(chunk);
  return {
    station: joined(chunks.map((chunk) => chunk.integers(0))),
    day: joined(chunks.map((chunk) => chunk.integers(1))),
    mean: joined(chunks.map((chunk) => chunk.doubles(2))),
    min: joined(chunks.map((chunk) => chunk.doubles(3))),
    max: joined(chunks.map((chunk) => chunk.doubles(4))),
    coverage: joined(chunks.map((chunk) => chunk.doubles(5))),
  };
}

interface Chunk {
  integers(column: number): Int32Array<ArrayBuffer>;
  doubles(column: number): Float64Array<ArrayBuffer>;
}

async function* chunksOf(connection: DuckDBConnection, query: string): AsyncIterable<Chunk> {
  const answer = await connection.stream(query);
  for (;;) {
    const chunk = await answer.fetchChunk();
    if (chunk === null || chunk.rowCount === 0) return;
    const bytes = (column: number, width: number): ArrayBuffer => {
      const vector = duckdb.data_chunk_get_vector(chunk.chunk, column);
      return Uint8Array.from(duckdb.vector_get_data(vector, chunk.rowCount * width)).buffer;
    };
    yield {
      integers: (column) => new Int32Array(bytes(column, 4)),
      doubles: (column) => new Float64Array(bytes(column, 8)),
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

class GrowingColumns {
  private at = new Float64Array(4096);
  private value = new Float64Array(4096);
  private load = new Int32Array(4096);
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
