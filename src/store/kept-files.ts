import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { blobValue, DuckDBBlobValue, type DuckDBConnection } from '@duckdb/node-api';
import { oneRow, rows } from './embedded/sql.js';

/** Where photographs lie in a data folder, each under the hash of its bytes. */
export const PHOTOGRAPHS = 'photographs';
export const PHOTOGRAPH_NAME = /^[0-9a-f]{40}\.jpg$/;

/**
 * What belongs to a group and lies beside its store file. Settings are not among it: ports, addresses and a server's
 * password belong to the machine.
 */
const PEOPLE = ['underice.accounts.json', 'underice.audit.jsonl', 'underice.people.json'];

/** A backup's own table, which no data folder has. */
export const KEPT_FILES = 'kept_file';

function filesBeside(folder: string): readonly string[] {
  const photographs = join(folder, PHOTOGRAPHS);
  const named = existsSync(photographs) ? readdirSync(photographs).filter(isPhotograph).sort() : [];
  return [
    ...PEOPLE.filter((name) => existsSync(join(folder, name))),
    ...named.map((name) => `${PHOTOGRAPHS}/${name}`),
  ];
}

const isPhotograph = (name: string): boolean => PHOTOGRAPH_NAME.test(name);
const isPhotographPath = (path: string): boolean =>
  path.startsWith(`${PHOTOGRAPHS}/`) && isPhotograph(path.slice(PHOTOGRAPHS.length + 1));

/** Puts the files beside a folder's store into a copy of the store; the copy is then the owner's alone to read. */
export async function takeIn(connection: DuckDBConnection, path: string, folder: string): Promise<void> {
  chmodSync(path, 0o600);
  await connection.run(`CREATE TABLE ${KEPT_FILES} (name VARCHAR, bytes BLOB)`);
  for (const name of filesBeside(folder)) {
    const bytes = new Uint8Array(readFileSync(join(folder, name)));
    await connection.run(`INSERT INTO ${KEPT_FILES} VALUES (?, ?)`, [name, blobValue(bytes)]);
  }
}

/**
 * Writes the files of a copy into a folder, those only that may lie there; one that is there already stays. `which`
 * leaves the accounts out where what is written is to be handed on. The paths written are added to `written`.
 */
export async function layOut(
  connection: DuckDBConnection,
  folder: string,
  which: 'all' | 'photographs',
  written: string[] = [],
): Promise<void> {
  if (!(await hasFiles(connection))) return;
  const names = await rows(connection, `SELECT name FROM ${KEPT_FILES} ORDER BY name`);
  for (const name of names.map((row) => row.text('name'))) {
    const wanted = isPhotographPath(name) || (which === 'all' && PEOPLE.includes(name));
    const path = join(folder, name);
    if (!wanted || existsSync(path)) continue;
    const answer = await connection.run(`SELECT bytes FROM ${KEPT_FILES} WHERE name = ?`, [name]);
    const bytes = (await answer.getRows())[0]?.[0];
    if (!(bytes instanceof DuckDBBlobValue)) throw new TypeError(`${name} has no bytes`);
    place(path, bytes.bytes, written);
  }
}

function place(path: string, bytes: Uint8Array, written: string[]): void {
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  written.push(path);
  writeFileSync(path, bytes, { mode: 0o600, flag: 'wx', flush: true });
}

/** A data folder made from a copy holds its files as files. */
export async function dropFiles(connection: DuckDBConnection): Promise<void> {
  await connection.run(`DROP TABLE IF EXISTS ${KEPT_FILES}`);
}

/** The photographs of an exported folder, into a new data folder. */
export function takePhotographs(from: string, folder: string, written: string[]): void {
  const photographs = join(from, PHOTOGRAPHS);
  if (!existsSync(photographs)) return;
  for (const name of readdirSync(photographs).filter(isPhotograph)) {
    const path = join(folder, PHOTOGRAPHS, name);
    if (!existsSync(path)) place(path, readFileSync(join(photographs, name)), written);
  }
}

/** Takes away what a restore that failed wrote. */
export function takeAway(written: readonly string[]): void {
  for (const path of written) rmSync(path, { force: true });
}

async function hasFiles(connection: DuckDBConnection): Promise<boolean> {
  const found = await oneRow(
    connection,
    `SELECT count(*)::INTEGER AS tables FROM duckdb_tables() WHERE table_name = '${KEPT_FILES}'`,
  );
  return found.number('tables') > 0;
}
