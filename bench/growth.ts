import { mkdtempSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openOwnGroup } from '../src/group/index.js';
import { inventedFolder, LAST, loadStation } from './invented-folder.js';
import { type BenchRow, lessIsBetter, median, seconds } from './row.js';
import { serve } from './service.js';

/** The sample season: its stations, its boxes, the readings of its downloads (rounded). */
const SAMPLE = { stations: 6, boxes: 8, readings: 100_000 };

/** What a group of 1, 10 and 100 times the sample season costs; each beside the smallest one, in proportion. */
export async function growthBench(): Promise<BenchRow[]> {
  const rows: BenchRow[] = [];
  const smallest = new Map<string, number>();
  for (const times of [1, 10, 100]) {
    for (const [what, value, unit] of await costs(times)) {
      const first = smallest.get(what) ?? value;
      smallest.set(what, first);
      const reference = { name: `${times} times the cost at 1`, value: first * times };
      rows.push(lessIsBetter(`growth-${times}-${what}`, value, unit, reference));
    }
  }
  return rows;
}

async function costs(times: number): Promise<(readonly [string, number, string])[]> {
  const place = mkdtempSync(join(tmpdir(), 'underice-bench-'));
  const dir = join(place, 'season');
  const size = {
    stations: SAMPLE.stations * times,
    boxes: SAMPLE.boxes * times,
    readings: SAMPLE.readings * times,
  };
  try {
    const made: { folder: Awaited<ReturnType<typeof inventedFolder>> | null } = { folder: null };
    const filling = await seconds(async () => {
      made.folder = await inventedFolder(dir, size);
    });
    const { folder } = made;
    if (folder === null) throw new Error('no folder');
    const loading = await seconds(() => folder.write('bench', (write) => loadStation(write, 3, 3000, LAST)));
    const checking = await seconds(() => folder.verify());
    const backup = await seconds(() => folder.backup(join(place, 'backup')));
    await folder.close();
    const bytes = statSync(join(dir, 'underice.duckdb')).size;
    const forecast = await seconds(async () => {
      const group = await openOwnGroup(dir, { now: () => LAST });
      await group.forecast({ box: null, asOf: null });
      await group.close();
    });
    const page = await pageSeconds(dir);
    return [
      ['fill', filling, 's'],
      ['load-3000', loading, 's'],
      ['forecast', forecast, 's'],
      ['verify', checking, 's'],
      ['backup', backup, 's'],
      ['page-drawn', page.drawn, 's'],
      ['page-again', page.again, 's'],
      ['folder', bytes / 1e6, 'MB'],
    ];
  } finally {
    rmSync(place, { recursive: true, force: true });
  }
}

/** The season page of a running service: drawn with its forecast, and asked for again (median of 20). */
async function pageSeconds(dir: string): Promise<{ drawn: number; again: number }> {
  const service = await serve(dir);
  const page = async () => {
    const answer = await fetch(`${service.address}/`);
    if (!answer.ok) throw new Error(`the season page: ${answer.status}`);
    await answer.arrayBuffer();
  };
  try {
    const drawn = await seconds(page);
    const times: number[] = [];
    for (let turn = 0; turn < 20; turn++) times.push(await seconds(page));
    return { drawn, again: median(times) };
  } finally {
    await service.end();
  }
}
