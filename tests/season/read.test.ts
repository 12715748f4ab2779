import { expect, test } from 'vitest';
import { atlanticSalmon } from '../../forecasting/index.js';
import { addStations, emptySeason, epochMillis, readSeason, standardOffset } from '../../src/season/index.js';
import { lines } from './yaml.js';

const SMALL = lines(
  'group: {name: Test group, zone: America/St_Johns}',
  'stations:',
  '  - id: pool',
  '  - {id: board, kind: gauge}',
  'sites:',
  '  - {id: pool-site, station: pool}',
  'lots:',
  '  - {id: A, fertilised: 2025-11-04 10:00, eggs: 1200, table: atlantic-salmon}',
  'boxes:',
  '  - id: B1',
  '    site: pool-site',
  '    planted: 2025-11-04 15:30',
  '    fills: [{lot: A, eggs: 1000}]',
  'visits:',
  '  - {site: pool-site, when: 2025-12-01, who: Ada, hand: [{celsius: 0.5}]}',
  'observed:',
  '  - {date: 2026-02-20, box: B1, stage: eye-up, seen: 9, of: 10}',
);

test('a short file is enough: the rest is as usual', () => {
  const season = readSeason(SMALL, 'season.yaml');
  expect(season.group).toEqual({
    name: 'Test group',
    language: 'en',
    zone: 'America/St_Johns',
    note: null,
  });
  const [pool, board] = season.stations;
  expect(pool).toMatchObject({
    id: 'pool',
    name: 'pool',
    kind: 'stream',
    quantities: ['temperature'],
    zone: 'America/St_Johns',
    reports: false,
    dayOffset: -210,
  });
  expect(board).toMatchObject({ kind: 'gauge', quantities: ['level', 'discharge'], reports: true });
  expect(season.boxes[0]).toMatchObject({ stations: ['pool'], lifted: null });
  expect(season.boxes[0].fills[0]).toEqual({
    lot: 'A',
    part: null,
    eggs: 1000,
    planted: '2025-11-04T15:30:00-03:30',
    unfilled: null,
    doubled: null,
  });
  expect(season.visits[0]).toMatchObject({
    station: 'pool',
    when: { date: '2025-12-01', at: null },
    who: ['Ada'],
  });
  expect(season.observed[0].lot).toBe('A');
  expect(season.lots[0].before).toEqual({ kind: 'none' });
  expect(season.oldRule).toEqual({ thermalUnits: 500, base: 0 });
  expect(season.seasonalCurve).toBeNull();
});

test('moments are read on the wall clock of the group, or with the offset they carry', () => {
  const fertilised = (written: string, zone: string) =>
    readSeason(
      lines(
        `group: {name: g, zone: ${zone}}`,
        `lots: [{id: A, fertilised: ${written}, eggs: 1, table: atlantic-salmon}]`,
      ),
      'season.yaml',
    ).lots[0].fertilised;
  // America/St_Johns: -03:30 in winter, -02:30 in summer (IANA time zone database).
  expect(fertilised('2025-11-04 14:30', 'America/St_Johns')).toBe('2025-11-04T14:30:00-03:30');
  expect(fertilised('2025-07-04 14:30', 'America/St_Johns')).toBe('2025-07-04T14:30:00-02:30');
  expect(fertilised('"2025-11-04T18:00Z"', 'America/St_Johns')).toBe('2025-11-04T14:30:00-03:30');
  // Asia/Kathmandu: +05:45 all year.
  expect(fertilised('2025-11-04T14:30:15', 'Asia/Kathmandu')).toBe('2025-11-04T14:30:15+05:45');
  expect(fertilised('2025-11-04 14:30', 'UTC-03:30')).toBe('2025-11-04T14:30:00-03:30');
  // The hour of 2 November 2025 that came twice in Moncton is told apart by its offset.
  expect(fertilised('2025-11-02 01:30-03:00', 'America/Moncton')).toBe('2025-11-02T01:30:00-03:00');
  expect(fertilised('2025-11-02 01:30-04:00', 'America/Moncton')).toBe('2025-11-02T01:30:00-04:00');
  expect(epochMillis('2025-11-02T01:30:00-04:00') - epochMillis('2025-11-02T01:30:00-03:00')).toBe(3_600_000);
});

test('days are counted in standard time, whichever half of the year is summer', () => {
  // Offsets of the IANA time zone database for 2025.
  expect(standardOffset('America/St_Johns')).toBe(-210);
  expect(standardOffset('America/Moncton')).toBe(-240);
  expect(standardOffset('Asia/Kathmandu')).toBe(345);
  expect(standardOffset('Pacific/Auckland')).toBe(720);
  expect(standardOffset('Europe/Oslo')).toBe(60);
  expect(standardOffset('UTC-04:30')).toBe(-270);
  expect(() => standardOffset('Nowhere/Town')).toThrow(RangeError);
});

test('ids and texts keep what was written, numbers in quotes or not', () => {
  const season = readSeason(
    lines(
      'group: {name: "12", zone: UTC, note: "a: b # c"}',
      'stations: [{id: 007, name: "null"}, {id: "1e3", place: ~}]',
      'loggers: [{id: L1, serial: 0042, accuracy: "0.2", memory: 43000}]',
    ),
    'season.yaml',
  );
  expect(season.group).toMatchObject({ name: '12', note: 'a: b # c' });
  expect(season.stations.map(({ id, name, place }) => [id, name, place])).toEqual([
    ['007', 'null', null],
    ['1e3', '1e3', null],
  ]);
  expect(season.loggers[0]).toMatchObject({ serial: '0042', accuracy: 0.2, memory: 43000 });
});

test("a table of the group's own needs its laws and their sources; spreads and spans have usual values", () => {
  const season = readSeason(
    lines(
      'group: {name: g, zone: UTC}',
      'tables:',
      '  - id: our-brook-trout',
      '    species: Salvelinus fontinalis',
      '    name: Our brook trout',
      '    sources: [our own hatchery book]',
      '    stages:',
      '      - stage: hatch',
      '        needs: {law: {form: days-at, rows: [{celsius: 2, days: 140}, {celsius: 10, days: 45}]}}',
      '        validity: {min: 2, max: 10}',
      '        sources: [{cite: our own hatchery book, mark: ours}]',
      '      - stage: button-up',
      '        needs: {multipleOf: hatch, factor: 1.6}',
      '        validity: {min: 2, max: 10, judged: at-stage}',
    ),
    'season.yaml',
  );
  const [table] = season.tables;
  expect(table.name).toEqual({ en: 'Our brook trout', fr: 'Our brook trout' });
  expect(table.stages[0].needs).toEqual({
    law: {
      form: 'days-at',
      rows: [
        { celsius: 2, days: 140 },
        { celsius: 10, days: 45 },
      ],
    },
  });
  expect(table.stages[1].validity).toEqual({ min: 2, max: 10, judged: 'at-stage' });
  expect(table.doNotHandle).toEqual(atlanticSalmon.doNotHandle);
  expect(table.sources).toEqual([{ cite: 'our own hatchery book' }]);
});

test('stations are added once, and the season they are added to stays as it was', () => {
  const empty = emptySeason({ name: 'g', zone: 'America/Halifax', language: 'fr' });
  const one = addStations(empty, [
    { id: 'brook' },
    { id: 'brook-2', kind: 'air', latitude: 45.1, longitude: -63 },
  ]);
  expect(empty.stations).toEqual([]);
  expect(one.stations.map(({ id, kind, dayOffset }) => [id, kind, dayOffset])).toEqual([
    ['brook', 'stream', -240],
    ['brook-2', 'air', -240],
  ]);
  expect(addStations(one, [{ id: 'brook', kind: 'tank' }])).toBe(one);
  expect(one.group.language).toBe('fr');
});
