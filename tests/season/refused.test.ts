import { expect, test } from 'vitest';
import { SeasonRefused, seasonFrom } from '../../src/season/index.js';
import { problemsOf, told } from './refused.js';
import { lines } from './yaml.js';

const GROUP = 'group: {name: g, zone: America/Moncton}';
const LOT = 'lots: [{id: A, fertilised: 2025-11-04 10:00, eggs: 1000, table: atlantic-salmon}]';
const SITE = 'sites: [{id: pool, station: w}]';
const WATER = 'stations: [{id: w}]';

test.each<[string, string[], string[]]>([
  ['a group without a zone', ['group: {name: g}'], ['1 group.zone season.missing']],
  ['no group', ['stations: []'], ['1 group season.missing']],
  ['a zone that is none', ['group: {name: g, zone: Acadia}'], ['1 group.zone season.unknown-zone']],
  [
    'an offset without UTC before it',
    ['group: {name: g, zone: "+05:45"}'],
    ['1 group.zone season.unknown-zone'],
  ],
  [
    'an offset beyond any on Earth',
    ['group: {name: g, zone: UTC+15:00}'],
    ['1 group.zone season.unknown-zone'],
  ],
  ['a word that is misspelt', [GROUP, 'statons: []'], ['2 statons season.unknown-key']],
  ['a list that is none', [GROUP, 'stations: {id: a}'], ['2 stations season.not-a-list']],
  ['a thing that is none', [GROUP, 'stations: [pool]'], ['2 stations.0 season.not-a-map']],
  ['a value that is a list', [GROUP, 'stations: [{id: [a]}]'], ['2 stations.0.id season.not-text-value']],
  ['an id with a slash', [GROUP, 'stations: [{id: ../pool}]'], ['2 stations.0.id season.bad-id']],
  ['an id that is a tag', [GROUP, 'stations: [{id: "<b>x</b>"}]'], ['2 stations.0.id season.bad-id']],
  [
    'a kind that is none',
    [GROUP, 'stations: [{id: a, kind: lake}]'],
    ['2 stations.0.kind season.not-one-of'],
  ],
  [
    'neither yes nor no',
    [GROUP, 'stations: [{id: a, reports: maybe}]'],
    ['2 stations.0.reports season.not-yes-no'],
  ],
  [
    'a latitude beyond the pole',
    [GROUP, 'stations: [{id: a, latitude: 147}]'],
    ['2 stations.0.latitude season.out-of-range'],
  ],
  [
    'a decimal comma',
    [GROUP, 'loggers: [{id: a, accuracy: "0,2"}]'],
    ['2 loggers.0.accuracy season.decimal-comma'],
  ],
  [
    'a number with its unit',
    [GROUP, 'loggers: [{id: a, accuracy: 0.2 C}]'],
    ['2 loggers.0.accuracy season.not-a-number'],
  ],
  [
    'control characters',
    [GROUP, 'stations: [{id: a, name: "a\\e[31mb"}]'],
    ['2 stations.0.name season.unprintable'],
  ],
  [
    'a date alone where the hour matters',
    [GROUP, LOT.replace(' 10:00', '')],
    ['2 lots.0.fertilised season.not-a-moment'],
  ],
  [
    'a date of no calendar',
    [GROUP, LOT.replace('11-04', '02-30')],
    ['2 lots.0.fertilised season.no-such-day'],
  ],
  [
    'a day-first date',
    [GROUP, LOT.replace('2025-11-04', '04/11/2025')],
    ['2 lots.0.fertilised season.not-a-moment'],
  ],
  ['the year 2205', [GROUP, LOT.replace('2025', '2205')], ['2 lots.0.fertilised season.no-such-day']],
  [
    'an hour that was skipped',
    [GROUP, LOT.replace('2025-11-04 10:00', '2025-03-09 02:30')],
    ['2 lots.0.fertilised season.skipped-hour'],
  ],
  [
    'an hour that came twice',
    [GROUP, LOT.replace('2025-11-04 10:00', '2025-11-02 01:30')],
    ['2 lots.0.fertilised season.repeated-hour'],
  ],
  [
    'eleven months',
    [GROUP, 'seasonalCurve: {monthly: [0,0,0,1,5,9,14,15,11,6,2]}'],
    ['2 seasonalCurve.monthly season.twelve-months'],
  ],
  [
    'eggs kept in two waters',
    [GROUP, WATER, LOT.replace('}', ', before: {station: w, celsius: 6}}')],
    ['3 lots.0.before season.before-what'],
  ],
])('%s', (_, text, expected) => {
  expect(told(lines(...text))).toEqual(expected);
});

test.each(['13.000', '13,000', '13 000', '"13\'000"', '13\u00a0000'])(
  'eggs written %s are asked about, not read as thirteen',
  (eggs) => {
    const [problem, ...others] = problemsOf(
      lines(
        GROUP,
        'lots:',
        `  - {id: A, fertilised: 2025-11-04 10:00, table: atlantic-salmon, eggs: ${eggs.includes(',') ? `"${eggs}"` : eggs}}`,
      ),
    );
    expect(others).toEqual([]);
    expect(problem).toMatchObject({ code: 'season.grouped-number', line: 3, with: { meant: '13000' } });
  },
);

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

test('everything that is wrong is told at once, each at its line', () => {
  expect(
    told(
      lines(
        'group:',
        '  name: g',
        '  zone: UTC',
        'stations:',
        '  - id: a',
        '    kind: lake',
        '    latitude: north',
        '  - name: no id',
        'lots:',
        '  - id: A',
        '    eggs: many',
        '    table: atlantic-salmon',
      ),
    ),
  ).toEqual([
    '6 stations.0.kind season.not-one-of',
    '7 stations.0.latitude season.not-a-number',
    '8 stations.1.id season.missing',
    '10 lots.0.fertilised season.missing',
    '11 lots.0.eggs season.not-a-number',
  ]);
});

test('a problem says what stood there', () => {
  const [problem] = problemsOf(lines(GROUP, 'stations:', '  - id: a', '    kind: lake'));
  expect(problem).toMatchObject({ line: 4, column: 5, value: 'lake', with: { given: 'lake' } });
});

test('JSON is checked alike, without lines', () => {
  const plain = { group: { name: 'g', zone: 'UTC' }, stations: [{ id: 'a', latitude: 91 }] };
  expect(() => seasonFrom(plain, 'form')).toThrow(SeasonRefused);
  try {
    seasonFrom(plain, 'form');
  } catch (error) {
    expect(error).toMatchObject({
      exit: 2,
      remark: {
        code: 'season.refused',
        with: {
          file: 'form',
          problems: [{ code: 'season.out-of-range', line: null, path: ['stations', 0, 'latitude'] }],
        },
      },
    });
  }
});
