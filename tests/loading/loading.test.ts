import { createHash } from 'node:crypto';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { beforeEach, describe, expect, test } from 'vitest';
import { batteriesIn, loadFiles } from '../../src/loading/index.js';
import { type Folder, openFolder } from '../../src/store/index.js';
import { stationEntry, visible } from '../store/loads.js';
import { temporaryFolder } from '../store/temporary.js';
import { download, hour, hourly, loadOne } from './files.js';

let place: string;
let folder: Folder;
beforeEach(async () => {
  place = temporaryFolder();
  folder = await openFolder(join(place, 'season'), { now: () => Date.UTC(2026, 1, 10) });
  await folder.applySeason(
    { text: 'stations', stations: [stationEntry('pool'), stationEntry('riffle')], deployments: [] },
    'Rose',
  );
  return () => folder.close();
});

const values = Array.from({ length: 48 }, (_, i) => 1 + (i % 10) / 10);

describe('a download', () => {
  test('keeps what its file says of the battery, also when it is looked at again', async () => {
    const rows = values.map(
      (value, i) => `${new Date(hour(i)).toISOString()},${value},${(3.6 - i / 60).toFixed(2)}`,
    );
    const file = download(place, 'pool.csv', `Time,Temp (°C),Batt (V)\n${rows.join('\n')}\n`);
    const battery = [
      {
        station: 'pool',
        column: 'Batt (V)',
        unit: 'V',
        highest: { value: 3.6, at: hour(0) },
        lowest: { value: 2.82, at: hour(47) },
        last: { value: 2.82, at: hour(47) },
        low: null,
      },
    ];
    expect(await loadOne(folder, file, { station: 'pool' })).toMatchObject({ battery, load: 1 });
    const [load] = await folder.catalogue.loads();
    expect(batteriesIn(load?.understood ?? '{}')).toEqual(battery);
    expect(await loadOne(folder, file, { station: 'pool' })).toMatchObject({ battery, alreadyLoaded: true });
    // Said above the table: of its last reading.
    const above = `Battery: 2.40 V\nTime,Temp (°C)\n${rows.map((row) => row.split(',').slice(0, 2).join(',')).join('\n')}\n`;
    expect(await loadOne(folder, download(place, 'riffle.csv', above), { station: 'riffle' })).toMatchObject({
      battery: [{ station: 'riffle', column: null, last: { value: 2.4, at: hour(47) } }],
    });
  });

  test('becomes a load: its readings, its days, and what is remembered of it', async () => {
    const text = hourly(0, values);
    const outcome = await loadOne(folder, download(place, 'pool.csv', text), { station: 'pool' });
    expect(outcome).toMatchObject({
      file: 'pool.csv',
      stations: [
        { station: 'pool', readings: 48, first: hour(0), last: hour(47), min: 1, max: 1.9, differing: 0 },
      ],
      understood: { unit: 'C', delimiter: ',', zone: 'UTC' },
      unusable: { count: 0 },
      load: 1,
      alreadyLoaded: false,
      refused: null,
    });
    expect(await visible(folder, 'pool')).toEqual(values.map((value, i) => [hour(i), value]));
    const [load] = await folder.catalogue.loads();
    expect(load).toMatchObject({
      file: 'pool.csv',
      sha256: createHash('sha256').update(text).digest('hex'),
      bytes: Buffer.byteLength(text),
      by: 'Rose',
      at: Date.UTC(2026, 1, 10),
      withdrawn: null,
    });
    const days = (await folder.catalogue.days()).get('pool');
    expect(days?.firstDay).toBe(hour(0) / 86_400_000);
    // Trapezoid over day 1: 24 steps between readings 0…24, each the mean of its two ends.
    const first = values.slice(0, 24).reduce((sum, value, i) => sum + (value + values[i + 1]) / 2, 0) / 24;
    expect(days?.mean[0]).toBeCloseTo(first, 10);
  });

  test('loaded again changes nothing and says which load holds it, whatever it is called', async () => {
    const text = hourly(0, values);
    await loadOne(folder, download(place, 'pool.csv', text), { station: 'pool' });
    const again = await loadOne(folder, download(place, 'copy of pool.csv', text), { station: 'pool' });
    expect(again).toMatchObject({
      alreadyLoaded: true,
      load: 1,
      refused: null,
      stations: [{ station: 'pool', readings: 48 }],
      understood: { unit: 'C', zone: 'UTC' },
    });
    expect(await folder.catalogue.loads()).toHaveLength(1);
  });

  test('may be loaded again once its load was withdrawn', async () => {
    const file = download(place, 'pool.csv', hourly(0, values));
    await loadOne(folder, file, { station: 'pool' });
    await folder.withdraw(1, 'Rose');
    expect((await folder.catalogue.days()).has('pool')).toBe(false);
    expect(await loadOne(folder, file, { station: 'pool' })).toMatchObject({ alreadyLoaded: false, load: 2 });
    expect((await visible(folder, 'pool')).length).toBe(48);
  });

  test('of as many bytes as another is not taken for it', async () => {
    await loadOne(folder, download(place, 'a.csv', hourly(0, [1, 2, 3])), { station: 'pool' });
    const other = await loadOne(folder, download(place, 'b.csv', hourly(0, [1, 2, 4])), { station: 'pool' });
    expect(other).toMatchObject({ alreadyLoaded: false, load: 2, differing: 1, largestDifference: 1 });
  });

  test('on a dry run is understood and compared, and nothing is kept', async () => {
    await loadOne(folder, download(place, 'a.csv', hourly(0, [1, 1, 1, 1])), { station: 'pool' });
    const outcome = await loadOne(folder, download(place, 'b.csv', hourly(2, [1, 3.5, 1])), {
      station: 'pool',
      dryRun: true,
    });
    expect(outcome).toMatchObject({
      load: null,
      stations: [{ readings: 3, overlapping: 2, differing: 1 }],
      differing: 1,
      largestDifference: 2.5,
    });
    expect(await folder.catalogue.loads()).toHaveLength(1);
    expect((await visible(folder, 'pool')).length).toBe(4);
  });

  test('compressed by gzip is the same readings', async () => {
    const file = download(place, 'pool.csv.gz', gzipSync(hourly(0, values)));
    await loadOne(folder, file, { station: 'pool' });
    expect(await visible(folder, 'pool')).toEqual(values.map((value, i) => [hour(i), value]));
  });

  test('whose time goes back keeps the first of two readings at one instant, and shows the line', async () => {
    const lines = ['03:00,3', '01:00,1', '02:00,2', '01:00,9', '00:00,0'];
    const text = `Date Time (UTC),Temp (°C)\n${lines.map((line) => `2026-01-01 ${line}`).join('\n')}\n`;
    const outcome = await loadOne(folder, download(place, 'pool.csv', text), { station: 'pool' });
    expect(outcome.stations[0].readings).toBe(4);
    expect(outcome.unusable).toEqual({
      count: 1,
      examples: [
        {
          line: 5,
          reason: { code: 'instant-twice', with: { at: '2026-01-01T01:00:00.000Z', kept: 1, left: 9 } },
        },
      ],
    });
    expect(await visible(folder, 'pool')).toEqual([0, 1, 2, 3].map((h) => [hour(h), h]));
  });

  test('that changes while it is read is refused', async () => {
    const file = download(place, 'pool.csv', hourly(0, values));
    const outcome = await loadOne(folder, file, {
      station: 'pool',
      progress: () => download(place, 'pool.csv', `${hourly(0, values)}2026-01-03 00:00,1\n`),
    });
    expect(outcome.refused).toMatchObject({ reason: { code: 'changed-while-read' }, exit: 1 });
    expect(await folder.catalogue.loads()).toEqual([]);
  });

  test('is given as far as it has been read, and its length', async () => {
    const text = hourly(0, values);
    const steps: unknown[] = [];
    await loadOne(folder, download(place, 'pool.csv', text), {
      station: 'pool',
      progress: (step) => steps.push(step),
    });
    const bytes = Buffer.byteLength(text);
    expect(steps.at(-1)).toEqual({ file: 'pool.csv', bytesRead: bytes, bytes });
  });
});

describe('several downloads', () => {
  test('are loaded one by one; a refused one stores nothing and does not stop the others', async () => {
    const files = [
      download(place, 'a.csv', hourly(0, [1, 2])),
      { path: join(place, 'missing.csv'), name: 'missing.csv' },
      download(place, 'login.csv', '<!DOCTYPE html><html><body>Please sign in</body></html>'),
      { path: place, name: 'downloads' },
      download(place, 'empty.csv', ''),
      download(place, 'b.csv', hourly(2, [3, 4])),
    ];
    const outcomes = await loadFiles(folder, files, { by: 'Rose', station: 'pool' });
    expect(outcomes.map(({ refused }) => refused?.reason.code ?? null)).toEqual([
      null,
      'no-such-file',
      expect.stringMatching(/html|page/),
      'not-a-file',
      'empty-file',
      null,
    ]);
    expect(outcomes.map(({ load }) => load)).toEqual([1, null, null, null, null, 2]);
    expect((await visible(folder, 'pool')).map(([, value]) => value)).toEqual([1, 2, 3, 4]);
  });

  test('loaded at the same time wait for each other, and readers see only whole loads', async () => {
    const tenths = Array.from({ length: 20_000 }, (_, i) => (i % 90) / 10);
    const long = hourly(-20_000, tenths);
    const one = loadOne(folder, download(place, 'a.csv', long), { station: 'pool' });
    const two = loadOne(folder, download(place, 'b.csv', hourly(0, [1, 2])), { station: 'riffle' });
    const seen = new Set<number>();
    const done = Promise.all([one, two]);
    let finished = false;
    void done.finally(() => {
      finished = true;
    });
    while (!finished) seen.add((await visible(folder, 'pool')).length);
    const [a, b] = await done;
    expect([a.load, b.load].sort()).toEqual([1, 2]);
    expect([...seen].every((count) => count === 0 || count === 20_000)).toBe(true);
  });
});
