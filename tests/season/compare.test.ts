import { expect, test } from 'vitest';
import { compareSeasons, readSeason, renderSeason } from '../../src/season/index.js';
import { lines } from './yaml.js';

const season = (...text: string[]) =>
  readSeason(lines('group: {name: g, zone: America/Moncton}', ...text), 'season.yaml');

test('the same season written in another way is no change', () => {
  const briefly = season(
    'stations: [{id: a}]',
    'sites: [{id: s, station: a}]',
    'lots: [{id: A, fertilised: 2025-11-04 10:00, eggs: 9, table: brown-trout}]',
    'boxes: [{id: B, site: s, planted: 2025-11-04 11:00, fills: [{lot: A, eggs: 9}]}]',
  );
  const fully = season(
    'oldRule: {base: 0, thermalUnits: 500}',
    'lots: [{table: brown-trout, id: A, eggs: "9", fertilised: "2025-11-04T14:00:00Z", before: none, parents: []}]',
    'boxes:',
    '  - {id: B, site: s, stations: a, fills: [{lot: A, eggs: 9, planted: 2025-11-04 11:00:00}], lifted: ~}',
    'sites: [{id: s, name: , station: a}]',
    'stations: [{id: a, kind: stream, zone: America/Moncton, quantities: temperature, reports: no, name: a}]',
  );
  expect(compareSeasons(briefly, fully)).toEqual([]);
  expect(renderSeason(fully)).toBe(renderSeason(briefly));
});

test('what changed is told by its field, deep ones by their way, in the order of the file', () => {
  const before = season(
    'stations: [{id: a}, {id: b}]',
    'loggers: [{id: L}]',
    'deployments: [{logger: L, station: a, from: 2025-10-28 14:00}]',
    'sites: [{id: s, station: a}]',
    'lots: [{id: A, fertilised: 2025-11-04 10:00, eggs: 9, table: brown-trout}]',
    'boxes: [{id: B, site: s, planted: 2025-11-04 11:00, fills: [{lot: A, eggs: 4}, {lot: A, eggs: 5}]}]',
  );
  const after = season(
    'stations: [{id: a}, {id: b, latitude: 47.1}]',
    'loggers: [{id: L}]',
    'deployments: [{logger: L, station: a, from: 2025-10-28 14:00, to: 2026-06-16 11:00}]',
    'sites: [{id: s, station: a}]',
    'lots: [{id: A, fertilised: 2025-11-04 10:00, eggs: 9, table: brown-trout}]',
    'boxes: [{id: B, site: s, planted: 2025-11-04 11:00, fills: [{lot: A, eggs: 4}, {lot: A, eggs: 3}], stations: [a, b]}]',
    'seasonalCurve: {monthly: [0,0,0,1,8,15,19,19,15,10,4,0]}',
  );
  const changed = (thing: string, id: string, field: string, was: string | null, is: string | null) => ({
    code: 'season.changed',
    with: { thing, id, field, before: was, after: is },
  });
  expect(compareSeasons(before, after)).toEqual([
    changed('group', 'g', 'seasonalCurve.monthly', null, '0, 0, 0, 1, 8, 15, 19, 19, 15, 10, 4, 0'),
    changed('station', 'b', 'latitude', null, '47.1'),
    changed('deployment', 'L, 2025-10-28 14:00', 'to', null, '2026-06-16 11:00'),
    changed('box', 'B', 'fills.2.eggs', '5', '3'),
    changed('box', 'B', 'stations', null, 'a, b'),
  ]);
});

test('two visits of one day are kept apart', () => {
  const visit = (...notes: string[]) =>
    season(
      'sites: [{id: s}]',
      `visits: [${notes.map((note) => `{site: s, when: 2025-12-01, note: ${note}}`).join(', ')}]`,
    );
  expect(compareSeasons(visit('first'), visit('first', 'second'))).toEqual([
    { code: 'season.added', with: { thing: 'visit', id: 's, 2025-12-01 (2)' } },
  ]);
});
