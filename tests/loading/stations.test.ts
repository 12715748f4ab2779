import { join } from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { type Folder, openFolder } from '../../src/store/index.js';
import { stationEntry, visible } from '../store/loads.js';
import { temporaryFolder } from '../store/temporary.js';
import { download, hourly, loadOne } from './files.js';

let place: string;
let folder: Folder;
beforeEach(async () => {
  place = temporaryFolder();
  folder = await openFolder(join(place, 'season'), { now: () => Date.UTC(2026, 1, 10) });
  return () => folder.close();
});

const season = (...ids: string[]) =>
  folder.applySeason(
    { text: ids.join(), stations: ids.map((id) => stationEntry(id)), deployments: [] },
    'Rose',
  );

const both = [
  'station,latitude,longitude,date,water_c,air_c',
  ...[1, 2, 3].map((day) => `Upper Pool,46.5,-66.25,2026-01-0${day},${day / 10},${-day}`),
].join('\n');

const airFirst = [
  'station,latitude,longitude,date,water_c,air_c',
  'upper,46.5,-66.25,2026-01-01,,-1',
  'upper,46.5,-66.25,2026-01-02,0.2,-2',
].join('\n');

const kinds = async () => (await folder.catalogue.stations()).map(({ id, kind }) => [id, kind]);

describe('the station of a download', () => {
  test('must be named where the file names none', async () => {
    await season('pool');
    const outcome = await loadOne(folder, download(place, 'a.csv', hourly(0, [1, 2])));
    expect(outcome.refused).toMatchObject({ exit: 2 });
    expect(await folder.catalogue.loads()).toEqual([]);
  });

  test('is the one where the logger of its serial number lay, unless that lay at two', async () => {
    await season('pool', 'riffle');
    const text = hourly(0, [1, 2]).replace(/^/, 'Serial number: 2007-a\n');
    const file = download(place, 'a.csv', text);
    const pool = { station: 'pool', name: 'The Pool', serials: ['1999', '2007-A'] };
    const twice = { station: 'riffle', name: 'riffle', serials: ['2007-A'] };
    expect(await loadOne(folder, file, { called: [pool, twice] })).toMatchObject({
      refused: { reason: { code: 'no-station', with: { known: ['pool', 'riffle'] } } },
    });
    const outcome = await loadOne(folder, file, { called: [pool], dryRun: true });
    expect(outcome).toMatchObject({ refused: null, stations: [{ station: 'pool', readings: 2 }] });
    const told = { code: 'station-by-serial', with: { station: 'pool', serial: '2007-a' } };
    expect(outcome.assumed).toContainEqual(told);
    // What the person says, and a station the file names and the season knows, go before the number.
    const asked = await loadOne(folder, file, { called: [pool], station: 'riffle', dryRun: true });
    expect(asked).toMatchObject({ stations: [{ station: 'riffle' }] });
    expect(asked.assumed).not.toContainEqual(told);
    const named = download(place, 'b.csv', `Station: riffle\n${text}`);
    expect(await loadOne(folder, named, { called: [pool] })).toMatchObject({
      stations: [{ station: 'riffle' }],
    });
  });

  test('is found by the name the season has for it', async () => {
    await season('pool', 'riffle');
    const called = [{ station: 'pool', name: 'Cedar Pool', serials: [] }];
    const file = download(place, 'a.csv', `Station: cedar pool\n${hourly(0, [1, 2])}`);
    expect((await loadOne(folder, file)).refused?.reason.code).toBe('station-not-in-season');
    expect(await loadOne(folder, file, { called })).toMatchObject({ stations: [{ station: 'pool' }] });
    expect(await loadOne(folder, file, { called, station: 'Cedar Pool' })).toMatchObject({
      alreadyLoaded: true,
    });
  });

  test('must be in the season, unless stations may be made', async () => {
    await season('pool', 'riffle');
    const file = download(place, 'a.csv', hourly(0, [1, 2]));
    const refused = await loadOne(folder, file, { station: 'run' });
    expect(refused.refused).toMatchObject({
      reason: { code: 'station-not-in-season', with: { station: 'run', known: ['pool', 'riffle'] } },
      exit: 2,
    });
    expect(await folder.catalogue.stations()).toHaveLength(2);
    const made = await loadOne(folder, file, { station: 'run', createStations: true });
    expect(made.assumed).toContainEqual({ code: 'station-made', with: { station: 'run', named: 'run' } });
    expect(await folder.catalogue.station('run')).toMatchObject({
      kind: 'stream',
      inSeason: false,
      zone: 'UTC',
    });
  });

  test('that nobody knows is said before the file is asked about its dates or clock', async () => {
    await season('pool');
    const file = download(place, 'a.csv', 'Date,Temp (°C)\n03/04/05 00:00,1.2\n03/04/05 01:00,1.3\n');
    const { refused } = await loadOne(folder, file, { station: 'run' });
    expect(refused?.reason).toMatchObject({ code: 'station-not-in-season', with: { station: 'run' } });
  });

  test('is asked for before the clock, which the station often settles', async () => {
    await season('pool', 'riffle');
    const file = download(place, 'a.csv', 'Date Time,Water temperature (°C)\n2026-01-01 00:00,1.2\n');
    const { refused } = await loadOne(folder, file);
    expect(refused).toMatchObject({
      reason: { code: 'no-station', with: { known: ['pool', 'riffle'] } },
      question: null,
    });
    const stranger = await loadOne(folder, file, { station: 'run', createStations: true });
    expect(stranger.refused?.question?.code).toBe('which-zone');
    expect((await loadOne(folder, file, { station: 'pool' })).refused).toBeNull();
  });

  test('of daily means has the days of the group where the file states neither zone nor place', async () => {
    const file = download(
      place,
      'days.csv',
      'Date,Mean water temperature (°C)\n2026-01-01,1.2\n2026-07-01,9\n',
    );
    const asked = { station: 'run', createStations: true, homeZone: 'America/Moncton', dryRun: true };
    expect(await loadOne(folder, file, asked)).toMatchObject({
      refused: null,
      assumed: expect.arrayContaining([{ code: 'zone-home-for-days', with: { zone: 'UTC-04:00' } }]),
    });
    await loadOne(folder, file, { ...asked, dryRun: false });
    const [made] = await folder.catalogue.stations();
    expect(made).toMatchObject({ id: 'run', zone: 'UTC-04:00', offsetMinutes: -240 });
  });

  test('is not made by a dry run', async () => {
    const file = download(place, 'a.csv', hourly(0, [1, 2]));
    await loadOne(folder, file, { station: 'run', createStations: true, dryRun: true });
    expect(await folder.catalogue.stations()).toEqual([]);
  });

  test('is found in the file whatever its case and spacing', async () => {
    await season('Upper-Pool', 'Upper-Pool-air');
    const outcome = await loadOne(folder, download(place, 'both.csv', both));
    expect(outcome.refused).toBeNull();
    expect((await visible(folder, 'Upper-Pool')).map(([, value]) => value)).toEqual([0.1, 0.2, 0.3]);
  });

  test('made from a file stands in the season document the caller gives, in the same write', async () => {
    const outcome = await loadOne(folder, download(place, 'both.csv', both), {
      createStations: true,
      seasonWith: (text, made) => `${text ?? 'none'} + ${made.map(({ id }) => id).join(', ')}`,
    });
    expect(outcome.refused).toBeNull();
    expect((await folder.catalogue.season())?.text).toBe('none + Upper-Pool, Upper-Pool-air');
    expect(await folder.catalogue.station('Upper-Pool')).toMatchObject({
      inSeason: true,
      latitude: 46.5,
      longitude: -66.25,
    });
  });
});

describe('the air of a file that has the water too', () => {
  test('goes to the station -air where the season has it', async () => {
    await season('upper-pool', 'upper-pool-air');
    await loadOne(folder, download(place, 'both.csv', both));
    expect((await visible(folder, 'upper-pool-air')).map(([, value]) => value)).toEqual([-1, -2, -3]);
  });

  test('is left and counted where the season has none', async () => {
    await season('upper-pool');
    const outcome = await loadOne(folder, download(place, 'both.csv', both));
    expect(outcome.stations.map(({ station, readings }) => [station, readings])).toEqual([['upper-pool', 3]]);
    expect(outcome.assumed).toContainEqual({
      code: 'air-left',
      with: { station: 'upper-pool-air', readings: 3 },
    });
  });

  test('makes a station of its own where stations may be made, also when it comes first', async () => {
    const outcome = await loadOne(folder, download(place, 'air-first.csv', airFirst), {
      createStations: true,
    });
    expect(outcome.refused).toBeNull();
    expect((await kinds()).sort()).toEqual([
      ['upper', 'stream'],
      ['upper-air', 'air'],
    ]);
    expect((await visible(folder, 'upper')).map(([, value]) => value)).toEqual([0.2]);
    expect((await visible(folder, 'upper-air')).map(([, value]) => value)).toEqual([-1, -2]);
  });

  test('alone in a file belongs to the station named', async () => {
    const text = 'date,air_c\n2026-01-01,-4\n2026-01-02,-5\n';
    await loadOne(folder, download(place, 'air.csv', text), {
      station: 'hill',
      zone: 'UTC-04:00',
      createStations: true,
    });
    expect(await kinds()).toEqual([['hill', 'air']]);
    expect((await folder.catalogue.station('hill'))?.offsetMinutes).toBe(-240);
  });
});

describe('daily means', () => {
  test('are days as the file gives them, in whatever offset the station counts its days', async () => {
    for (const [id, offset] of [
      ['west', -480],
      ['east', 345],
    ] as const) {
      await folder.write('Rose', (write) => write.makeStation(stationEntry(id, offset)));
      const text = 'date,mean water temperature (°C)\n2026-01-01,1\n2026-01-02,2\n2026-01-03,3\n';
      const file = download(
        place,
        `${id}.csv`,
        `${text}\n`.repeat(1) + (id === 'west' ? '' : '2026-01-04,4\n'),
      );
      await loadOne(folder, file, { station: id, zone: 'UTC' });
      const days = (await folder.catalogue.days()).get(id);
      expect(days?.firstDay).toBe(Date.UTC(2026, 0, 1) / 86_400_000);
      expect([...(days?.mean ?? [])].slice(0, 3)).toEqual([1, 2, 3]);
    }
  });
});
