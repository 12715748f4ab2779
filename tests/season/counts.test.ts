import { describe, expect, it } from 'vitest';
import { compareSeasons, readSeason, renderSeason, SeasonRefused } from '../../src/season/index.js';
import { sayRefusal } from '../../src/words/refusals.js';
import { problemsOf, told } from './refused.js';

const SEASON = `group: {name: g, zone: America/Moncton}
stations: [{id: w}, {id: bridge, kind: gauge, quantities: [level]}]
sites: [{id: pool, station: w}]
lots: [{id: A, fertilised: 2025-11-04 10:00, eggs: 2000, table: atlantic-salmon}]
boxes:
  - {id: U1, site: pool, planted: 2025-11-04 15:00, fills: [{lot: A, eggs: 1000}]}
  - id: U2
    site: pool
    planted: 2025-11-04 15:00
    fills: [{lot: A, part: left, eggs: 400}, {lot: A, part: right, eggs: 300}]
`;
const withTally = (tally: string) => `${SEASON}tallies: [{box: U1, when: 2026-06-12, ${tally}}]\n`;
const codes = (text: string) => problemsOf(text).map(({ code }) => code);

/** What a person is told, in both languages. */
function sentences(text: string): string[] {
  try {
    readSeason(text, 'season.yaml');
  } catch (error) {
    if (error instanceof SeasonRefused) return [sayRefusal('en', error), sayRefusal('fr', error)];
    throw error;
  }
  throw new Error('the season was taken');
}

describe('a tally that cannot be', () => {
  it.each([
    ['more than were planted', 'empty: 900, dead: 150, alive: 1', 'season.counted-more'],
    ['a negative count', 'empty: -1, dead: 0, alive: 0', 'season.out-of-range'],
    ['text in place of a number', 'empty: many, dead: 0, alive: 0', 'season.not-a-number'],
    ['thousands set apart', 'empty: "1 000", dead: 0, alive: 0', 'season.grouped-number'],
    ['half an egg', 'empty: 1.5, dead: 0, alive: 0', 'season.not-whole'],
    ['nothing at all', 'note: wet', 'season.nothing-counted'],
    ['a count of a box that is gone', 'found: carried-away, dead: 3', 'season.counted-though-gone'],
    ['kinds beyond the dead', 'dead: 3, kinds: {fungus: 2, cannotTell: 2}', 'season.kinds-more-than-dead'],
    ['an entry id with a slash', 'empty: 1, entry: ../../x', 'season.bad-entry'],
  ])('%s is refused, in a sentence', (_, tally, code) => {
    expect(codes(withTally(tally))).toEqual([code]);
    for (const sentence of sentences(withTally(tally))) expect(sentence).toMatch(/tallies 1.*: .{20,}/);
  });

  it('says by how much there are too many', () => {
    expect(sentences(withTally('empty: 900, dead: 150, alive: 1'))[0]).toContain(
      '1,051 were counted out of box “U1”, where 1,000 eggs were planted: that is 51 too many.',
    );
  });

  it('counts a part against what was planted in the part, and knows the parts', () => {
    const part = (name: string, empty: number) =>
      `${SEASON}tallies: [{box: U2, part: ${name}, when: 2026-06-12, empty: ${empty}}]\n`;
    expect(codes(part('left', 401))).toEqual(['season.counted-more']);
    expect(readSeason(part('left', 400), 'x').tallies[0]?.empty).toBe(400);
    expect(codes(part('middle', 1))).toEqual(['season.no-such-part']);
  });

  it('is refused before planting, for a box that is not there, and twice under one entry', () => {
    expect(codes(`${SEASON}tallies: [{box: U1, when: 2025-11-03, empty: 1}]\n`)).toEqual([
      'season.counted-before-planted',
    ]);
    expect(told(`${SEASON}tallies: [{box: U9, when: 2026-06-12, empty: 1}]\n`)).toEqual([
      '11 tallies.0.box season.no-such',
    ]);
    const one = '{box: U1, when: 2026-06-12, empty: 1, entry: same-id}';
    expect(codes(`${SEASON}tallies: [${one}, ${one}]\n`)).toEqual(['season.same-entry']);
  });

  it('stands where the counter stands by it', () => {
    const season = readSeason(withTally('empty: 900, dead: 150, alive: 1, countStands: true'), 'x');
    expect(season.tallies[0]).toMatchObject({ empty: 900, countStands: true, found: 'in-place' });
  });
});

describe('a box checked and put back', () => {
  it('cannot hold more than was planted, nor be checked before planting', () => {
    const check = (fields: string) => `${SEASON}checkedAndPutBack: [{box: U1, ${fields}}]\n`;
    expect(codes(check('when: 2026-06-02, alive: 1001'))).toEqual(['season.counted-more']);
    expect(codes(check('when: 2025-11-01, alive: 1'))).toEqual(['season.counted-before-planted']);
    expect(codes(check('when: 2026-06-02'))).toEqual(['season.missing']);
    expect(readSeason(check('when: 2026-06-02, alive: 300'), 'x').checkedAndPutBack).toHaveLength(1);
  });
});

describe('how the group lifts', () => {
  it.each([
    ['a share above one', 'stillInBox: 2', 'season.out-of-range'],
    ['a rule that is none', 'rule: whenever', 'season.not-one-of'],
    ['no boxes a day', 'boxesADay: 0', 'season.out-of-range'],
    ['a trip to a site that is not there', 'trips: [[nowhere]]', 'season.no-such'],
    [
      'a level at a station without one',
      'gauge: {station: w, quantity: level, most: 1}',
      'season.gauge-has-no',
    ],
  ])('refuses %s', (_, lifting, code) => {
    expect(codes(`${SEASON}lifting: {${lifting}}\n`)).toEqual([code]);
  });

  it('comes back from its file as it went in, and says what changed', () => {
    const before = readSeason(SEASON, 'x');
    const text = `${withTally('empty: 900, dead: 50, kinds: {fungus: 2}, siltMm: 12')}lifting:
  boxesADay: 2
  trips: [[pool]]
  gauge: {station: bridge, quantity: level, most: 0.6}
  approved: {by: Ada, at: 2026-06-01 09:00, asOf: 2026-06-01, chance: 0.8, days: [{date: 2026-06-12, boxes: [U1]}]}
`;
    const season = readSeason(text, 'x');
    const again = renderSeason(season);
    expect(readSeason(again, 'x')).toEqual(season);
    expect(renderSeason(readSeason(again, 'x'))).toBe(again);
    expect(again).not.toContain('before-emergence');
    const changes = compareSeasons(before, season).map(({ code, with: said }) => `${code} ${said.thing}`);
    expect(changes).toContain('season.added tally');
    expect(changes).toContain('season.changed group');
  });
});
