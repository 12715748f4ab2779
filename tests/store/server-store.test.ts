import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { Influxd } from '../../bench/influxd.js';
import { openFolder, type ServerAddress } from '../../src/store/index.js';
import { HOUR, loadReadings, type Readings, visible } from './loads.js';
import { readingStoreContract } from './reading-store-contract.js';
import { temporaryFolder } from './temporary.js';

let influxd: Influxd;
beforeAll(async () => {
  influxd = await Influxd.start();
});
afterAll(() => influxd.end());

let databases = 0;
function address(database = `group-${++databases}`): ServerAddress {
  return {
    url: influxd.url,
    database,
    user: null,
    password: null,
    token: null,
    organisation: null,
    patience: 5000,
  };
}
const onServer = (server = address()) => ({ kind: 'influx' as const, server });

readingStoreContract('server', () => openFolder(join(temporaryFolder(), 'season'), { store: onServer() }));

const winter: Readings = Array.from({ length: 2000 }, (_, i) => [
  i * HOUR,
  Math.round(3e4 * Math.sin(i / 50)) / 1e4,
]);

describe('a server', () => {
  test('is shared by groups that do not see each other, one database each', async () => {
    const [one, other] = await Promise.all(
      ['one', 'other'].map((name) =>
        openFolder(join(temporaryFolder(), name), { store: onServer(address(name)) }),
      ),
    );
    await loadReadings(one, { pool: winter });
    await loadReadings(other, { pool: [[0, 9]] });
    expect(await visible(one, 'pool')).toEqual(winter);
    expect(await visible(other, 'pool')).toEqual([[0, 9]]);
    await one.close();
    await other.close();
  });

  test('gives the daily means that the store file gives', async () => {
    const here = await openFolder(join(temporaryFolder(), 'season'));
    const there = await openFolder(join(temporaryFolder(), 'season'), { store: onServer() });
    for (const folder of [here, there]) {
      await loadReadings(folder, { pool: winter });
      await loadReadings(folder, {
        pool: winter.slice(500, 700).map(([at, value]) => [at + 60_000, value + 1]),
      });
      const third = await loadReadings(folder, { pool: winter.slice(600, 900).map(([at]) => [at, 7]) });
      await loadReadings(folder, { pool: winter.slice(800, 1000).map(([at]) => [at, 8]) });
      await folder.withdraw(third.load, 'test');
    }
    const [a, b] = [(await here.catalogue.days()).get('pool'), (await there.catalogue.days()).get('pool')];
    expect(a?.mean.length).toBeGreaterThan(80);
    expect(b?.firstDay).toBe(a?.firstDay);
    a?.mean.forEach((mean, d) => {
      const other = b?.mean[d] ?? Number.POSITIVE_INFINITY;
      // A gap day has no mean in either.
      expect(Number.isNaN(mean) ? Number.isNaN(other) : Math.abs(mean - other) <= 1e-9).toBe(true);
    });
    await here.close();
    await there.close();
  });

  test('keeps as many series as there are stations and loads, however many readings', async () => {
    const server = address();
    const folder = await openFolder(join(temporaryFolder(), 'season'), { store: onServer(server) });
    for (let load = 0; load < 3; load++) await loadReadings(folder, { pool: winter, riffle: winter });
    const answer = await influxd.ask('SHOW SERIES FROM "reading"', server.database);
    expect(answer.match(/reading,/g)).toHaveLength(6);
    await folder.close();
  });

  test('is not read for what no standing load owns', async () => {
    const server = address();
    const dir = join(temporaryFolder(), 'season');
    const folder = await openFolder(dir, { store: onServer(server) });
    const gone = await loadReadings(folder, { pool: winter });
    await loadReadings(folder, { pool: winter.slice(0, 10) });
    await folder.withdraw(gone.load, 'test');
    await folder.close();
    await fetch(`${influxd.url}/write?db=${server.database}`, {
      method: 'POST',
      body: 'reading,load=2,station=1 value=5 0\nreading,load=3.dead,station=1 value=6 0',
    });
    const again = await openFolder(dir, { store: onServer(server) });
    expect(await visible(again, 'pool')).toEqual(winter.slice(0, 10));
    await again.close();
  });
});
