import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Influxd } from '../../bench/influxd.js';
import { openFolder, type ServerAddress } from '../../src/store/index.js';
import { bundleWorkload, expectForecast, Killer, seasons } from './killed.js';
import { loadReadings } from './loads.js';
import { temporaryFolder } from './temporary.js';
import { loadValues } from './workload-readings.js';

const KILLS = { edits: 120, migration: 32, copies: 24, server: 24 };
/** A folder grows with every kill: a new one after so many. */
const KILLS_A_FOLDER = 10;

bundleWorkload();

describe(`${Object.values(KILLS).reduce((a, b) => a + b)} kills lose nothing and leave nothing by half`, () => {
  test(`${KILLS.edits} in the middle of loads, withdrawals and season edits`, async () => {
    await twoAtATime(KILLS.edits / KILLS_A_FOLDER, async (seed) => {
      const killer = new Killer(temporaryFolder(), seed);
      const dir = await seasonFolder();
      while (killer.kills < KILLS_A_FOLDER)
        await killer.kill({ what: 'edits', dir, from: 'state', lines: 3, most: 60 });
      expect(killer.acknowledged.length).toBeGreaterThan(KILLS_A_FOLDER / 2);
      await expectForecast(dir);
    });
  }, 900_000);

  test(`${KILLS.migration} while a folder of the first format is brought to the newest`, async () => {
    const first = gunzipSync(readFileSync(new URL('first-format/underice.duckdb.gz', import.meta.url)));
    await twoAtATime(2, async (seed) => {
      const place = temporaryFolder();
      const killer = new Killer(place, 98 + seed);
      const folder = (kill: number) => join(place, String(kill));
      for (let kill = 0; kill < KILLS.migration / 2; kill++) {
        const dir = folder(kill);
        mkdirSync(dir);
        writeFileSync(join(dir, 'underice.duckdb'), first);
        const before = folder(kill - 1);
        const found = await killer.kill({
          what: 'migration',
          dir,
          before,
          from: 'begin',
          lines: 0,
          most: 120,
        });
        expect(found === null).toBe(kill === 0);
        if (found === null) continue;
        expect(found.loads.map(({ stands }) => stands)).toEqual([true, false, true]);
        expect(found.at).toHaveLength(2400);
        expect(found.findings).toEqual([]);
      }
    });
  }, 900_000);
});

describe('with a server', () => {
  let influxd: Influxd;
  beforeAll(async () => {
    influxd = await Influxd.start();
  });
  afterAll(() => influxd.end());
  const address = (database: string): ServerAddress => ({
    url: influxd.url,
    database,
    user: null,
    password: null,
    token: null,
    organisation: null,
    patience: 10_000,
  });

  test(`${KILLS.copies} kills while readings move between the stores`, async () => {
    const stood = new Set<string>();
    await twoAtATime(2, async (seed) => {
      const killer = new Killer(temporaryFolder(), 6 + seed, address(`copies_${seed}`));
      const dir = await seasonFolder();
      while (killer.kills < KILLS.copies / 2) {
        const found = await killer.kill({ what: 'copies', dir, from: 'state', lines: 2, most: 100 });
        if (found !== null) stood.add(found.store);
      }
      await expectForecast(dir, address(`copies_${seed}`));
    });
    expect([...stood].sort()).toEqual(['embedded', 'influx']);
  }, 900_000);

  test(`${KILLS.server} kills in the middle of loads onto the server`, async () => {
    await twoAtATime(2, async (seed) => {
      const server = address(`loads_${seed}`);
      const killer = new Killer(temporaryFolder(), 8 + seed, server);
      const dir = await seasonFolder(server);
      while (killer.kills < KILLS.server / 2)
        await killer.kill({ what: 'edits', dir, from: 'state', lines: 3, most: 100 });
      expect(killer.acknowledged.length).toBeGreaterThan(KILLS.server / 4);
    });
  }, 900_000);
});

/** Runs pieces of work 1, 2, … so many, two beside each other: one kills while the other starts. */
async function twoAtATime(count: number, work: (seed: number) => Promise<void>): Promise<void> {
  let next = 1;
  const one = async () => {
    while (next <= count) await work(next++);
  };
  await Promise.all([one(), one()]);
}

const once = mkdtempSync(join(tmpdir(), 'underice-test-'));
beforeAll(() => makeSeason(join(once, 'season'), null));
afterAll(() => rmSync(once, { recursive: true, force: true }));

/** A season with three loads, the second withdrawn. */
async function seasonFolder(server: ServerAddress | null = null): Promise<string> {
  const dir = join(temporaryFolder(), 'season');
  if (server === null) cpSync(join(once, 'season'), dir, { recursive: true });
  else await makeSeason(dir, server);
  return dir;
}

async function makeSeason(dir: string, server: ServerAddress | null): Promise<void> {
  const folder = await openFolder(dir, { store: { kind: server === null ? null : 'influx', server } });
  await folder.applySeason(seasons[0], 'test');
  for (const load of [1, 2, 3]) {
    const { at, value } = loadValues(load);
    await loadReadings(folder, { pool: Array.from(at, (instant, i) => [instant, value[i]]) });
  }
  await folder.withdraw(2, 'test');
  await folder.close();
}
