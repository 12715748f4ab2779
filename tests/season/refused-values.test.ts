import { expect, test } from 'vitest';
import { SeasonRefused, seasonFrom } from '../../src/season/index.js';
import { problemsOf, told } from './refused.js';
import { lines } from './yaml.js';

const GROUP = 'group: {name: g, zone: America/Moncton}';
const LOT = 'lots: [{id: A, fertilised: 2025-11-04 10:00, eggs: 1000, table: atlantic-salmon}]';
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
