import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { samplePath } from '../../sample-logs/plan.js';
import {
  compareSeasons,
  readSeason,
  renderSeason,
  seasonDocument,
  seasonFrom,
} from '../../src/season/index.js';
import { inventedSeason } from './invented.js';
import { lines } from './yaml.js';

test('what is rendered reads back as the same season and renders to the same bytes', () => {
  fc.assert(
    fc.property(inventedSeason, (plain) => {
      const season = seasonFrom(plain, 'invented');
      const text = renderSeason(season);
      const read = readSeason(text, 'season.yaml');
      expect(read).toEqual(season);
      expect(renderSeason(read)).toBe(text);
      expect(compareSeasons(season, read)).toEqual([]);
    }),
    { numRuns: 120, seed: 20251104 },
  );
});

test('a season survives JSON', () => {
  fc.assert(
    fc.property(inventedSeason, (plain) => {
      const season = seasonFrom(plain, 'invented');
      expect(JSON.parse(JSON.stringify(season))).toEqual(season);
      expect(seasonFrom(JSON.parse(JSON.stringify(seasonDocument(season))), 'json')).toEqual(season);
    }),
    { numRuns: 50, seed: 20251104 },
  );
});

test('other readers of YAML find the same values', () => {
  fc.assert(
    fc.property(inventedSeason, (plain) => {
      const season = seasonFrom(plain, 'invented');
      // The core schema gives numbers and booleans their types; texts must stay texts under it.
      expect(parse(renderSeason(season))).toEqual(JSON.parse(JSON.stringify(seasonDocument(season))));
    }),
    { numRuns: 50, seed: 20251104 },
  );
});

test('the sample season is taken, and its export is taken unchanged', () => {
  const season = readSeason(readFileSync(samplePath('season.yaml'), 'utf8'), 'season.yaml');
  const exported = renderSeason(season);
  expect(readSeason(exported, 'export.yaml')).toEqual(season);
  expect(renderSeason(readSeason(exported, 'export.yaml'))).toBe(exported);
});

test('moments are written on the wall clock, with the offset only where the hour came twice', () => {
  const text = lines(
    'group:',
    '  name: g',
    '  zone: America/Moncton',
    'lots:',
    '  - id: A',
    '    fertilised: 2025-11-02T01:30:00-04:00',
    '    eggs: 1',
    '    table: atlantic-salmon',
    '  - id: B',
    '    fertilised: 2025-11-02 02:30',
    '    eggs: 1',
    '    table: atlantic-salmon',
    'oldRule:',
    '  thermalUnits: 500',
    '  base: 0',
  );
  expect(renderSeason(readSeason(text, 'season.yaml'))).toBe(text);
});
