import { once } from 'node:events';
import { createReadStream, createWriteStream, existsSync, readdirSync, readFileSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import type { DuckDBConnection, DuckDBValue } from '@duckdb/node-api';
import { z } from 'zod';
import { bringIn } from './embedded/bring-in.js';
import { newestFormat } from './embedded/migrations.js';
import { rows } from './embedded/sql.js';
import type { LoadNumber, SeriesNumber } from './entries.js';
import { KEPT_FILES } from './kept-files.js';
import { madeFolder } from './made-folder.js';
import { StoreRefused } from './refused.js';

const CATALOGUE = 'catalogue.json';
const SEASON = 'season.yaml';
/** Readings and photographs go to files of their own, accounts are not handed on, days are worked out anew, and where readings lie is each folder's own matter. */
const LEFT = [
  'visible',
  'covered',
  'day',
  'migration',
  'reading_place',
  'server_load',
  'load_sum',
  KEPT_FILES,
];
const HEADER = 'series,instant,value';
const LINES_AT_ONCE = 20_000;

const cell = z.union([z.number(), z.string(), z.boolean(), z.null()]);
const catalogueSchema = z.object({
  format: z.number().int(),
  tables: z.record(
    z.string().regex(/^[a-z][a-z0-9_]*$/),
    z.array(z.record(z.string().regex(/^[a-z][a-z0-9_]*$/), cell)),
  ),
});
type Exported = z.infer<typeof catalogueSchema>;

export interface ExportMade {
  readonly folder: string;
  readonly loads: number;
  readonly readings: number;
}

/** Every reading of a load, series by series, instants rising. */
export type Scan = (
  load: LoadNumber,
  take: (series: SeriesNumber, at: Float64Array, value: Float64Array) => Promise<void>,
) => Promise<void>;

/**
 * Writes everything a folder holds in open formats: `season.yaml`, `catalogue.json` (the catalogue's tables as lists of
 * rows; instants as epoch milliseconds UTC), and `loads/N.csv` for every standing load.
 *
 * @throws StoreRefused 'export-not-empty'
 */
export async function exportTo(dir: string, connection: DuckDBConnection, scan: Scan): Promise<ExportMade> {
  if (existsSync(dir) && readdirSync(dir).length > 0)
    throw new StoreRefused({ code: 'export-not-empty', with: { folder: dir } }, 2);
  madeFolder(join(dir, 'loads'));
  const catalogue: Exported = { format: newestFormat, tables: await tablesOf(connection) };
  const standing = (catalogue.tables.load ?? []).filter((row) => row.withdrawn_at === null);
  let readings = 0;
  for (const { number } of standing) readings += await writeLoad(dir, Number(number), scan);
  const season = (catalogue.tables.season ?? []).at(-1)?.text;
  if (typeof season === 'string') await writeFile(join(dir, SEASON), season);
  await writeFile(join(dir, CATALOGUE), `${JSON.stringify(catalogue, null, 1)}\n`);
  return { folder: dir, loads: standing.length, readings };
}

async function tablesOf(connection: DuckDBConnection): Promise<Exported['tables']> {
  const names = (await rows(connection, 'SELECT table_name AS name FROM duckdb_tables() ORDER BY name'))
    .map((row) => row.text('name'))
    .filter((name) => !LEFT.includes(name));
  const tables: Exported['tables'] = {};
  for (const name of names) {
    const found = await (await connection.run(`SELECT * FROM ${name} ORDER BY ALL`)).getRowObjects();
    tables[name] = found.map((row) =>
      Object.fromEntries(Object.entries(row).map(([key, value]) => [key, plain(value)])),
    );
  }
  return tables;
}

function plain(value: DuckDBValue): z.infer<typeof cell> {
  return typeof value === 'bigint' ? Number(value) : cell.parse(value);
}

async function writeLoad(dir: string, load: LoadNumber, scan: Scan): Promise<number> {
  const out = createWriteStream(loadFile(dir, load));
  let readings = 0;
  out.write(`${HEADER}\n`);
  await scan(load, async (series, at, value) => {
    readings += at.length;
    for (let from = 0; from < at.length; from += LINES_AT_ONCE) {
      let text = '';
      for (let i = from; i < Math.min(at.length, from + LINES_AT_ONCE); i++)
        text += `${series},${new Date(at[i]).toISOString()},${value[i]}\n`;
      if (!out.write(text)) await once(out, 'drain');
    }
  });
  await pipeline(Readable.from([]), out);
  return readings;
}

function loadFile(dir: string, load: LoadNumber): string {
  return join(dir, 'loads', `${load}.csv`);
}

/**
 * Fills an empty store file, in the transaction open on `connection`, with what `exportTo` wrote. Kept days are the
 * caller's to renew.
 *
 * @throws StoreRefused 'export-incomplete', 'backup-newer'
 */
export async function takeExport(dir: string, connection: DuckDBConnection): Promise<void> {
  const { format, tables } = exported(dir);
  if (format > newestFormat) throw new StoreRefused({ code: 'backup-newer', with: { file: dir } });
  for (const [name, list] of Object.entries(tables)) {
    for (const row of list) {
      const columns = Object.keys(row);
      await rows(
        connection,
        `INSERT INTO ${name} (${columns.map((column) => `"${column}"`).join(', ')})
          VALUES (${columns.map(() => '?').join(', ')})`,
        Object.values(row),
      );
    }
  }
  await bringIn(connection, (load, take) => readLoad(dir, load, take));
}

function exported(dir: string): Exported {
  try {
    return catalogueSchema.parse(JSON.parse(readFileSync(join(dir, CATALOGUE), 'utf8')));
  } catch (error) {
    throw new StoreRefused({ code: 'export-incomplete', with: { folder: dir, file: CATALOGUE } }, 2, {
      cause: error,
    });
  }
}

async function readLoad(dir: string, load: LoadNumber, take: Parameters<Scan>[1]): Promise<void> {
  const file = loadFile(dir, load);
  const broken = () => new StoreRefused({ code: 'export-incomplete', with: { folder: dir, file } }, 2);
  if (!existsSync(file)) throw broken();
  const at = new Float64Array(LINES_AT_ONCE);
  const value = new Float64Array(LINES_AT_ONCE);
  let series = 0;
  let length = 0;
  const flush = async () => {
    if (length > 0) await take(series, at.slice(0, length), value.slice(0, length));
    length = 0;
  };
  let header = true;
  for await (const line of createInterface({ input: createReadStream(file, 'utf8') })) {
    if (header) {
      if (line !== HEADER) throw broken();
      header = false;
      continue;
    }
    const [of, instant, reading] = line.split(',');
    const place = Number(of);
    const moment = Date.parse(instant ?? '');
    const number = Number(reading);
    if (
      reading === undefined ||
      reading === '' ||
      !Number.isInteger(place) ||
      !Number.isFinite(moment + number)
    )
      throw broken();
    if (place !== series || length === LINES_AT_ONCE) await flush();
    series = place;
    at[length] = moment;
    value[length++] = number;
  }
  if (header) throw broken();
  await flush();
}
