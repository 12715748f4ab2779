import { join } from 'node:path';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { expect, test } from 'vitest';
import { type Folder, openFolder } from '../../src/store/index.js';
import { Child, compiled } from './children.js';
import { visible } from './loads.js';
import { expectDaysAnew } from './reading-store-contract.js';
import { temporaryFolder } from './temporary.js';

const KILLS = 20;
const READINGS = 400;
const HOUR = 3_600_000;

/**
 * Loads file after file, withdraws every third load, and says so when each is done: load k holds the value k at
 * 400 hours from hour 100·k on, so that each load covers three quarters of the one before.
 */
const loadForEver = (dir: string) => `
  import { openFolder } from '${compiled('store/index.js')}';
  const folder = await openFolder(${JSON.stringify(dir)});
  console.log('open');
  for (;;) {
    const { load } = await folder.write('loader', async (write) => {
      const { load, writer } = await write.beginLoad();
      const station = (await write.station('pool')) ?? (await write.makeStation({
        id: 'pool', kind: 'stream', zone: 'UTC', offsetMinutes: 0, latitude: null, longitude: null }));
      const series = await write.seriesOf(station, 'temperature', 'instant');
      await writer.append({ series, length: ${READINGS}, line: null,
        at: Float64Array.from({ length: ${READINGS} }, (_, i) => (100 * load + i) * ${HOUR}),
        value: new Float64Array(${READINGS}).fill(load) });
      const outcome = await writer.finish();
      return write.recordLoad({ load, file: 'f' + load, sha256: String(load), bytes: 1, series: outcome.series,
        understood: '{}' });
    });
    console.log('loaded ' + load);
    if (load % 3 === 0) {
      await folder.withdraw(load - 1, 'loader');
      console.log('withdrawn ' + (load - 1));
    }
  }`;

test(`${KILLS} kills in the middle of loads and withdrawals lose nothing and leave nothing by half`, async () => {
  const dir = join(temporaryFolder(), 'season');
  const random = xoroshiro128plus(20_261_125);
  const acknowledged: string[] = [];
  for (let kill = 0; kill < KILLS; kill++) {
    const child = new Child(loadForEver(dir));
    await child.count(uniformInt(random, 1, 4));
    await new Promise((resolve) => setTimeout(resolve, uniformInt(random, 0, 80)));
    child.kill();
    await child.exited;
    acknowledged.push(...child.lines.filter((line) => line !== 'open'));
    const folder = await openFolder(dir);
    await expectWhole(folder, acknowledged);
    await folder.close();
  }
  expect(acknowledged.length).toBeGreaterThan(KILLS);
}, 180_000);

async function expectWhole(folder: Folder, acknowledged: readonly string[]): Promise<void> {
  const loads = await folder.catalogue.loads();
  expect(loads.map(({ load }) => load)).toEqual(loads.map((_, i) => i + 1));
  for (const line of acknowledged) {
    const [what, load] = line.split(' ');
    const found = loads[Number(load) - 1];
    expect(found.series).toMatchObject([{ readings: READINGS, min: Number(load), max: Number(load) }]);
    if (what === 'withdrawn') expect(found.withdrawn).not.toBeNull();
  }
  const fold = new Map<number, number>();
  for (const { load, withdrawn } of loads) {
    if (withdrawn !== null) continue;
    for (let i = 0; i < READINGS; i++) fold.set((100 * load + i) * HOUR, load);
  }
  expect(await visible(folder, 'pool')).toEqual([...fold].sort((a, b) => a[0] - b[0]));
  await expectDaysAnew(folder);
}
