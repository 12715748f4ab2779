import { expect, test } from 'vitest';
import { z } from 'zod';
import { fieldKeys } from '../../src/season/field-keys.js';
import { compareSeasons, readSeason, type SeasonChange, type SeasonWords } from '../../src/season/index.js';
import { seasonSchema } from '../../src/season/season.js';
import { season as en } from '../../src/words/en/season.js';
import { season as fr } from '../../src/words/fr/season.js';
import { problemsOf } from './refused.js';
import { lines } from './yaml.js';

const refusal = (text: string) => {
  const told = { file: 'season.yaml', problems: problemsOf(text) };
  return { en: en['season.refused'](told), fr: fr['season.refused'](told) };
};

test('a refusal names the file, the line and the place, and what would do', () => {
  const { en, fr } = refusal(
    lines(
      'group: {name: g, zone: America/Moncton}',
      'lots:',
      '  - id: A',
      '    fertilised: 2025-11-02 01:30',
      '    eggs: 13.000',
      '    table: atlantic-salmon',
    ),
  );
  expect(en.split('\n')).toEqual([
    'season.yaml was not taken, and nothing was changed:',
    '  line 4, lots 1 › fertilised: 2025-11-02 01:30 came twice when summer time ended: write 2025-11-02T01:30:00-03:00 for the first or 2025-11-02T01:30:00-04:00 for the second.',
    '  line 5, lots 1 › eggs: “13.000” can be read in two ways: write 13000 if that is what you mean.',
  ]);
  expect(fr.split('\n')).toEqual([
    'Le fichier season.yaml n’a pas été adopté et rien n’a été changé :',
    '  ligne 4, lots 1 › fertilised : 2025-11-02 01:30 est passé deux fois au retour à l’heure normale : écrivez 2025-11-02T01:30:00-03:00 pour la première ou 2025-11-02T01:30:00-04:00 pour la seconde.',
    '  ligne 5, lots 1 › eggs : « 13.000 » se lit de deux façons : écrivez 13000 si c’est bien cela.',
  ]);
});

test('a file full of slips is told in twenty lines and a count', () => {
  const stations = Array.from({ length: 35 }, (_, i) => `  - {id: s${i}, kind: lake}`);
  const { en, fr } = refusal(lines('group: {name: g, zone: UTC}', 'stations:', ...stations));
  expect(en.split('\n')).toHaveLength(22);
  expect(en.split('\n').at(-1)).toBe('  … and 15 more.');
  expect(fr.split('\n').at(-1)).toBe('  … et 15 de plus.');
});

test('limits are given as a person writes them', () => {
  const { en, fr } = refusal(lines('group: {name: g, zone: UTC}', 'seasonalCurve: {spread: 0.05}'));
  expect(en).toContain('“0.05” is outside what can be: from 0.1 to 10.');
  expect(fr).toContain('« 0.05 » sort de ce qui est possible : de 0,1 à 10.');
});

test("a table's broken rule is told in the table's own words", () => {
  const { en, fr } = refusal(
    lines(
      'group: {name: g, zone: UTC}',
      'tables:',
      '  - id: ours',
      '    species: Salmo salar',
      '    name: Ours',
      '    stages:',
      '      - stage: hatch',
      '        needs: {law: {form: days-at, rows: [{celsius: 2, days: 40}, {celsius: 10, days: 45}]}}',
      '        validity: {min: 2, max: 10}',
    ),
  );
  expect(en).toMatch(/line 7, tables 1 › stages 1: Table “ours”: .*45.*10.*40/);
  expect(fr).toMatch(/ligne 7, tables 1 › stages 1 : Table « ours » : .*45.*10.*40/);
});

test('changes are told in both languages', () => {
  const season = (stations: string) =>
    readSeason(lines('group: {name: g, zone: UTC}', `stations: ${stations}`), 'season.yaml');
  const changes = compareSeasons(
    season('[{id: a, zone: UTC-04:00}, {id: b}]'),
    season('[{id: a}, {id: c, kind: tank}]'),
  );
  expect(changes.map((change) => said(en, change))).toEqual([
    'station a, time zone (zone): UTC-04:00 → (not stated)',
    'station left out: b',
    'new station: c',
  ]);
  expect(changes.map((change) => said(fr, change))).toEqual([
    'station a, fuseau horaire (zone) : UTC-04:00 → (non précisé)',
    'station retirée : b',
    'nouvelle station : c',
  ]);
});

test('every key of the file has a name, and a place deep in it is told in words', () => {
  const keys = new Set<string>();
  const gather = (node: unknown, listed: boolean): void => {
    if (typeof node !== 'object' || node === null) return;
    for (const [key, one] of Object.entries(node)) {
      if (key === 'properties' && typeof one === 'object' && one !== null) {
        for (const [name, inside] of Object.entries(one)) {
          if (listed) keys.add(name);
          gather(inside, true);
        }
      } else gather(one, listed);
    }
  };
  gather(z.toJSONSchema(seasonSchema('UTC'), { unrepresentable: 'any', io: 'output' }), false);
  expect(keys.size).toBeGreaterThan(100);
  expect([...keys].filter((key) => !(fieldKeys as readonly string[]).includes(key))).toEqual([]);

  const change = (before: string | null, after: string | null): SeasonChange => ({
    code: 'season.changed',
    with: { thing: 'box', id: 'B1', field: 'fills.2.eggs', before, after },
  });
  expect(said(en, change('5', '3'))).toBe('box B1, fill\u00a02, eggs (fills.2.eggs): 5 → 3');
  expect(said(fr, change('5', '3'))).toBe('incubateur B1, remplissage\u00a02, œufs (fills.2.eggs) : 5 → 3');
  expect(said(fr, change('true', null))).toContain(': oui → (non précisé)');
});

function said<Code extends keyof SeasonWords>(
  words: { [C in keyof SeasonWords]: (figures: SeasonWords[C]) => string },
  change: { code: Code; with: SeasonWords[Code] },
): string {
  return words[change.code](change.with);
}
