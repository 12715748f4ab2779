import { createServer } from 'node:http';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { freePort, Influxd } from '../../bench/influxd.js';
import { type Folder, openFolder, type ServerAddress, StoreRefused } from '../../src/store/index.js';
import { type Fault, FaultyProxy } from './faulty-proxy.js';
import { HOUR, loadReadings, type Readings, visible } from './loads.js';
import { expectDaysAnew } from './reading-store-contract.js';
import { temporaryFolder } from './temporary.js';

let influxd: Influxd;
let proxy: FaultyProxy;
beforeAll(async () => {
  influxd = await Influxd.start();
  proxy = await FaultyProxy.before(influxd.url);
});
afterAll(async () => {
  await proxy.close();
  await influxd.end();
});

let databases = 0;
const at = (url: string, more: Partial<ServerAddress> = {}): ServerAddress => ({
  url,
  database: `faults-${++databases}`,
  user: null,
  password: null,
  token: null,
  organisation: null,
  patience: 2500,
  ...more,
});
const influx = (server: ServerAddress | null) => ({ kind: 'influx' as const, server });
const readings = (from: number, count: number): Readings =>
  Array.from({ length: count }, (_, i) => [(from + i) * HOUR, (from + i) % 17]);
const first = readings(0, 100);
const second = readings(100, 60_000);

async function refusal(work: Promise<unknown>): Promise<string> {
  try {
    await work;
  } catch (error) {
    if (error instanceof StoreRefused) return error.remark.code;
    throw error;
  }
  throw new Error('it was not refused');
}

describe('a load through a faulty network', () => {
  let folder: Folder;
  let patience = 0;
  beforeEach(async () => {
    patience = 20_000;
    proxy.meet('/write', []);
    const server = {
      ...at(proxy.url),
      get patience() {
        return patience;
      },
    };
    folder = await openFolder(join(temporaryFolder(), 'season'), { store: influx(server) });
    await loadReadings(folder, { pool: first });
    return () => folder.close();
  });

  test.each<[Fault, number]>([
    ['refused', 2],
    ['reset-before', 2],
    ['reset-after', 2],
    ['500', 2],
    ['429', 1],
    ['slow', 2],
  ])('comes through whole after %s', async (fault, times) => {
    proxy.meet(
      '/write',
      Array.from({ length: times }, () => fault),
    );
    await loadReadings(folder, { pool: second });
    expect(proxy.seen.filter((one) => one.fault === fault)).toHaveLength(times);
    const record = await visible(folder, 'pool');
    expect(record).toHaveLength(first.length + second.length);
    expect(record.at(-1)).toEqual(second.at(-1));
  });

  test('leaves the server alone for as long as Retry-After says', async () => {
    proxy.meet('/write', ['429']);
    await loadReadings(folder, { pool: readings(100, 10) });
    expect(proxy.seen[1].at - proxy.seen[0].at).toBeGreaterThanOrEqual(990);
  });

  test.each<[Fault, string]>([
    ['refused', 'server-unreachable'],
    ['hung', 'server-unreachable'],
    ['500', 'server-failed'],
    ['disk-full', 'server-full'],
  ])(
    'is refused and leaves nothing where it is %s for good, and comes through afterwards',
    async (fault, code) => {
      patience = 1500;
      proxy.meet(
        '/write',
        Array.from({ length: 50 }, () => fault),
      );
      expect(await refusal(loadReadings(folder, { pool: readings(50, 500) }))).toBe(code);
      patience = 20_000;
      proxy.meet('/write', []);
      expect(await visible(folder, 'pool')).toEqual(first);
      expect(await folder.catalogue.loads()).toHaveLength(1);
      await loadReadings(folder, { pool: readings(50, 500) });
      expect(await visible(folder, 'pool')).toEqual(readings(0, 550));
      await expectDaysAnew(folder);
    },
  );

  test.each<Fault>(['refused', 'half-answer', '500'])('reading it asks again after %s', async (fault) => {
    proxy.meet('/query', [fault]);
    expect(await visible(folder, 'pool')).toEqual(first);
    expect(proxy.seen[0].fault).toBe(fault);
  });

  test('an error inside a 200 is an error', async () => {
    proxy.meet('/query', ['error-in-200']);
    expect(await refusal(visible(folder, 'pool'))).toBe('server-failed');
  });
});

test('a server that is killed and started again in the middle of a load has the load whole', async () => {
  const own = await Influxd.start();
  const folder = await openFolder(join(temporaryFolder(), 'season'), {
    store: influx(at(own.url, { patience: 30_000 })),
  });
  await loadReadings(folder, { pool: first });
  const loading = loadReadings(folder, { pool: readings(100, 200_000) });
  await new Promise((resolve) => setTimeout(resolve, 500));
  await own.stop('SIGKILL');
  await own.startAgain();
  await loading;
  expect(await visible(folder, 'pool')).toHaveLength(200_100);
  await folder.close();
  await own.end();
});

describe('opening is refused, in one sentence, and changes nothing', () => {
  const open = (server: ServerAddress | null) =>
    openFolder(join(temporaryFolder(), 'season'), { store: influx(server) });

  test('where nobody answers', async () => {
    const port = await freePort();
    expect(await refusal(open(at(`http://127.0.0.1:${port}`, { patience: 300 })))).toBe('server-unreachable');
  });

  test.each([200, 404, 401])('where something else answers with %i', async (status) => {
    const other = createServer((_, response) => response.writeHead(status).end('<html>hello</html>'));
    const port = await freePort();
    await new Promise<void>((resolve) => other.listen(port, '127.0.0.1', resolve));
    expect(await refusal(open(at(`http://127.0.0.1:${port}`, { patience: 300 })))).toBe('server-other-kind');
    other.closeAllConnections();
    other.close();
  });

  test('where the settings name no server', async () => {
    expect(await refusal(open(null))).toBe('server-not-named');
  });

  test('where the database is another group’s', async () => {
    const server = at(influxd.url);
    await (await open(server)).close();
    expect(await refusal(open(server))).toBe('server-database-taken');
  });

  test('where the retention would drop old winters, also when it was changed later', async () => {
    const server = at(influxd.url);
    await influxd.ask(`CREATE DATABASE "${server.database}" WITH DURATION 52w`);
    expect(await refusal(open(server))).toBe('server-forgets');
    const later = at(influxd.url);
    const dir = join(temporaryFolder(), 'season');
    const folder = await openFolder(dir, { store: influx(later) });
    await loadReadings(folder, { pool: first });
    await folder.close();
    await influxd.ask(`ALTER RETENTION POLICY "winters" ON "${later.database}" DURATION 104w`);
    expect(await refusal(openFolder(dir, { store: influx(later) }))).toBe('server-forgets');
  });

  test('where the database is gone, or is not the one with the readings', async () => {
    const server = at(influxd.url);
    const dir = join(temporaryFolder(), 'season');
    const folder = await openFolder(dir, { store: influx(server) });
    await loadReadings(folder, { pool: first });
    await folder.close();
    await influxd.ask(`DROP DATABASE "${server.database}"`);
    expect(await refusal(openFolder(dir, { store: influx(server) }))).toBe('server-database-missing');
  });

  test('where the readings are in the other store', async () => {
    const dir = join(temporaryFolder(), 'season');
    const folder = await openFolder(dir);
    await loadReadings(folder, { pool: first });
    await folder.close();
    expect(await refusal(openFolder(dir, { store: influx(at(influxd.url)) }))).toBe('store-elsewhere');
    const again = await openFolder(dir);
    expect(await visible(again, 'pool')).toEqual(first);
    await again.close();
  });
});

test('a wrong password is refused, the right one lets in', async () => {
  const guarded = await Influxd.start({ extra: 'auth-enabled = true' });
  await guarded.ask(`CREATE USER keeper WITH PASSWORD 'salmon' WITH ALL PRIVILEGES`);
  const open = (password: string) =>
    openFolder(join(temporaryFolder(), 'season'), {
      store: influx(at(guarded.url, { user: 'keeper', password })),
    });
  expect(await refusal(open('trout'))).toBe('server-denied');
  const folder = await open('salmon');
  await loadReadings(folder, { pool: first });
  expect(await visible(folder, 'pool')).toEqual(first);
  await folder.close();
  await guarded.end();
});
