import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { lotBalances, openEnds, planFills, roomFor } from '../../src/autumn/index.js';
import { seasonFrom } from '../../src/season/index.js';

const lots = fc.uniqueArray(fc.record({ lot: fc.string({ minLength: 1 }), eggs: fc.nat({ max: 20_000 }) }), {
  selector: ({ lot }) => lot,
  maxLength: 5,
});
const rooms = fc.array(
  fc.record({
    box: fc.string({ minLength: 1 }),
    part: fc.option(fc.constantFrom('left half', 'right half')),
    compartments: fc.nat({ max: 2000 }),
    unfilled: fc.nat({ max: 50 }),
    doubled: fc.nat({ max: 50 }),
  }),
  { maxLength: 12 },
);

describe('fills', () => {
  test('never lose or make an egg, lot by lot, and never overfill', () => {
    fc.assert(
      fc.property(lots, rooms, (given, into) => {
        const { fills, left, empty } = planFills(given, into);
        for (const { lot, eggs } of given) {
          const placed = fills.filter((fill) => fill.lot === lot).reduce((sum, fill) => sum + fill.eggs, 0);
          expect(placed + (left.find((one) => one.lot === lot)?.eggs ?? Number.NaN)).toBe(eggs);
        }
        const inBoxes = fills.reduce((sum, { eggs }) => sum + eggs, 0);
        const room = into.reduce((sum, one) => sum + roomFor(one), 0);
        expect(inBoxes + empty.reduce((sum, free) => sum + free, 0)).toBe(room);
        expect(fills.every(({ eggs }) => eggs > 0)).toBe(true);
        // Nothing is left while there is room.
        if (left.some(({ eggs }) => eggs > 0)) expect(empty.every((free) => free === 0)).toBe(true);
      }),
      { numRuns: 200 },
    );
  });

  test('the count is used up box by box', () => {
    const box = (name: string) => ({ box: name, part: null, compartments: 1000, unfilled: 0, doubled: 0 });
    const planned = planFills(
      [{ lot: 'A', eggs: 2400 }],
      [box('1'), { ...box('2'), doubled: 3, unfilled: 1 }, box('3')],
    );
    expect(planned.fills.map(({ eggs }) => eggs)).toEqual([1000, 1002, 398]);
    expect(planned.empty).toEqual([0, 0, 602]);
  });

  test('where every egg of a lot is, and what is open', () => {
    const season = seasonFrom(
      {
        group: { name: 'Test', zone: 'UTC-04:00' },
        sites: [{ id: 'pool' }],
        lots: [
          {
            id: 'A',
            fertilised: '2025-11-04 10:00',
            eggs: 1200,
            table: 'atlantic-salmon',
            control: { eggs: 100 },
            lost: 20,
          },
          { id: 'B', fertilised: '2025-11-04 10:00', eggs: 10, table: 'atlantic-salmon' },
        ],
        boxes: [
          { id: '1', site: 'pool', fills: [{ lot: 'A', eggs: 1000, planted: '2025-11-04 14:00' }] },
          { id: '2', site: 'pool' },
        ],
      },
      'test',
    );
    expect(lotBalances(season)[0]).toEqual({
      lot: 'A',
      eggs: 1200,
      inBoxes: 1000,
      control: 100,
      lost: 20,
      leftOver: 0,
      unplaced: 80,
    });
    expect(openEnds(season)).toMatchObject({ lotsWithoutBox: ['B'], boxesWithoutLot: ['2'] });
  });
});
