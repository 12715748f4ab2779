import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inventedFolder } from './invented-folder.js';
import { type BenchRow, lessIsBetter, median, seconds } from './row.js';

const STATIONS = 50;

/**
 * Kept daily means of all stations and of one, beside working them all out from the readings; bytes of the data folder a
 * reading. 35 million readings, 3.5 million where `quick`.
 */
export async function daysBench({ quick }: { readonly quick: boolean }): Promise<BenchRow[]> {
  const readings = quick ? 3_500_000 : 35_000_000;
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
    return [
      lessIsBetter('daily-means', all, 's', reference),
      lessIsBetter('daily-means-one-station', one, 's', { name: reference.name, value: rebuild / STATIONS }),
    ];
  } finally {
    await folder.close();
    const bytes = statSync(join(dir, 'underice.duckdb')).size / readings;
    if (!quick)
      console.error(`a data folder of ${readings / 1e6} million readings: ${bytes.toFixed(2)} bytes each`);
    rmSync(join(dir, '..'), { recursive: true, force: true });
  }
}
