import type { DuckDBConnection } from '@duckdb/node-api';
import { StoreRefused } from '../refused.js';
import { oneRow, rows } from './sql.js';

/**
 * Numbered from the first day; one that has been released is never edited. No keys on readings (five times slower,
 * twenty times larger), no foreign keys and no list columns (backup and updates fail with them): references are
 * checked in code. Instants are milliseconds since 1970 UTC.
 */
const migrations: readonly { readonly number: number; readonly statements: readonly string[] }[] = [
  {
    number: 1,
    statements: [
      'CREATE TABLE visible (series INTEGER, load INTEGER, instant BIGINT, value DOUBLE)',
      'CREATE TABLE covered (series INTEGER, load INTEGER, instant BIGINT, value DOUBLE)',
      `CREATE TABLE station (number INTEGER, id VARCHAR, kind VARCHAR, zone VARCHAR, offset_minutes INTEGER,
        latitude DOUBLE, longitude DOUBLE, in_season BOOLEAN)`,
      `CREATE TABLE deployment (station INTEGER, position INTEGER, logger VARCHAR, from_ms BIGINT, to_ms BIGINT,
        zone VARCHAR, clock VARCHAR, temperature VARCHAR)`,
      'CREATE TABLE series (number INTEGER, station INTEGER, quantity VARCHAR, span VARCHAR)',
      `CREATE TABLE load (number INTEGER, file VARCHAR, sha256 VARCHAR, bytes BIGINT, made_by VARCHAR,
        made_at BIGINT, withdrawn_by VARCHAR, withdrawn_at BIGINT, understood VARCHAR)`,
      `CREATE TABLE load_series (load INTEGER, series INTEGER, readings BIGINT, first_ms BIGINT, last_ms BIGINT,
        min_value DOUBLE, max_value DOUBLE, overlapping BIGINT, differing BIGINT, largest_difference DOUBLE)`,
      'CREATE TABLE season (version INTEGER, text VARCHAR, made_by VARCHAR, made_at BIGINT)',
      `CREATE TABLE flag (station INTEGER, quantity VARCHAR, from_ms BIGINT, to_ms BIGINT, flag TINYINT,
        set_by_test VARCHAR, made_by VARCHAR, made_at BIGINT, note VARCHAR)`,
      `CREATE TABLE day (station INTEGER, day INTEGER, mean DOUBLE, min DOUBLE, max DOUBLE, coverage DOUBLE)`,
    ],
  },
  {
    number: 10,
    statements: [
      // No row while the readings lie in this file. `mark` is what this group left on the server to know its own by.
      'CREATE TABLE reading_place (url VARCHAR, database_name VARCHAR, mark VARCHAR)',
      // The loads whose readings are on the server, each under a tag that no other attempt ever had.
      'CREATE TABLE server_load (load INTEGER, tag VARCHAR)',
      // What the readings of a load add up to, as the first check of it found.
      'CREATE TABLE load_sum (load INTEGER, series INTEGER, readings BIGINT, checksum BIGINT)',
    ],
  },
  {
    number: 11,
    statements: [
      // What the quality checks found, year by year of a station; figures and offer are JSON.
      `CREATE TABLE finding (station INTEGER, quantity VARCHAR, year INTEGER, kind VARCHAR, from_ms BIGINT,
        to_ms BIGINT, flag TINYINT, figures VARCHAR, offer VARCHAR)`,
      // Which years of which record were judged, and what that rests on: another answer there makes it stale.
      'CREATE TABLE judged (station INTEGER, quantity VARCHAR, year INTEGER, rests_on VARCHAR, made_at BIGINT)',
    ],
  },
  {
    number: 12,
    statements: [
      // A view is the day a group is shown as of, 0 for today; each has a history of its own. `found_in` is what was
      // known: a judging stands until it changes. `judged` is the spell, JSON.
      'CREATE TABLE judging (number INTEGER, view INTEGER, made_at BIGINT, found_in VARCHAR)',
      `CREATE TABLE spell (view INTEGER, id VARCHAR, found_at BIGINT, changed_at BIGINT, judged VARCHAR,
        seen_by VARCHAR, seen_at BIGINT, seen_note VARCHAR,
        settled_how VARCHAR, settled_by VARCHAR, settled_at BIGINT, settled_note VARCHAR)`,
      `CREATE TABLE spell_event (number INTEGER, view INTEGER, judging INTEGER, change VARCHAR, made_at BIGINT,
        judged VARCHAR)`,
    ],
  },
  {
    number: 13,
    statements: [
      // How far each source of news has been told, in the source's own words (JSON).
      'CREATE TABLE news_mark (source VARCHAR, mark VARCHAR)',
      'CREATE TABLE message_event (number INTEGER, key VARCHAR, made_at BIGINT, content VARCHAR)',
      // Whom an event is for, and from when on; `message` once it stands in one.
      'CREATE TABLE message_part (event INTEGER, person VARCHAR, due_ms BIGINT, message INTEGER)',
      `CREATE TABLE message (number INTEGER, person VARCHAR, made_at BIGINT, id VARCHAR, content VARCHAR,
        acknowledged_by VARCHAR, acknowledged_at BIGINT)`,
      `CREATE TABLE delivery (number INTEGER, message INTEGER, channel VARCHAR, state VARCHAR, tries INTEGER,
        next_ms BIGINT, last_ms BIGINT, answer VARCHAR)`,
      `CREATE TABLE feed (id VARCHAR, state VARCHAR, etag VARCHAR, modified VARCHAR, seen VARCHAR, tried_ms BIGINT,
        fresh_ms BIGINT, tries INTEGER, next_ms BIGINT, told_ms BIGINT, load VARCHAR, answer VARCHAR)`,
    ],
  },
  {
    number: 14,
    statements: [
      // Seasons as they were when they were closed. `content` is JSON of src/reports; `sha256` is of its bytes.
      `CREATE TABLE closed_season (season VARCHAR, season_version INTEGER, method INTEGER, content VARCHAR,
        sha256 VARCHAR, made_by VARCHAR, made_at BIGINT)`,
    ],
  },
];

export const newestFormat = Math.max(...migrations.map(({ number }) => number));

/** Brings a store file to the newest format, each step in a transaction of its own. */
export async function migrate(connection: DuckDBConnection, folder: string): Promise<void> {
  const made = await migrationsMade(connection);
  const found = Math.max(0, ...made);
  if (found > newestFormat) {
    throw new StoreRefused({ code: 'store-newer', with: { folder, found, known: newestFormat } });
  }
  for (const { number, statements } of migrations) {
    if (made.has(number)) continue;
    await connection.run('BEGIN');
    try {
      await connection.run('CREATE TABLE IF NOT EXISTS migration (number INTEGER, made_at BIGINT)');
      for (const statement of statements) await connection.run(statement);
      await rows(connection, 'INSERT INTO migration VALUES (?, epoch_ms(now()::TIMESTAMP))', [number]);
      await connection.run('COMMIT');
    } catch (error) {
      await connection.run('ROLLBACK').catch(() => undefined);
      throw error;
    }
  }
}

async function migrationsMade(connection: DuckDBConnection): Promise<ReadonlySet<number>> {
  const known = await oneRow(
    connection,
    "SELECT count(*)::INTEGER AS tables FROM duckdb_tables() WHERE table_name = 'migration'",
  );
  if (known.number('tables') === 0) return new Set();
  const made = await rows(connection, 'SELECT number FROM migration');
  return new Set(made.map((row) => row.number('number')));
}
