import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import {
  type DeploymentEntry,
  type FlagEntry,
  type Folder,
  openFolder,
  type SeasonEntry,
} from '../../src/store/index.js';
import { DAY, HOUR, loadReadings, MINUTE, type Readings, stationEntry, visible } from './loads.js';
import { expectDaysAnew } from './reading-store-contract.js';
import { temporaryFolder } from './temporary.js';

const START = Date.UTC(2025, 10, 1);
let folder: Folder;
beforeEach(async () => {
  folder = await openFolder(join(temporaryFolder(), 'season'));
  return () => folder.close();
});

const deployment = (changes: Partial<DeploymentEntry>): DeploymentEntry => ({
  station: 'pool',
  logger: 'L1',
  from: START,
  to: START + 10 * DAY,
  zone: null,
  clock: [],
  temperature: [],
  ...changes,
});

const season = (deployments: readonly DeploymentEntry[], offsetMinutes = 0): SeasonEntry => ({
  text: JSON.stringify([deployments, offsetMinutes]),
  stations: [stationEntry('pool', offsetMinutes)],
  deployments,
});

const hourly = (from: number, count: number, value: (i: number) => number): Readings =>
  Array.from({ length: count }, (_, i) => [from + i * HOUR, value(i)]);

async function record(from = Number.NEGATIVE_INFINITY, to = Number.POSITIVE_INFINITY) {
  const { at, value, flag } = await folder.record('pool', 'temperature', from, to);
  return Array.from(at, (instant, i) => [instant, value[i], flag[i]]);
}

describe('a clock that was wrong', () => {
  test('is set right on reading by one check; what is stored stays as the file gave it', async () => {
    const readings = hourly(START, 48, () => 2);
    await loadReadings(folder, { pool: readings });
    const check = { at: START + DAY, add: -5 * MINUTE };
    await folder.applySeason(season([deployment({ from: START - DAY, clock: [check] })]), 'Rose');
    expect((await record()).map(([at]) => at)).toEqual(readings.map(([at]) => at - 5 * MINUTE));
    expect(await visible(folder, 'pool')).toEqual(readings);
  });

  test('drifts in a straight line between two checks, and stays level outside them', async () => {
    await loadReadings(folder, { pool: hourly(START, 97, () => 2) });
    const clock = [
      { at: START + DAY, add: 0 },
      { at: START + 3 * DAY, add: 48 * MINUTE },
    ];
    await folder.applySeason(season([deployment({ clock })]), 'Rose');
    const found = await record();
    expect(found[12][0]).toBe(START + 12 * HOUR);
    expect(found[48][0]).toBe(START + 48 * HOUR + 24 * MINUTE);
    expect(found[96][0]).toBe(START + 96 * HOUR + 48 * MINUTE);
  });

  test('moves readings over midnight: the days follow', async () => {
    await loadReadings(folder, { pool: hourly(START, 72, (i) => (i < 24 ? 0 : 5)) });
    const before = (await folder.catalogue.days()).get('pool');
    await folder.applySeason(
      season([deployment({ from: START - DAY, clock: [{ at: START, add: -12 * HOUR }] })]),
      'Rose',
    );
    const after = (await folder.catalogue.days()).get('pool');
    // Half of the first full day lies before the step from 0 to 5 °C now, half after; the step's hour is a slope.
    expect(before?.mean[0]).toBeCloseTo((0.5 * 5) / 24, 10);
    expect(after?.mean[1]).toBeCloseTo(((12 + 0.5) * 5) / 24, 10);
    await expectDaysAnew(folder);
  });
});

describe('a thermometer that was wrong', () => {
  test('is set right by its checks in melting ice, drifting between them', async () => {
    await loadReadings(folder, { pool: hourly(START, 241, () => 4) });
    const temperature = [
      { at: START, add: -0.2 },
      { at: START + 10 * DAY, add: -0.4 },
    ];
    const applied = await folder.applySeason(season([deployment({ temperature })]), 'Rose');
    expect(applied.renewed).toEqual(['pool']);
    const found = await record();
    expect(found[0][1]).toBeCloseTo(3.8, 10);
    expect(found[120][1]).toBeCloseTo(3.7, 10);
    expect(found[240][1]).toBeCloseTo(3.6, 10);
    expect((await folder.catalogue.days()).get('pool')?.mean[5]).toBeCloseTo(3.69, 10);
    expect((await visible(folder, 'pool')).every(([, value]) => value === 4)).toBe(true);
  });

  test('counts for its own deployment only', async () => {
    await loadReadings(folder, { pool: hourly(START, 49, () => 4) });
    await folder.applySeason(
      season([
        deployment({ to: START + 23 * HOUR, temperature: [{ at: START, add: 1 }] }),
        deployment({ from: START + DAY, to: null }),
      ]),
      'Rose',
    );
    const found = await record();
    expect([found[23][1], found[24][1]]).toEqual([5, 4]);
  });
});

describe('a logger read in the office', () => {
  test('is trimmed to the time it lay in the water', async () => {
    await loadReadings(folder, { pool: hourly(START - 2 * DAY, 240, (i) => (i < 48 || i > 200 ? 20 : 2)) });
    await folder.applySeason(season([deployment({ from: START, to: START + 6 * DAY })]), 'Rose');
    const found = await record();
    expect(found[0][0]).toBe(START);
    expect(found.at(-1)?.[0]).toBe(START + 6 * DAY);
    expect(found.every(([, value]) => value === 2)).toBe(true);
    await expectDaysAnew(folder);
  });

  test('leaves loads of other years at the same station whole', async () => {
    await loadReadings(folder, { pool: hourly(START - 365 * DAY, 48, () => 3) });
    await loadReadings(folder, { pool: hourly(START, 48, () => 2) });
    await folder.applySeason(season([deployment({ from: START + DAY })]), 'Rose');
    expect((await record()).filter(([, value]) => value === 3)).toHaveLength(48);
    expect((await record()).filter(([, value]) => value === 2)).toHaveLength(24);
  });

  test('leaves a record of many years whole but for the weeks about the deployment', async () => {
    await loadReadings(folder, { pool: hourly(START - 400 * DAY, 400 * 24, () => 3) });
    await folder.applySeason(season([deployment({ from: START - 20 * DAY, to: START - 10 * DAY })]), 'Rose');
    const found = await record();
    expect(found[0][0]).toBe(START - 400 * DAY);
    expect(found.filter(([at]) => at > START - 10 * DAY)).toEqual([]);
  });

  test('does not bear on daily means that came beside', async () => {
    await loadReadings(folder, { pool: [[START - 2 * DAY, 9]] }, { span: 'day' });
    await folder.applySeason(season([deployment({})]), 'Rose');
    expect(await record()).toEqual([[START - 2 * DAY, 9, 2]]);
  });
});

describe('a season document', () => {
  test('applied again unchanged makes no version and renews nothing', async () => {
    await loadReadings(folder, { pool: hourly(START, 48, () => 2) });
    const first = await folder.applySeason(season([deployment({})]), 'Rose');
    const again = await folder.applySeason(season([deployment({})]), 'Tom');
    expect(again).toEqual({ version: first.version, unchanged: true, renewed: [] });
    expect(await folder.catalogue.seasons()).toHaveLength(1);
  });

  test('keeps every version, with who and when', async () => {
    await folder.applySeason(season([]), 'Rose');
    await folder.applySeason(season([deployment({})]), 'Tom');
    const versions = await folder.catalogue.seasons();
    expect(versions.map(({ version, by }) => [version, by])).toEqual([
      [1, 'Rose'],
      [2, 'Tom'],
    ]);
    expect((await folder.catalogue.seasonVersion(1))?.text).toBe(season([]).text);
    expect((await folder.catalogue.season())?.version).toBe(2);
  });

  test('that counts a station’s days in another offset renews its days', async () => {
    await loadReadings(folder, { pool: hourly(START, 96, (i) => i) });
    await folder.applySeason(season([], -210), 'Rose');
    const days = (await folder.catalogue.days()).get('pool');
    // The first whole day begins at 03:30 UTC: its mean lies in its middle, 12 h later, on a line of 1 °C an hour.
    expect(days?.mean[1]).toBeCloseTo(15.5, 10);
    await expectDaysAnew(folder);
  });

  test('that names a station no more keeps its readings', async () => {
    await folder.applySeason(season([]), 'Rose');
    await loadReadings(folder, { pool: hourly(START, 24, () => 1) });
    await folder.applySeason({ text: 'none', stations: [], deployments: [] }, 'Rose');
    expect(await folder.catalogue.station('pool')).toMatchObject({ inSeason: false });
    expect(await visible(folder, 'pool')).toHaveLength(24);
  });

  test('with a deployment at a station it does not name is refused whole', async () => {
    const entry = { ...season([deployment({})]), stations: [] };
    await expect(folder.applySeason(entry, 'Rose')).rejects.toMatchObject({
      remark: { code: 'folder-unknown-station', with: { station: 'pool' } },
    });
    expect(await folder.catalogue.season()).toBeNull();
  });
});

describe('flags', () => {
  const flag = (changes: Partial<FlagEntry>) => ({
    station: 'pool',
    quantity: 'temperature' as const,
    from: START + 5 * HOUR,
    to: START + 7 * HOUR,
    flag: 4 as const,
    set: 'spike',
    note: '',
    ...changes,
  });

  test('take failed readings out of the days and leave suspect ones in', async () => {
    await loadReadings(folder, { pool: hourly(START, 49, (i) => (i >= 5 && i <= 7 ? 30 : 1)) });
    await folder.setFlags([flag({ flag: 3 })], 'test');
    expect((await folder.catalogue.days()).get('pool')?.max[0]).toBe(30);
    await folder.setFlags([flag({})], 'test');
    const days = (await folder.catalogue.days()).get('pool');
    expect([days?.max[0], days?.mean[0]]).toEqual([1, 1]);
    expect((await record()).slice(4, 9).map(([, , code]) => code)).toEqual([2, 4, 4, 4, 2]);
    await expectDaysAnew(folder);
  });

  test('of a person go before those of every test, the newest first, and rewrite nothing', async () => {
    await loadReadings(folder, { pool: hourly(START, 49, () => 1) });
    await folder.setFlags([flag({}), flag({ set: 'person', flag: 1, note: 'seen in the ice' })], 'Rose');
    expect((await record()).slice(5, 8).map(([, , code]) => code)).toEqual([1, 1, 1]);
    const kept = await folder.catalogue.flags('pool', 'temperature', START, START + DAY);
    expect(kept.map(({ set, by, note }) => [set, by, note])).toEqual([
      ['spike', 'Rose', ''],
      ['person', 'Rose', 'seen in the ice'],
    ]);
  });

  test('of a station nobody knows are refused', async () => {
    await expect(folder.setFlags([flag({ station: 'lake' })], 'Rose')).rejects.toMatchObject({
      remark: { code: 'folder-unknown-station' },
      exit: 2,
    });
  });
});

describe('withdrawing', () => {
  test('of a load nobody made, or twice, is refused', async () => {
    const { load } = await loadReadings(folder, { pool: hourly(START, 24, () => 1) });
    await expect(folder.withdraw(9, 'Rose')).rejects.toMatchObject({
      remark: { code: 'unknown-load' },
      exit: 2,
    });
    expect(await folder.withdraw(load, 'Rose')).toMatchObject({ withdrawn: { by: 'Rose' } });
    await expect(folder.withdraw(load, 'Tom')).rejects.toMatchObject({
      remark: { code: 'already-withdrawn' },
    });
  });
});

describe('readings of a station and an agency’s daily means', () => {
  test('make one series of days, its own readings first', async () => {
    const dayStart = (d: number) => START + d * DAY;
    await loadReadings(
      folder,
      { pool: [0, 1, 2, 3].map((d): [number, number] => [dayStart(d), 9]) },
      { span: 'day' },
    );
    await loadReadings(folder, { pool: hourly(START + DAY, 25, () => 1) });
    const days = (await folder.catalogue.days()).get('pool');
    expect([...(days?.mean ?? [])]).toEqual([9, 1, 9, 9]);
    await expectDaysAnew(folder);
  });
});
