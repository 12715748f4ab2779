import type { DuckDBConnection } from '@duckdb/node-api';
import type { LoadNumber, SeriesNumber } from '../entries.js';
import type { SeriesOutcome } from '../reading-store.js';
import { oneRow, rows } from './sql.js';

type Overlap = Pick<SeriesOutcome, 'overlapping' | 'differing' | 'largestDifference'>;
type SeriesSpan = Pick<SeriesOutcome, 'series' | 'first' | 'last'>;

/** Values are kept to 1e-4: whatever lies further apart than half of that is another value. */
const SAME_VALUE = 0.00005;

/**
 * The readings of a new load cover what stood at the same instants: those rows move to the covered table. Only
 * the load's own span is looked at.
 *
 * @returns by series, how many readings were covered and how far they differ.
 */
export async function coverOlder(
  connection: DuckDBConnection,
  load: LoadNumber,
  spans: readonly SeriesSpan[],
): Promise<ReadonlyMap<SeriesNumber, Overlap>> {
  const touched = await seriesWithOlder(connection, load, spans);
  if (touched.length === 0) return new Map();
  const older = `FROM visible o JOIN visible n ON n.load = ${load} AND n.series = o.series AND n.instant = o.instant
    WHERE o.load <> ${load} AND ${within('o', touched)} AND ${within('n', touched)}`;
  const differ = `abs(o.value - n.value) > ${SAME_VALUE}`;
  const overlaps = await rows(
    connection,
    `SELECT o.series, count(*) AS overlapping, count(*) FILTER (${differ}) AS differing,
      max(abs(o.value - n.value)) AS largest ${older} GROUP BY o.series`,
  );
  if (overlaps.length === 0) return new Map();
  await connection.run(`INSERT INTO covered SELECT o.series, o.load, o.instant, o.value ${older}`);
  await connection.run(`DELETE FROM visible o USING visible n
    WHERE n.load = ${load} AND n.series = o.series AND n.instant = o.instant
    AND o.load <> ${load} AND ${within('o', touched)} AND ${within('n', touched)}`);
  return new Map(
    overlaps.map((row) => [
      row.number('series'),
      {
        overlapping: row.number('overlapping'),
        differing: row.number('differing'),
        // Both values are whole multiples of 1e-4, their difference in binary need not be.
        largestDifference: Math.round(row.number('largest') * 1e4) / 1e4,
      },
    ]),
  );
}

/** Takes a load's readings away; at each of their instants the newest load left shows again. */
export async function uncover(
  connection: DuckDBConnection,
  load: LoadNumber,
  spans: readonly SeriesSpan[],
): Promise<void> {
  if (spans.length === 0) return;
  await connection.run(`DELETE FROM covered WHERE load = ${load} AND ${within('covered', spans)}`);
  const below = await oneRow(
    connection,
    `SELECT count(*) AS number FROM covered WHERE ${within('covered', spans)}`,
  );
  if (below.number('number') > 0) {
    await connection.run(`CREATE OR REPLACE TEMP TABLE rising AS
      SELECT c.series, max(c.load) AS load, c.instant, arg_max(c.value, c.load) AS value
      FROM covered c JOIN visible v ON v.load = ${load} AND v.series = c.series AND v.instant = c.instant
      WHERE ${within('c', spans)} AND ${within('v', spans)} GROUP BY c.series, c.instant`);
    await connection.run(`DELETE FROM covered c USING rising r
      WHERE r.series = c.series AND r.instant = c.instant AND r.load = c.load AND ${within('c', spans)}`);
    await connection.run('INSERT INTO visible SELECT * FROM rising ORDER BY series, instant');
    await connection.run('DROP TABLE rising');
  }
  await connection.run(`DELETE FROM visible WHERE load = ${load} AND ${within('visible', spans)}`);
}

/** Of these, the series to which an older standing load brought readings between the same instants. */
async function seriesWithOlder(
  connection: DuckDBConnection,
  load: LoadNumber,
  spans: readonly SeriesSpan[],
): Promise<readonly SeriesSpan[]> {
  const standing = await rows(
    connection,
    `SELECT p.series, min(p.first_ms) AS first, max(p.last_ms) AS last FROM load_series p
      JOIN load l ON l.number = p.load WHERE l.withdrawn_at IS NULL AND p.load <> ${load} GROUP BY p.series`,
  );
  const reaches = new Map(standing.map((row) => [row.number('series'), row]));
  return spans.filter(({ series, first, last }) => {
    const reach = reaches.get(series);
    return reach !== undefined && reach.number('first') <= last && reach.number('last') >= first;
  });
}

/** Rows of those series between the first and last instant of any of them: what statistics of row groups can skip. */
function within(table: string, spans: readonly SeriesSpan[]): string {
  const first = spans.reduce((least, span) => Math.min(least, span.first), Number.POSITIVE_INFINITY);
  const last = spans.reduce((most, span) => Math.max(most, span.last), Number.NEGATIVE_INFINITY);
  const numbers = spans.map(({ series }) => series).join(', ');
  return `${table}.series IN (${numbers}) AND ${table}.instant BETWEEN ${first} AND ${last}`;
}
