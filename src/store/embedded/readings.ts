import type { Catalogue, Write } from '../catalogue.js';
import type { EpochMillis, LoadNumber, SeriesNumber } from '../entries.js';
import type { LoadWriter, ReadingStore, ReadingSum, SeriesColumns } from '../reading-store.js';
import { connectionsOf } from './catalogue.js';
import { EmbeddedLoadWriter } from './load-writer.js';
import { doubleColumns, readColumns } from './read-columns.js';
import { sumsOf } from './reading-sums.js';
import { uncover } from './resolve.js';
import { rows } from './sql.js';

const COLUMNS = 'instant::DOUBLE, value, load, series';

/** Readings in the store file itself: one table of visible rows, one of covered ones, both without keys. */
export const embeddedReadings: ReadingStore = {
  kind: 'embedded',

  beginLoad(write: Write, load: LoadNumber): Promise<LoadWriter> {
    return connectionsOf(write).use(async (connection) => new EmbeddedLoadWriter(connection, load));
  },

  withdraw(write: Write, load: LoadNumber): Promise<void> {
    return connectionsOf(write).use(async (connection) => {
      const spans = await rows(
        connection,
        'SELECT series, first_ms, last_ms FROM load_series WHERE load = ?',
        [load],
      );
      await uncover(
        connection,
        load,
        spans.map((row) => ({
          series: row.number('series'),
          first: row.number('first_ms'),
          last: row.number('last_ms'),
        })),
      );
    });
  },

  read(
    catalogue: Catalogue,
    series: SeriesNumber,
    from: EpochMillis,
    to: EpochMillis,
  ): Promise<SeriesColumns> {
    const between = `${from === Number.NEGATIVE_INFINITY ? '' : ` AND instant >= ${Math.ceil(from)}`}${
      to === Number.POSITIVE_INFINITY ? '' : ` AND instant < ${Math.ceil(to)}`
    }`;
    const query = `SELECT ${COLUMNS} FROM visible WHERE series = ${series}${between}`;
    return connectionsOf(catalogue).use((connection) =>
      readColumns(connection, query, { series, load: null, from, to }),
    );
  },

  readLoad(catalogue: Catalogue, load: LoadNumber, series: SeriesNumber): Promise<SeriesColumns> {
    const own = (table: string) =>
      `SELECT ${COLUMNS} FROM ${table} WHERE series = ${series} AND load = ${load}`;
    return connectionsOf(catalogue).use((connection) =>
      readColumns(connection, `${own('visible')} UNION ALL ${own('covered')}`, {
        series,
        load,
        from: Number.NEGATIVE_INFINITY,
        to: Number.POSITIVE_INFINITY,
      }),
    );
  },

  count(catalogue: Catalogue): Promise<ReadonlyMap<SeriesNumber, number>> {
    return connectionsOf(catalogue).use(async (connection) => {
      const counts = await rows(
        connection,
        'SELECT series, count(*) AS readings FROM visible GROUP BY series',
      );
      return new Map(counts.map((row) => [row.number('series'), row.number('readings')]));
    });
  },

  scan(catalogue, load, take) {
    return connectionsOf(catalogue).use(async (connection) => {
      const series = await rows(connection, 'SELECT series FROM load_series WHERE load = ? ORDER BY series', [
        load,
      ]);
      for (const row of series) {
        const number = row.number('series');
        const own = (table: string) =>
          `SELECT instant::DOUBLE AS instant, value FROM ${table} WHERE series = ${number} AND load = ${load}`;
        const pieces = doubleColumns(
          connection,
          `${own('visible')} UNION ALL ${own('covered')} ORDER BY instant`,
        );
        for await (const [at, value] of pieces) await take(number, at, value);
      }
    });
  },

  sums(catalogue: Catalogue, load: LoadNumber): Promise<ReadonlyMap<SeriesNumber, ReadingSum>> {
    return connectionsOf(catalogue).use((connection) => sumsOf(connection, load));
  },

  async settle(): Promise<void> {},
};
