import {
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { DuckDBInstance } from '@duckdb/node-api';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type Folder, openFolder, restoreFolder, StoreRefused } from '../../src/store/index.js';
import { Child, compiled } from './children.js';
import { seasons } from './killed.js';
import { HOUR, loadIn, loadReadings, type Readings, visible } from './loads.js';
import { temporaryFolder } from './temporary.js';

const STORE = 'underice.duckdb';
const hours = (from: number, count: number, value: number): Readings =>
  Array.from({ length: count }, (_, i) => [(from + i) * HOUR, value + i / 1e4]);

const once = mkdtempSync(join(tmpdir(), 'underice-test-'));
beforeAll(async () => (await madeFull(join(once, 'full'))).close());
afterAll(() => rmSync(once, { recursive: true, force: true }));

/** A folder of its own with everything in it: made once, copied for each test. */
function fullFolder(dir = join(temporaryFolder(), 'season')): Promise<Folder> {
  cpSync(join(once, 'full'), dir, { recursive: true });
  return openFolder(dir);
}

/** Loads over and under each other, one withdrawn, two versions of the season, a person's ruling. */
async function madeFull(dir: string): Promise<Folder> {
  const folder = await openFolder(dir);
  await folder.applySeason(seasons[0], 'mira');
  await loadReadings(folder, { pool: hours(0, 900, 1), riffle: hours(0, 50, 5) });
  const gone = await loadReadings(folder, { pool: hours(100, 300, 2) });
  await loadReadings(folder, { pool: hours(200, 400, 3) });
  await loadReadings(folder, { pool: hours(0, 3, 9) }, { span: 'day' });
  await folder.withdraw(gone.load, 'mira');
  await folder.setFlags(
    [
      {
        station: 'pool',
        quantity: 'temperature',
        from: 0,
        to: 5 * HOUR,
        flag: 4,
        set: 'person',
        note: 'in air',
      },
    ],
    'mira',
  );
  await folder.applySeason(seasons[1], 'mira');
  return folder;
}

/** Everything a folder can be asked, to be compared with another's. */
async function everything({ catalogue, readings }: Folder) {
  const loads = await catalogue.loads();
  const series = await catalogue.series();
  const brought: unknown[] = [];
  for (const { load } of loads) {
    for (const { number } of series) {
      const own = await readings.readLoad(catalogue, load, number);
      brought.push([load, number, [...own.at], [...own.value]]);
    }
  }
  return {
    loads,
    series,
    brought,
    counts: [...(await readings.count(catalogue))].sort(),
    stations: await catalogue.stations(),
    deployments: await catalogue.deployments(),
    seasons: await catalogue.seasons(),
    flags: await catalogue.flags('pool', 'temperature', 0, 1e15),
    days: await catalogue.days(),
  };
}

async function code(work: Promise<unknown>): Promise<string> {
  try {
    await work;
  } catch (error) {
    if (error instanceof StoreRefused) return error.remark.code;
    throw error;
  }
  throw new Error('it was not refused');
}

async function changed(dir: string, ...statements: string[]): Promise<void> {
  const instance = await DuckDBInstance.create(join(dir, STORE));
  const connection = await instance.connect();
  for (const statement of statements) await connection.run(statement);
  connection.closeSync();
  instance.closeSync();
}

describe('a backup', () => {
  test('made while others load restores into an equal folder, whole to the last digit', async () => {
    const folder = await fullFolder();
    const before = await everything(folder);
    const file = join(temporaryFolder(), 'été 2026.underice');
    const loading = loadReadings(folder, { late: hours(0, 20_000, 4) });
    const { bytes } = await folder.backup(file);
    await loading;
    expect(bytes).toBeGreaterThan(10_000);
    expect(readdirSync(folder.dir).filter((name) => name.startsWith('underice.backup'))).toEqual([]);
    const after = await everything(folder);
    await folder.close();
    const restored = await openFolder(await restoreFolder(file, join(temporaryFolder(), 'restored')));
    const found = await everything(restored);
    expect(found).toEqual(found.loads.length === before.loads.length ? before : after);
    expect((await restored.verify()).findings).toEqual([]);
    await restored.close();
  });

  test('never takes the place of another file, and a folder is never restored over', async () => {
    const folder = await fullFolder();
    const file = join(temporaryFolder(), 'a.underice');
    await folder.backup(file);
    expect(await code(folder.backup(file))).toBe('backup-exists');
    await folder.close();
    expect(await code(restoreFolder(file, folder.dir))).toBe('restore-not-empty');
    expect(await code(restoreFolder(join(file, 'nothing'), join(temporaryFolder(), 'x')))).toBe(
      'backup-missing',
    );
  });

  test('that is cut short, newer or no backup is refused and leaves nothing', async () => {
    const folder = await fullFolder();
    const place = temporaryFolder();
    const [cut, newer, text] = ['cut', 'newer', 'text'].map((name) => join(place, name));
    await folder.backup(cut);
    truncateSync(cut, 300_000);
    mkdirSync(newer);
    await folder.backup(join(newer, STORE));
    await changed(newer, 'INSERT INTO migration VALUES (99, 0)');
    writeFileSync(text, 'date,temp\n'.repeat(5000));
    await folder.close();
    const into = join(temporaryFolder(), 'restored');
    expect(await code(restoreFolder(cut, into))).toBe('backup-cut-short');
    expect(await code(restoreFolder(join(newer, STORE), into))).toBe('backup-newer');
    expect(await code(restoreFolder(text, into))).toBe('backup-unreadable');
    expect(readdirSync(into)).toEqual([]);
  });
});

test('a backup puts no file beside the store but photographs and accounts', async () => {
  const folder = await fullFolder();
  const place = temporaryFolder();
  await folder.backup(join(place, STORE));
  await folder.close();
  const names = ['../out.jpg', 'settings.yaml', 'photographs/x.jpg', `photographs/${'a'.repeat(40)}.jpg`];
  await changed(place, ...names.map((name) => `INSERT INTO kept_file VALUES ('${name}', 'not read'::BLOB)`));
  const into = join(temporaryFolder(), 'restored');
  await restoreFolder(join(place, STORE), into);
  expect(readdirSync(into, { recursive: true }).sort()).toEqual(['photographs', names[3], 'underice.duckdb']);
  expect(existsSync(join(into, names[0]))).toBe(false);
});

describe('an export', () => {
  test('loads back into an equal folder', async () => {
    const folder = await fullFolder();
    const before = await everything(folder);
    const dir = join(temporaryFolder(), 'export');
    expect(await folder.exportAll(dir)).toMatchObject({ loads: 3, readings: 1353 });
    expect(await code(folder.exportAll(dir))).toBe('export-not-empty');
    await folder.close();
    expect(readFileSync(join(dir, 'season.yaml'), 'utf8')).toBe(seasons[1].text);
    expect(readFileSync(join(dir, 'loads', '4.csv'), 'utf8')).toBe(
      'series,instant,value\n3,1970-01-01T00:00:00.000Z,9\n3,1970-01-01T01:00:00.000Z,9.0001\n3,1970-01-01T02:00:00.000Z,9.0002\n',
    );
    const restored = await openFolder(await restoreFolder(dir, join(temporaryFolder(), 'restored')));
    expect(await everything(restored)).toEqual(before);
    expect((await restored.verify()).findings).toEqual([]);
    await restored.close();
  });

  test.each(['catalogue.json', 'loads/3.csv'])(
    'without its %s is refused and leaves nothing',
    async (lost) => {
      const folder = await fullFolder();
      const dir = join(temporaryFolder(), 'export');
      await folder.exportAll(dir);
      await folder.close();
      writeFileSync(join(dir, lost), 'series,instant,value\n1,yesterday,5\n');
      const into = join(temporaryFolder(), 'restored');
      expect(await code(restoreFolder(dir, into))).toBe('export-incomplete');
      expect(readdirSync(into)).toEqual([]);
    },
  );
});

describe('a check', () => {
  test('finds nothing in a whole folder, twice', async () => {
    const folder = await fullFolder();
    const whole = { loads: 3, readings: 1353, seasons: 2, findings: [] };
    expect(await folder.verify()).toEqual(whole);
    expect(await folder.verify()).toEqual(whole);
    await folder.close();
  });

  test.each<[string, readonly string[], readonly string[]]>([
    [
      'a lost reading',
      ['DELETE FROM visible WHERE series = 2 AND instant = 0'],
      ['verify-load-readings', 'verify-days'],
    ],
    [
      'a changed value',
      ['UPDATE visible SET value = value + 0.01 WHERE series = 1 AND instant = 36000000'],
      ['verify-load-changed', 'verify-days'],
    ],
    ['a reading of no load', ['INSERT INTO visible VALUES (1, 77, 1, 1)'], ['verify-orphans']],
    [
      'a reading of a withdrawn load',
      ['INSERT INTO covered VALUES (1, 2, 360000000, 1)'],
      ['verify-orphans', 'verify-covered'],
    ],
    [
      'two readings at one instant',
      ['INSERT INTO visible SELECT * FROM visible WHERE series = 2 AND instant = 0'],
      ['verify-twice', 'verify-load-readings'],
    ],
    [
      'a hidden reading',
      [
        'INSERT INTO covered SELECT * FROM visible WHERE series = 2 AND instant = 0',
        'DELETE FROM visible WHERE series = 2 AND instant = 0',
      ],
      ['verify-covered', 'verify-days'],
    ],
    ['a gap in the loads', ['DELETE FROM load WHERE number = 2'], ['verify-gap', 'verify-reference']],
    ['a lost version of the season', ['DELETE FROM season WHERE version = 1'], ['verify-gap']],
    ['a lost day', ['DELETE FROM day WHERE station = 1 AND day = 3'], ['verify-days']],
  ])('finds %s', async (_, statements, findings) => {
    const folder = await fullFolder();
    await folder.verify();
    await folder.close();
    await changed(folder.dir, ...statements);
    const again = await openFolder(folder.dir);
    const found = (await again.verify()).findings.map((one) => one.code);
    expect([...new Set(found)].sort()).toEqual([...findings].sort());
    await again.close();
  });
});

test('a folder of the first format opens, with what was in it', async () => {
  const dir = join(temporaryFolder(), 'season');
  mkdirSync(dir);
  const first = gunzipSync(readFileSync(new URL('first-format/underice.duckdb.gz', import.meta.url)));
  writeFileSync(join(dir, STORE), first);
  const folder = await openFolder(dir);
  const loads = await folder.catalogue.loads();
  expect(loads.map(({ file, withdrawn }) => [file, withdrawn === null])).toEqual([
    ['upper-a.csv', true],
    ['upper-b.csv', false],
    ['upper-c.csv', true],
  ]);
  expect((await folder.catalogue.seasons()).map(({ version }) => version)).toEqual([1, 2]);
  const record = await visible(folder, 'upper');
  expect(record).toHaveLength(2400);
  expect(record[0]).toEqual([Date.UTC(2025, 10, 1, 4), 6]);
  // 2025-12-01 04:00 UTC is the first hour of upper-c.csv, which lies over upper-a.csv.
  expect(record[720]).toEqual([Date.UTC(2025, 11, 1, 4), 4]);
  expect((await folder.catalogue.days(['upper'])).get('upper')?.mean.length).toBe(100);
  expect((await folder.verify()).findings).toEqual([]);
  await folder.close();
});

test('after a backup, a check and an export the folder is still this process’s alone', async () => {
  const folder = await fullFolder();
  await folder.backup(join(temporaryFolder(), 'a.underice'));
  await folder.verify();
  await folder.exportAll(join(temporaryFolder(), 'export'));
  const second = new Child(`
    import { openFolder } from '${compiled('store/index.js')}';
    try { await openFolder(${JSON.stringify(folder.dir)}); console.log('opened'); }
    catch (error) { console.log(JSON.stringify(error.remark ?? String(error))); }
    process.exit(0);`);
  expect(JSON.parse(await second.line('{'))).toMatchObject({
    code: 'folder-held',
    with: { folder: folder.dir, pid: process.pid },
  });
  await second.exited;
  await loadReadings(folder, { pool: hours(0, 5, 1) });
  await folder.close();
  expect(existsSync(join(folder.dir, 'owner.json'))).toBe(false);
});

test('a clock that jumps backwards between and during loads changes nothing of what is shown', async () => {
  let now = Date.UTC(2026, 1, 10);
  const folder = await openFolder(join(temporaryFolder(), 'season'), { now: () => now });
  await loadReadings(folder, { pool: hours(0, 10, 1) });
  now = Date.UTC(1999, 0, 1);
  const second = await loadReadings(folder, { pool: hours(5, 10, 2) });
  expect((await visible(folder, 'pool')).map(([, value]) => Math.floor(value))).toEqual([
    1, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2, 2, 2, 2, 2,
  ]);
  now = Date.UTC(1998, 0, 1);
  await folder.withdraw(second.load, 'test');
  expect(await visible(folder, 'pool')).toEqual(hours(0, 10, 1));
  expect((await folder.verify()).findings).toEqual([]);
  await folder.close();
});

test('a clock that goes back whenever it is looked at numbers loads in the order they came', async () => {
  let now = Date.UTC(2026, 1, 10);
  const backwards = () => {
    now -= 3 * HOUR;
    return now;
  };
  const folder = await openFolder(join(temporaryFolder(), 'season'), { now: backwards });
  for (const value of [1, 2, 3]) {
    await folder.write('mira', async (write) => {
      now -= 48 * HOUR;
      await loadIn(write, { pool: hours(value, 5, value) });
      now -= 48 * HOUR;
    });
  }
  expect((await folder.catalogue.loads()).map(({ load }) => load)).toEqual([1, 2, 3]);
  expect((await visible(folder, 'pool')).map(([, value]) => Math.floor(value))).toEqual([
    1, 2, 3, 3, 3, 3, 3,
  ]);
  expect((await folder.verify()).findings).toEqual([]);
  await folder.close();
});
