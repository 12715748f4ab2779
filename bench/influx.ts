import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { InfluxDB } from '@influxdata/influxdb-client';
import { openFolder } from '../src/store/index.js';
import { Influxd } from './influxd.js';
import { type BenchRow, median, seconds } from './row.js';

const STEP = 900_000;
const FIRST = Date.UTC(2016, 0, 1);

/**
 * Writing one load onto a real InfluxDB server, from its first reading to its commit, against the client library alone
 * writing the same points with its own batching; both until the server has every point, and counted there.
 */
export async function influxBench({ quick }: { readonly quick: boolean }): Promise<BenchRow[]> {
  const points = quick ? 300_000 : 1_000_000;
  const server = await Influxd.start();
  try {
    const [ours, bare]: number[][] = [[], []];
    for (let turn = 0; turn < 3; turn++) {
      bare.push(await throughClient(server, `bare${turn}`, points));
      ours.push(await throughStore(server, `ours${turn}`, points));
    }
    const [value, reference] = [median(ours), median(bare)];
    return [
      {
        name: 'influx-write',
        value: Math.round(value),
        unit: 'points/s',
        reference: { name: 'the client library alone', value: Math.round(reference) },
        ratio: value / reference,
      },
    ];
  } finally {
    await server.end();
  }
}

const celsius = (i: number) => Math.round(1e4 * (6 + 6 * Math.sin(i / 5000))) / 1e4;

async function throughStore(server: Influxd, database: string, points: number): Promise<number> {
  const place = mkdtempSync(join(tmpdir(), 'underice-bench-'));
  const address = { url: server.url, database, user: null, password: null, token: null, organisation: null };
  const folder = await openFolder(join(place, 'season'), { store: { kind: 'influx', server: address } });
  const at = Float64Array.from({ length: points }, (_, i) => FIRST + i * STEP);
  const value = Float64Array.from({ length: points }, (_, i) => celsius(i));
  const spent = await seconds(() =>
    folder.write('bench', async (write) => {
      const { load, writer } = await write.beginLoad();
      const station = await write.makeStation({
        id: 'pool',
        kind: 'stream',
        zone: 'UTC',
        offsetMinutes: 0,
        latitude: null,
        longitude: null,
      });
      const series = await write.seriesOf(station, 'temperature', 'instant');
      for (let from = 0; from < points; from += 50_000) {
        const [some, their] = [at.subarray(from, from + 50_000), value.subarray(from, from + 50_000)];
        await writer.append({ series, length: some.length, at: some, value: their, line: null });
      }
      const { series: own } = await writer.finish();
      await write.recordLoad({ load, file: 'f', sha256: 'f', bytes: 1, series: own, understood: '{}' });
    }),
  );
  await counted(server, database, points);
  await folder.close();
  rmSync(place, { recursive: true });
  return points / spent;
}

async function throughClient(server: Influxd, database: string, points: number): Promise<number> {
  await server.ask(
    `CREATE DATABASE "${database}" WITH DURATION INF REPLICATION 1 SHARD DURATION 52w NAME "w"`,
  );
  const lines = Array.from(
    { length: points },
    (_, i) => `reading,load=1.bare,station=1 value=${celsius(i)} ${FIRST + i * STEP}`,
  );
  const writer = new InfluxDB({ url: server.url }).getWriteApi('', database, 'ms');
  writer.path = `/write?db=${database}&precision=ms`;
  const spent = await seconds(async () => {
    writer.writeRecords(lines);
    await writer.close();
    await counted(server, database, points);
  });
  return points / spent;
}

/** Waits until the server has them all. */
async function counted(server: Influxd, database: string, points: number): Promise<void> {
  for (let tries = 0; tries < 600; tries++) {
    const answer = await server.ask('SELECT count(value) FROM reading', database);
    if (answer.includes(`,${points}]`)) return;
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
  throw new Error(`the server never had all ${points} points`);
}
