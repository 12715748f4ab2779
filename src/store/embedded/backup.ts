import { rmSync } from 'node:fs';
import { join } from 'node:path';
import type { DuckDBConnection } from '@duckdb/node-api';
import { literal, oneRow } from './sql.js';

let made = 0;

/**
 * A copy of everything committed, as one file of its own beside the store file (the only place the database may write
 * to). Loads that commit meanwhile are in it wholly or not at all.
 *
 * @returns its path; whoever asked for it takes it away.
 */
export async function copyOfStore(connection: DuckDBConnection, folder: string): Promise<string> {
  made += 1;
  const name = `underice.backup.${process.pid}.${made}`;
  const path = join(folder, `${name}.duckdb`);
  const alias = `backup_${made}`;
  removeCopy(path);
  try {
    const source = (await oneRow(connection, 'SELECT current_database() AS name')).text('name');
    await connection.run(`ATTACH ${literal(path)} AS ${alias}`);
    try {
      await connection.run(`COPY FROM DATABASE "${source}" TO ${alias}`);
    } finally {
      await connection.run(`DETACH ${alias}`);
    }
    return path;
  } catch (error) {
    removeCopy(path);
    throw error;
  }
}

export function removeCopy(path: string): void {
  for (const rest of [path, `${path}.wal`]) rmSync(rest, { force: true });
}
