import type { DuckDBConnection } from '@duckdb/node-api';
import type { LoadNumber, SeriesNumber } from '../entries.js';
import type { ReadingSum } from '../reading-store.js';
import { INSTANT_MODULUS, SUM_MODULUS, VALUE_MODULUS } from '../reading-sum.js';
import { rows } from './sql.js';

const positive = (term: string, modulus: number) => `((${term} % ${modulus} + ${modulus}) % ${modulus})`;
const CHECKSUM = `(sum(${positive('instant', INSTANT_MODULUS)} *
  (${positive('round(value * 1e4)::BIGINT', VALUE_MODULUS)} + 1)) % ${SUM_MODULUS})::BIGINT`;

/** What a load's rows in the store file add up to, visible and covered ones, by series. */
export async function sumsOf(
  connection: DuckDBConnection,
  load: LoadNumber,
): Promise<ReadonlyMap<SeriesNumber, ReadingSum>> {
  const own = (table: string) => `SELECT series, instant, value FROM ${table} WHERE load = ${load}`;
  const found = await rows(
    connection,
    `SELECT series, count(*) AS readings, min(instant) AS first, max(instant) AS last, min(value) AS least,
      max(value) AS greatest, ${CHECKSUM} AS checksum
      FROM (${own('visible')} UNION ALL ${own('covered')}) GROUP BY series`,
  );
  return new Map(
    found.map((row) => [
      row.number('series'),
      {
        readings: row.number('readings'),
        first: row.number('first'),
        last: row.number('last'),
        min: row.number('least'),
        max: row.number('greatest'),
        checksum: row.number('checksum'),
      },
    ]),
  );
}
