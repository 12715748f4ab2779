import type { DuckDBConnection } from '@duckdb/node-api';
import type { LoadNumber, SeriesNumber } from '../entries.js';
import { EmbeddedLoadWriter } from './load-writer.js';
import { rows } from './sql.js';

/** Gives the readings of one load, series by series, instants rising. */
export type LoadSource = (
  load: LoadNumber,
  take: (series: SeriesNumber, at: Float64Array, value: Float64Array) => Promise<void>,
) => Promise<void>;

/** Lays the readings of every standing load into the store file, oldest load first, as they were loaded. */
export async function bringIn(connection: DuckDBConnection, source: LoadSource): Promise<void> {
  const loads = await rows(connection, 'SELECT number FROM load WHERE withdrawn_at IS NULL ORDER BY number');
  for (const row of loads) {
    const load = row.number('number');
    const writer = new EmbeddedLoadWriter(connection, load);
    await source(load, (series, at, value) =>
      writer.append({ series, length: at.length, at, value, line: null }),
    );
    await writer.finish();
  }
}
