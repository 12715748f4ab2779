import { describe, expect, it } from 'vitest';
import { seasonFrom } from '../../src/season/index.js';
import { boxCounts, earlierYears, seasonId, survivalOf } from '../../src/survival/index.js';

/** An invented season: boxes of two lots at two sites, one counted twice, one gone, one whose parts hold both lots. */
const season = (tallies: readonly object[], more: object = {}) =>
  seasonFrom(
    {
      group: { name: 'Invented', zone: 'UTC' },
      stations: [{ id: 's' }],
      sites: [
        { id: 'bend', station: 's', name: 'The Bend' },
        { id: 'pool', station: 's' },
      ],
      lots: [
        {
          id: 'A',
          fertilised: '2024-11-04 10:00',
          parents: [],
          eggs: 4000,
          table: 'atlantic-salmon',
          control: { eggs: 100, fertilised: 80, of: 100 },
        },
        { id: 'B', fertilised: '2024-11-05 10:00', eggs: 4000, table: 'atlantic-salmon' },
      ],
      boxes: [
        box('P1', 'pool', [{ lot: 'A', eggs: 1000 }]),
        box('P2', 'pool', [{ lot: 'A', eggs: 1000 }]),
        box('B1', 'bend', [{ lot: 'B', eggs: 1000 }]),
        box('B2', 'bend', [{ lot: 'B', eggs: 1000 }]),
        box('M', 'bend', [
          { lot: 'A', part: 'left', eggs: 500 },
          { lot: 'B', part: 'right', eggs: 500 },
        ]),
      ],
      tallies,
      ...more,
    },
    'season',
  );
const box = (id: string, site: string, fills: readonly object[]) => ({
  id,
  site,
  planted: '2024-11-06 12:00',
  lifted: '2025-06-17 12:00',
  fills,
});
const tally = (box: string, empty: number, dead: number, more: object = {}) => ({
  box,
  when: '2025-06-17',
  empty,
  dead,
  alive: 0,
  ...more,
});

describe('what was counted', () => {
  it('two counters: their mean, how far apart, and a wider interval for every box', () => {
    const twice = season([
      tally('P1', 700, 300, { counter: 'one' }),
      tally('P1', 720, 280, { counter: 'two' }),
    ]);
    const [count] = boxCounts(twice);
    expect(count).toMatchObject({ empty: 710, dead: 290, counters: 2, apart: 20, of: 1000 });
    const survival = survivalOf(twice, [count], []);
    // √(20²/2) = 14.14 eggs.
    expect(survival.countingError).toBeCloseTo(14.142, 3);
    const plain = survivalOf(twice, [{ ...count, apart: null }], []);
    const width = (of: typeof survival) =>
      (of.boxes[0].shares.out?.to ?? 0) - (of.boxes[0].shares.out?.from ?? 0);
    expect(width(survival)).toBeGreaterThan(width(plain));
  });

  it('a box not found counts in one figure and not in the other', () => {
    const counts = boxCounts(
      season([tally('P1', 800, 200), { box: 'P2', when: '2025-06-17', found: 'not-found' }]),
    );
    const all = survivalOf(season([]), counts, []).groups.find(
      ({ by, measure }) => by === 'all' && measure === 'out',
    );
    expect(all).toMatchObject({
      gone: 1,
      found: { boxes: 1, share: 0.8 },
      withGone: { boxes: 2, share: 0.4 },
    });
  });

  it('parts go to their own lots; a whole box of two lots to none', () => {
    const parts = boxCounts(
      season([tally('M', 300, 200, { part: 'left' }), tally('M', 450, 50, { part: 'right' })]),
    );
    expect(parts.map(({ lot, of, empty }) => [lot, of, empty])).toEqual([
      ['A', 500, 300],
      ['B', 500, 450],
    ]);
    expect(boxCounts(season([tally('M', 750, 250)]))[0].lot).toBeNull();
    // Both parts of one box are one box of its site.
    const site = survivalOf(season([]), parts, []).groups.find(
      ({ by, measure }) => by === 'site' && measure === 'out',
    );
    expect(site?.found).toMatchObject({ boxes: 1, seen: 750, of: 1000 });
  });

  it('dead that nobody could put to a stage may have died before it or after it', () => {
    const kinds = { neverFertilised: 50, beforeEyeUp: 60, eyedDied: 40, hatchedDied: 20, cannotTell: 30 };
    const [count] = boxCounts(season([tally('P1', 800, 200, { kinds })]));
    expect(count.reached).toEqual({
      'eye-up': { upper: 890, lower: 860 },
      hatch: { upper: 850, lower: 820 },
    });
  });

  it('of the fertilised: divided by the control sample’s rate', () => {
    const told = season([tally('P1', 640, 360)]);
    const { boxes, groups } = survivalOf(told, boxCounts(told), []);
    expect(boxes[0].ofFertilised?.share).toBeCloseTo(0.8, 10);
    expect(
      groups.find(({ by, name, measure }) => by === 'lot' && name === 'A' && measure === 'out')?.ofFertilised
        ?.share,
    ).toBeCloseTo(0.8, 10);
  });

  it('each lot at one site only: site cannot be told from lot; a lot at both ends that', () => {
    const apart = season([
      tally('P1', 800, 200),
      tally('P2', 790, 210),
      tally('B1', 400, 600),
      tally('B2', 420, 580),
    ]);
    expect(survivalOf(apart, boxCounts(apart), []).siteIsLot).toBe(true);
    const shared = season([
      tally('P1', 800, 200),
      tally('B1', 400, 600),
      tally('M', 300, 200, { part: 'left' }),
    ]);
    expect(survivalOf(shared, boxCounts(shared), []).siteIsLot).toBe(false);
  });

  it('no eggs, no share: boxes of a past table without eggs are left out', () => {
    const told = season([], {
      earlier: [
        {
          id: 'x',
          file: 'x.csv',
          boxes: [
            { season: '2022-2023', box: 'P1', eggs: 0, empty: 0 },
            { season: '2022-2023', box: 'P2', eggs: 500, empty: 300 },
          ],
        },
      ],
    });
    expect(earlierYears(told)).toEqual([
      { season: '2022-2023', source: 'table', boxes: [{ seen: 300, of: 500 }] },
    ]);
    const { groups } = survivalOf(
      told,
      [],
      [{ season: 'none', source: 'table', boxes: [{ seen: 0, of: 0 }] }],
    );
    expect(groups).toMatchObject([{ by: 'year', found: null }]);
  });

  it('a season is called by the years of fertilisation and of lifting', () => {
    expect(seasonId(season([]))).toBe('2024-2025');
    expect(seasonId(seasonFrom({ group: { name: 'Invented', zone: 'UTC' } }, 'season'))).toBeNull();
  });
});
