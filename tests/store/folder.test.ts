import {
  chmodSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  truncateSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { describe, expect, test } from 'vitest';
import { newestFormat } from '../../src/store/embedded/migrations.js';
import { openFolder, StoreRefused } from '../../src/store/index.js';
import { Child, compiled } from './children.js';
import { HOUR, loadReadings, type Readings, visible } from './loads.js';
import { temporaryFolder } from './temporary.js';

const STORE = 'underice.duckdb';
const winter: Readings = Array.from({ length: 48 }, (_, i) => [i * HOUR, 1]);

/** A folder with one load in it, closed. */
async function writtenFolder(): Promise<string> {
  const dir = join(temporaryFolder(), 'season');
  const folder = await openFolder(dir);
  await loadReadings(folder, { pool: winter });
  await folder.close();
  return dir;
}

/** Code, figures and exit status of the refusal; fails where the folder opens. */
async function refusal(dir: string) {
  try {
    const folder = await openFolder(dir);
    await folder.close();
  } catch (error) {
    if (!(error instanceof StoreRefused)) throw error;
    return { ...error.remark, exit: error.exit };
  }
  throw new Error('the folder was opened');
}

const openAndSay = (dir: string) => `
  import { openFolder } from '${compiled('store/index.js')}';
  try {
    const folder = await openFolder(${JSON.stringify(dir)});
    console.log('opened');
    await new Promise((resolve) => process.stdin.once('data', resolve));
    await folder.close();
  } catch (error) {
    console.log(JSON.stringify(error.remark ?? String(error)));
  }
  process.exit(0);`;

describe('a data folder', () => {
  test('is made where it is absent, and opens again with what it holds', async () => {
    const folder = await openFolder(await writtenFolder());
    expect(await visible(folder, 'pool')).toEqual(winter);
    expect((await folder.catalogue.loads()).map(({ load, by }) => [load, by])).toEqual([[1, 'test']]);
    await folder.close();
  });

  test('may lie on a path with spaces, quotes, accents and two hundred characters', async () => {
    const dir = join(temporaryFolder(), `Rivière du Loup, l'hiver "26" ${'é'.repeat(100)}`, 'x'.repeat(80));
    const folder = await openFolder(dir);
    await loadReadings(folder, { pool: winter });
    expect(await visible(folder, 'pool')).toEqual(winter);
    await folder.close();
  });

  test('holds a store file, and owner.json for its user alone while it is open', async () => {
    const dir = join(temporaryFolder(), 'season');
    const folder = await openFolder(dir, { now: () => Date.UTC(2026, 1, 3) });
    const { token } = await folder.announce('http://127.0.0.1:4711');
    const owner = JSON.parse(readFileSync(join(dir, 'owner.json'), 'utf8'));
    expect(owner).toEqual({
      pid: process.pid,
      started: '2026-02-03T00:00:00.000Z',
      address: 'http://127.0.0.1:4711',
      token,
    });
    expect(token).toMatch(/^[0-9a-f]{64}$/);
    expect(statSync(join(dir, 'owner.json')).mode & 0o777).toBe(0o600);
    await folder.close();
    expect(readdirSync(dir)).toEqual([STORE]);
  });

  test('says who holds it to a second process, and opens for it afterwards', async () => {
    const dir = join(temporaryFolder(), 'season');
    const folder = await openFolder(dir, { now: () => Date.UTC(2026, 1, 3) });
    await folder.announce('http://127.0.0.1:4711');
    await loadReadings(folder, { pool: winter });
    const second = new Child(openAndSay(dir));
    expect(JSON.parse(await second.line('{'))).toEqual({
      code: 'folder-held',
      with: {
        folder: dir,
        pid: process.pid,
        since: '2026-02-03T00:00:00.000Z',
        address: 'http://127.0.0.1:4711',
      },
    });
    await second.exited;
    await folder.close();
    const third = new Child(openAndSay(dir));
    await third.line('opened');
    expect(await refusal(dir)).toMatchObject({ code: 'folder-held', exit: 1 });
    third.tell('end');
    await third.exited;
  });

  test('is not opened twice in one process', async () => {
    const dir = join(temporaryFolder(), 'season');
    const folder = await openFolder(dir);
    expect(await refusal(dir)).toMatchObject({ code: 'folder-held', with: { pid: process.pid } });
    await folder.close();
    await (await openFolder(dir)).close();
  });

  test('opens after its owner was killed, whose owner.json is still there', async () => {
    const dir = await writtenFolder();
    const owner = new Child(openAndSay(dir));
    await owner.line('opened');
    owner.kill();
    await owner.exited;
    expect(existsSync(join(dir, 'owner.json'))).toBe(true);
    const folder = await openFolder(dir);
    expect(await visible(folder, 'pool')).toEqual(winter);
    await folder.close();
  });

  test('opens where making its store file was cut short', async () => {
    const dir = temporaryFolder();
    const dead = new Child('');
    await dead.exited;
    writeFileSync(join(dir, `underice.new.${dead.pid}.duckdb`), 'DUCK');
    const folder = await openFolder(dir);
    await folder.close();
    expect(readdirSync(dir)).toEqual([STORE]);
  });

  test('opens for one of two processes that make it at the same moment', async () => {
    const dir = join(temporaryFolder(), 'season');
    const both = [new Child(openAndSay(dir)), new Child(openAndSay(dir))];
    const said = await Promise.all(both.map((child) => child.line('')));
    expect(said.filter((line) => line === 'opened')).toHaveLength(1);
    expect(said.filter((line) => line.includes('"folder-held"'))).toHaveLength(1);
    for (const child of both) child.tell('end');
    await Promise.all(both.map((child) => child.exited));
    await (await openFolder(dir)).close();
    expect(readdirSync(dir)).toEqual([STORE]);
  });

  test('is refused where it holds other things', async () => {
    const dir = temporaryFolder();
    writeFileSync(join(dir, 'holiday.jpg'), '');
    expect(await refusal(dir)).toEqual({
      code: 'folder-of-others',
      with: { folder: dir, found: 'holiday.jpg' },
      exit: 2,
    });
    expect(readdirSync(dir)).toEqual(['holiday.jpg']);
  });

  test('is refused where it is a file, or lies in one', async () => {
    const file = join(temporaryFolder(), 'season.txt');
    writeFileSync(file, 'text');
    expect(await refusal(file)).toMatchObject({ code: 'folder-not-a-folder', exit: 2 });
    expect(await refusal(join(file, 'season'))).toMatchObject({ code: 'folder-not-a-folder', exit: 2 });
  });

  test('is refused where nobody may write, and stays as it was', async () => {
    const parent = temporaryFolder();
    chmodSync(parent, 0o755);
    const dir = join(parent, 'season');
    mkdirSync(dir, { mode: 0o555 });
    for (const place of [dir, join(dir, 'inner')]) {
      const child = new Child(openAndSay(place), { asNobody: true });
      expect(JSON.parse(await child.line('{'))).toMatchObject({ code: 'folder-read-only' });
      await child.exited;
    }
    expect(readdirSync(dir)).toEqual([]);
  });
});

describe('a store file', () => {
  test.each([0, 1, 100, 4096, 12_288, 100_000])(
    'cut to %i bytes is refused and not touched',
    async (bytes) => {
      const dir = await writtenFolder();
      truncateSync(join(dir, STORE), bytes);
      const before = readFileSync(join(dir, STORE));
      expect(['store-cut-short', 'store-unreadable']).toContain((await refusal(dir)).code);
      expect(readFileSync(join(dir, STORE)).equals(before)).toBe(true);
    },
  );

  test.each([1, 1000, 262_144])('that lost its last %i bytes is refused and not touched', async (bytes) => {
    const dir = await writtenFolder();
    truncateSync(join(dir, STORE), statSync(join(dir, STORE)).size - bytes);
    const before = readFileSync(join(dir, STORE));
    expect(await refusal(dir)).toMatchObject({ code: 'store-cut-short', exit: 1 });
    expect(readFileSync(join(dir, STORE)).equals(before)).toBe(true);
  });

  test('that is a text file is refused and not touched', async () => {
    const dir = temporaryFolder();
    const text = 'date,temp\n2026-01-01,0.1\n'.repeat(1000);
    writeFileSync(join(dir, STORE), text);
    expect(await refusal(dir)).toEqual({ code: 'store-unreadable', with: { folder: dir, why: '' }, exit: 1 });
    expect(readFileSync(join(dir, STORE), 'utf8')).toBe(text);
  });

  test('of a newer format is refused and not touched', async () => {
    const dir = await writtenFolder();
    await changeStore(dir, 'INSERT INTO migration VALUES (99, 0)');
    const before = readFileSync(join(dir, STORE));
    expect(await refusal(dir)).toEqual({
      code: 'store-newer',
      with: { folder: dir, found: 99, known: newestFormat },
      exit: 1,
    });
    expect(readFileSync(join(dir, STORE)).equals(before)).toBe(true);
    expect(readdirSync(dir)).toEqual([STORE]);
  });
});

async function changeStore(dir: string, statement: string): Promise<void> {
  const instance = await DuckDBInstance.fromCache(join(dir, STORE));
  const connection = await instance.connect();
  await connection.run(statement);
  connection.closeSync();
  instance.closeSync();
}
