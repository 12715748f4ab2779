import { expect, test } from 'vitest';
import { problemsOf, told } from './refused.js';
import { lines } from './yaml.js';

const GROUP = 'group: {name: g, zone: America/Moncton}';
const LOT = 'lots: [{id: A, fertilised: 2025-11-04 10:00, eggs: 1000, table: atlantic-salmon}]';
const SITE = 'sites: [{id: pool, station: w}]';
const WATER = 'stations: [{id: w}]';

test.each<[string, string[], string[]]>([
  ['a station twice', [GROUP, 'stations: [{id: Pool}, {id: pool}]'], ['2 stations.1.id season.duplicate-id']],
  [
    'a box twice',
    [GROUP, WATER, SITE, 'boxes: [{id: B, site: pool}, {id: B, site: pool}]'],
    ['4 boxes.1.id season.duplicate-id'],
  ],
  [
    'a lot that is missing',
    [
      GROUP,
      WATER,
      SITE,
      'boxes: [{id: B, site: pool, fills: [{lot: A, eggs: 1, planted: 2025-11-04 10:00}]}]',
    ],
    ['4 boxes.0.fills.0.lot season.no-such'],
  ],
  ['a site that is missing', [GROUP, 'boxes: [{id: B, site: pool}]'], ['2 boxes.0.site season.no-such']],
  [
    'a station that is missing',
    [GROUP, 'sites: [{id: pool, station: w}]'],
    ['2 sites.0.station season.no-such'],
  ],
  [
    'a box of a missing station',
    [GROUP, WATER, SITE, 'boxes: [{id: B, site: pool, stations: [w, v]}]'],
    ['4 boxes.0.stations.1 season.no-such'],
  ],
  [
    'a table that is missing',
    [GROUP, LOT.replace('atlantic-salmon', 'burbot')],
    ['2 lots.0.table season.no-such'],
  ],
  [
    'parents that are missing',
    [GROUP, LOT.replace('}', ', parents: [F1]}')],
    ['2 lots.0.parents.0 season.no-such'],
  ],
  [
    'a logger that is missing',
    [GROUP, WATER, 'deployments: [{logger: L, station: w, from: 2025-11-01 10:00}]'],
    ['3 deployments.0.logger season.no-such'],
  ],
  [
    'a gauge without temperature as the water of a box',
    [GROUP, 'stations: [{id: w, kind: gauge}]', SITE],
    ['3 sites.0.station season.no-temperature'],
  ],
  [
    'a lot kept with itself',
    [GROUP, LOT.replace('}', ', before: {with: A}}')],
    ['2 lots.0.before.with season.history-loop'],
  ],
  [
    'planted before it was fertilised',
    [
      GROUP,
      WATER,
      SITE,
      LOT,
      'boxes:',
      '  - {id: B, site: pool, fills: [{lot: A, eggs: 1, planted: 2025-11-04 09:00}]}',
    ],
    ['6 boxes.0.fills.0.planted season.planted-before-fertilised'],
  ],
  [
    'lifted before it was planted',
    [
      GROUP,
      WATER,
      SITE,
      LOT,
      'boxes:',
      '  - {id: B, site: pool, lifted: 2025-06-20 10:00, fills: [{lot: A, eggs: 1, planted: 2025-11-04 11:00}]}',
    ],
    ['6 boxes.0.lifted season.lifted-before-planted'],
  ],
  [
    'more eggs in boxes than the lot had',
    [
      GROUP,
      WATER,
      SITE,
      LOT,
      'boxes:',
      '  - {id: B, site: pool, planted: 2025-11-04 11:00, fills: [{lot: A, eggs: 600}, {lot: A, eggs: 401}]}',
    ],
    ['4 lots.0.eggs season.too-many-eggs'],
  ],
  [
    'a stage the table does not know',
    [GROUP, LOT, 'observed: [{date: 2026-03-01, lot: A, stage: eyed}]'],
    ['3 observed.0.stage season.no-such-stage'],
  ],
  [
    'a stage seen nowhere',
    [GROUP, 'observed: [{date: 2026-03-01, stage: hatch}]'],
    ['2 observed.0 season.seen-of-what'],
  ],
  [
    'more seen than looked at',
    [GROUP, LOT, 'observed: [{date: 2026-03-01, lot: A, stage: hatch, seen: 11, of: 10}]'],
    ['3 observed.0.seen season.more-seen-than-looked-at'],
  ],
  [
    'days blocked backwards',
    [GROUP, 'blocked: [{from: 2026-05-02, to: 2026-05-01, reason: high water}]'],
    ['2 blocked.0.to season.ends-before-start'],
  ],
  [
    'the name of a shipped table',
    [GROUP, ...table('atlantic-salmon', '[{celsius: 2, days: 140}, {celsius: 10, days: 45}]')],
    ['4 tables.0.id season.shipped-table-id'],
  ],
  [
    'a table whose days rise with temperature',
    [GROUP, ...table('ours', '[{celsius: 2, days: 40}, {celsius: 10, days: 45}]')],
    ['8 tables.0.stages.0 season.table-rule'],
  ],
])('%s', (_, text, expected) => {
  expect(told(lines(...text))).toEqual(expected);
});

function table(id: string, rows: string): string[] {
  return [
    'tables:',
    '  -',
    `    id: ${id}`,
    '    species: Salmo salar',
    '    name: Ours',
    '    stages:',
    '      - stage: hatch',
    `        needs: {law: {form: days-at, rows: ${rows}}}`,
    '        validity: {min: 2, max: 10}',
  ];
}

test('a loop of lots is told once for each lot in it, with the whole way', () => {
  const lot = (id: string, other: string) =>
    `  - {id: ${id}, fertilised: 2025-11-04 10:00, eggs: 10, table: atlantic-salmon, before: {with: ${other}}}`;
  const problems = problemsOf(lines(GROUP, 'lots:', lot('A', 'B'), lot('B', 'C'), lot('C', 'B')));
  expect(problems.map(({ line, code, with: figures }) => ({ line, code, with: figures }))).toEqual([
    { line: 4, code: 'season.history-loop', with: { loop: 'B → C → B' } },
    { line: 5, code: 'season.history-loop', with: { loop: 'C → B → C' } },
  ]);
});

test('stages that lean on each other without a law are refused', () => {
  const text = lines(
    GROUP,
    'tables:',
    '  - id: ours',
    '    species: Salmo salar',
    '    name: Ours',
    '    stages:',
    '      - {stage: hatch, needs: {multipleOf: button-up, factor: 0.6}, validity: {min: 0, max: 10}}',
    '      - {stage: button-up, needs: {sameAs: hatch}, validity: {min: 0, max: 10}}',
  );
  const loops = problemsOf(text).map(({ path, with: figures }) => ({ path, with: figures }));
  expect(loops).toEqual([
    {
      path: ['tables', 0, 'stages', 0],
      with: {
        table: 'ours',
        problem: { code: 'table-loop', with: { row: 'hatch', loop: 'hatch → button-up → hatch' } },
      },
    },
    {
      path: ['tables', 0, 'stages', 1],
      with: {
        table: 'ours',
        problem: { code: 'table-loop', with: { row: 'button-up', loop: 'button-up → hatch → button-up' } },
      },
    },
  ]);
});

test('one logger lies in one place: a second deployment waits for the first to end', () => {
  const deployments = (first: string, second: string) =>
    lines(
      GROUP,
      'stations: [{id: a}, {id: b}]',
      'loggers: [{id: L}]',
      'deployments:',
      `  - {logger: L, station: a, ${first}}`,
      `  - {logger: L, station: b, ${second}}`,
    );
  const overlapping = ['6 deployments.1.from season.overlapping-deployment'];
  expect(told(deployments('from: 2025-10-01 10:00', 'from: 2025-11-01 10:00'))).toEqual(overlapping);
  expect(told(deployments('from: 2025-10-01 10:00, to: 2025-11-01 10:01', 'from: 2025-11-01 10:00'))).toEqual(
    overlapping,
  );
  expect(
    told(
      deployments(
        'from: 2025-10-01 10:00, to: 2025-11-01 10:00',
        'from: 2025-11-01 10:00, to: 2025-10-30 10:00',
      ),
    ),
  ).toEqual(['6 deployments.1.to season.ends-before-start']);
});

test('a logger is read while it lies there', () => {
  const deployment = (read: string) =>
    lines(
      GROUP,
      WATER,
      'loggers: [{id: L}]',
      'deployments:',
      `  - {logger: L, station: w, from: 2025-10-28 14:00, to: 2026-06-16 11:00, read: [2025-12-03 13:00, ${read}]}`,
    );
  expect(told(deployment('2026-07-01 10:00'))).toEqual(['5 deployments.0.read.1 season.read-outside']);
  expect(told(deployment('2025-10-28 14:00'))).toEqual(['5 deployments.0.read.1 season.read-outside']);
});
