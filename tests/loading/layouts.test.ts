import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { beforeEach, describe, expect, test } from 'vitest';
import type { SavedLayout } from '../../adapters/layouts-saved.js';
import { type Folder, openFolder } from '../../src/store/index.js';
import { stationEntry, visible } from '../store/loads.js';
import { temporaryFolder } from '../store/temporary.js';
import { download, loadOne } from './files.js';

let place: string;
let folder: Folder;
beforeEach(async () => {
  place = temporaryFolder();
  folder = await openFolder(join(place, 'season'), { now: () => Date.UTC(2026, 6, 10) });
  await folder.applySeason({ text: 'stations', stations: [stationEntry('pool')], deployments: [] }, 'Rose');
  return () => folder.close();
});

/** Dates that can be read in three ways, no unit and no zone: every question there is. */
const silent = 'Date;Heure;Valeur\n03/04/26;00:00;4,1\n03/04/26;12:00;4,2\n';
const kept: SavedLayout = {
  name: 'Upper boxes',
  match: { header: ['Date', 'Heure', 'Valeur'] },
  settled: { dateOrder: 'dmy', unit: 'C', zone: 'UTC-04:00' },
};
const april = Date.UTC(2026, 3, 3, 4);
const march = Date.UTC(2026, 2, 4, 4);
const hours = 3_600_000;

describe('a layout that the group keeps', () => {
  test('answers what its files leave open, and says that it was used', async () => {
    const file = download(place, 'pool.csv', silent);
    const asked = await loadOne(folder, file, { station: 'pool' });
    expect(asked.refused?.reason.code).toBe('ambiguous-dates');
    const outcome = await loadOne(folder, file, { station: 'pool', layouts: [kept] });
    expect(outcome).toMatchObject({
      refused: null,
      understood: { dateOrder: 'dmy', zone: 'UTC-04:00', unit: 'C' },
      assumed: [{ code: 'layout-used', with: { layout: 'Upper boxes' } }],
    });
    expect(await visible(folder, 'pool')).toEqual([
      [april, 4.1],
      [april + 12 * hours, 4.2],
    ]);
  });

  test('is known in a packed file too', async () => {
    const file = download(place, 'pool.csv.gz', gzipSync(silent));
    const outcome = await loadOne(folder, file, { station: 'pool', layouts: [kept] });
    expect(outcome.assumed).toContainEqual({ code: 'layout-used', with: { layout: 'Upper boxes' } });
  });

  test('gives way to what the person says this time', async () => {
    const file = download(place, 'pool.csv', silent);
    const outcome = await loadOne(folder, file, { station: 'pool', layouts: [kept], dateOrder: 'mdy' });
    expect(outcome.understood?.dateOrder).toBe('mdy');
    expect((await visible(folder, 'pool'))[0]).toEqual([march, 4.1]);
  });

  test('leaves files alone that it does not match', async () => {
    const other = { ...kept, match: { header: ['Date', 'Heure', 'Eau'] } };
    const file = download(place, 'pool.csv', silent);
    const outcome = await loadOne(folder, file, { station: 'pool', layouts: [other] });
    expect(outcome.refused?.reason.code).toBe('ambiguous-dates');
  });
});
