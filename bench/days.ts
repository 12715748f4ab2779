import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { inventedFolder } from './invented-folder.js';
import { type BenchRow, lessIsBetter, median, seconds } from './row.js';

const STATIONS = 50;

/**
 * Kept daily means of all stations and of one, beside working them all out from the readings; the full rebuild, beside
 * one statement that only groups the same readings by day (plain means, no coverage, no holes); bytes of the data
 * folder a reading, beside the 4 that are promised. 35 million readings, 2 million where `quick`.
 */
export async function daysBench({ quick }: { readonly quick: boolean }): Promise<BenchRow[]> {
  const readings = quick ? 2_000_000 : 35_000_000;
  const dir = join(mkdtempSync(join(tmpdir(), 'underice-bench-')), 'season');
  const folder = await inventedFolder(dir, { stations: STATIONS, boxes: 1, readings });
  try {
    const several = async (work: () => Promise<unknown>) => {
      const times: number[] = [];
      for (let turn = 0; turn < 5; turn++) times.push(await seconds(work));
      return median(times);
    };
    const all = await several(() => folder.catalogue.days());
    const one = await several(() => folder.catalogue.days(['station-7']));
    const rebuild = await seconds(() => folder.renewAllDays());
    const reference = { name: 'worked out from all readings', value: rebuild };
    const backup = join(dir, '..', 'copy.duckdb');
    await folder.backup(backup);
    const grouping = await grouped(backup);
    const bytes = statSync(join(dir, 'underice.duckdb')).size / readings;
    return [
      lessIsBetter('daily-means', all, 's', reference),
      lessIsBetter('daily-means-one-station', one, 's', { name: reference.name, value: rebuild / STATIONS }),
      lessIsBetter('daily-means-rebuild', rebuild, 's', {
        name: 'grouped by day in one statement',
        value: grouping,
      }),
      lessIsBetter('bytes-a-reading', bytes, 'B', { name: 'promised', value: 4 }),
    ];
  } finally {
    await folder.close();
    rmSync(join(dir, '..'), { recursive: true, force: true });
  }
}

/** Seconds in which the database by itself groups every reading of a copy by day. */
async function grouped(file: string): Promise<number> {
  const instance = await DuckDBInstance.create(file, { access_mode: 'READ_ONLY', threads: '2' });
  const connection = await instance.connect();
  const spent = await seconds(() =>
    connection.runAndReadAll(
      'SELECT series, instant // 86400000 AS day, avg(value), min(value), max(value), count(*) FROM visible GROUP BY ALL',
    ),
  );
  connection.closeSync();
  instance.closeSync();
  return spent;
}
