import { mkdirSync, readdirSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { type Folder, openFolder, StoreRefused } from '../../src/store/index.js';
import { mountSmallDisk } from './children.js';
import { HOUR, loadReadings, type Readings, visible } from './loads.js';
import { expectDaysAnew } from './reading-store-contract.js';
import { temporaryFolder } from './temporary.js';

const unmounts: (() => void)[] = [];
afterEach(() => {
  for (const unmount of unmounts.splice(0)) unmount();
});

function smallDisk(megabytes: number): string {
  const disk = join(temporaryFolder(), 'disk');
  mkdirSync(disk);
  unmounts.push(mountSmallDisk(disk, megabytes));
  return disk;
}

/** Values that do not compress: every reading costs its eight bytes. */
function noisy(count: number, from: number): Readings {
  let state = 12_345 + from;
  return Array.from({ length: count }, (_, i) => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) >>> 0;
    return [(from + i) * HOUR, (state % 400_000) / 10_000];
  });
}

async function code(work: Promise<unknown>): Promise<string> {
  try {
    await work;
  } catch (error) {
    if (error instanceof StoreRefused) return error.remark.code;
    throw error;
  }
  throw new Error('the disk did not fill');
}

/** Loads until the disk is full; the refused load is not among those returned. */
async function fill(folder: Folder): Promise<Readings[]> {
  const taken: Readings[] = [];
  for (;;) {
    const next = noisy(60_000, taken.length * 60_000);
    try {
      await loadReadings(folder, { pool: next });
    } catch (error) {
      if (error instanceof StoreRefused) expect(error.remark.code).toBe('disk-full');
      else throw error;
      return taken;
    }
    taken.push(next);
  }
}

test('a load that fills the disk is refused, all before it stands, and loading goes on when there is room', async () => {
  const disk = smallDisk(12);
  const ballast = join(disk, '.ballast');
  writeFileSync(ballast, Buffer.alloc(4 * 1024 * 1024));
  const folder = await openFolder(join(disk, 'season'));
  const taken = await fill(folder);
  expect(taken.length).toBeGreaterThan(0);
  await expectReadings(folder, taken.flat());
  expect(await folder.catalogue.loads()).toHaveLength(taken.length);

  rmSync(ballast);
  const after = noisy(1000, taken.length * 60_000);
  await loadReadings(folder, { pool: after });
  await expectDaysAnew(folder);
  await folder.close();

  const again = await openFolder(join(disk, 'season'));
  await expectReadings(again, [...taken.flat(), ...after]);
  await again.close();
}, 120_000);

test('a folder on a disk that is full already is refused, and nothing is left there', async () => {
  const disk = smallDisk(1);
  const free = statfsSync(disk);
  writeFileSync(join(disk, '.ballast'), Buffer.alloc((free.bavail - 1) * free.bsize));
  const dir = join(disk, 'season');
  expect(await code(openFolder(dir))).toBe('disk-full');
  expect(readdirSync(dir)).toEqual([]);
});

/** Hundreds of thousands of pairs, compared without a tree of differences. */
async function expectReadings(folder: Folder, readings: Readings): Promise<void> {
  const found = await visible(folder, 'pool');
  expect(found.length).toBe(readings.length);
  expect(found.findIndex(([at, value], i) => at !== readings[i][0] || value !== readings[i][1])).toBe(-1);
}
