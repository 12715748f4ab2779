import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { gunzipSync } from 'node:zlib';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Influxd } from '../../bench/influxd.js';
import { openFolder, type ServerAddress } from '../../src/store/index.js';
import { bundleWorkload, expectForecast, Killer, seasons } from './killed.js';
import { loadReadings } from './loads.js';
import { temporaryFolder } from './temporary.js';
import { loadValues } from './workload-readings.js';

const KILLS = { edits: 36, migration: 12, copies: 8, server: 8 };
/** A folder grows with every kill: a new one after so many. */
const KILLS_A_FOLDER = 12;

bundleWorkload();

describe(`${Object.values(KILLS).reduce((a, b) => a + b)} kills lose nothing and leave nothing by half`, () => {
  test(`${KILLS.edits} in the middle of loads, withdrawals and season edits`, async () => {
    for (let seed = 1; seed <= KILLS.edits / KILLS_A_FOLDER; seed++) {
      const killer = new Killer(temporaryFolder(), seed);
      const dir = await seasonFolder();
      while (killer.kills < KILLS_A_FOLDER)
        await killer.kill({ what: 'edits', dir, from: 'state', lines: 3, most: 60 });
      expect(killer.acknowledged.length).toBeGreaterThan(KILLS_A_FOLDER / 2);
      await expectForecast(dir);
    }
  }, 400_000);

  test(`${KILLS.migration} while a folder of the first format is brought to the newest`, async () => {
    const first = gunzipSync(readFileSync(new URL('first-format/underice.duckdb.gz', import.meta.url)));
    const place = temporaryFolder();
    const killer = new Killer(place, 99);
    const folder = (kill: number) => join(place, String(kill));
    for (let kill = 0; kill < KILLS.migration; kill++) {
      mkdirSync(folder(kill));
      writeFileSync(join(folder(kill), 'underice.duckdb'), first);
      const dir = folder(kill);
      const found = await killer.kill({
        what: 'migration',
        dir,
        before: folder(kill - 1),
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
  }, 400_000);
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
    const killer = new Killer(temporaryFolder(), 7, address('copies'));
    const dir = await seasonFolder();
    const stood = new Set<string>();
    while (killer.kills < KILLS.copies) {
      const found = await killer.kill({ what: 'copies', dir, from: 'state', lines: 2, most: 100 });
      if (found !== null) stood.add(found.store);
    }
    expect([...stood].sort()).toEqual(['embedded', 'influx']);
  }, 400_000);

  test(`${KILLS.server} kills in the middle of loads onto the server`, async () => {
    const server = address('loads');
    const killer = new Killer(temporaryFolder(), 8, server);
    const dir = await seasonFolder(server);
    while (killer.kills < KILLS.server)
      await killer.kill({ what: 'edits', dir, from: 'state', lines: 3, most: 100 });
    expect(killer.acknowledged.length).toBeGreaterThan(KILLS.server / 2);
  }, 400_000);
});

/** A season with three loads, the second withdrawn. */
async function seasonFolder(server: ServerAddress | null = null): Promise<string> {
  const dir = join(temporaryFolder(), 'season');
  const folder = await openFolder(dir, { store: { kind: server === null ? null : 'influx', server } });
  await folder.applySeason(seasons[0], 'test');
  for (const load of [1, 2, 3]) {
    const { at, value } = loadValues(load);
    await loadReadings(folder, { pool: Array.from(at, (instant, i) => [instant, value[i]]) });
  }
  await folder.withdraw(2, 'test');
  await folder.close();
  return dir;
}
