import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { daysAtConstant } from '../../forecasting/check-table.js';
import {
  adjustedTable,
  atlanticSalmon,
  type ForecastInput,
  forecast,
  observedAtLifting,
  type StageObservation,
  shippedTables,
  stockAdjustment,
  wayTo,
} from '../../forecasting/index.js';
import { logChance } from '../../forecasting/observations/likelihood.js';
import { reweighted } from '../../forecasting/observations/reweight.js';
import { box, dayOf, lot, season } from './invented-river.js';
import { codes, stage, width } from './reading-answers.js';

const AS_OF = dayOf('2026-05-01');
const only = (changes: Partial<ForecastInput> = {}) => forecast(season({ asOf: AS_OF, ...changes })).boxes[0];
const seen = (changes: Partial<StageObservation> = {}): StageObservation => ({
  lot: 'L1',
  box: 'B1',
  stage: 'eye-up',
  day: AS_OF,
  seen: 10,
  upTo: 10,
  of: 20,
  ...changes,
});
const middle = (answer: ReturnType<typeof only>, name: string) =>
  stage(answer, name).median.p50 ?? Number.NaN;

describe('a stage that was seen', () => {
  const without = only();
  const eyeUp = Math.round(middle(without, 'eye-up'));
  const at = (day: number, count: number) =>
    only({ asOf: Math.max(AS_OF, day), observations: [seen({ day, seen: count, upTo: count })] });

  it('narrows the windows of its lot and moves them to what was seen', () => {
    const usual = only();
    const late = at(eyeUp + 3, 0);
    const early = at(eyeUp - 3, 20);
    expect(middle(late, 'hatch')).toBeGreaterThan(middle(usual, 'hatch'));
    expect(middle(early, 'hatch')).toBeLessThan(middle(usual, 'hatch'));
    const half = at(eyeUp, 10);
    expect(width(stage(half, 'hatch').median)).toBeLessThan(width(stage(usual, 'hatch').median));
    expect(codes(half.assumptions)).toContain('observation-used');
    expect(codes(usual.assumptions)).not.toContain('observation-used');
  });

  it('more eggs at the stage never make a later window', () => {
    const days = [0, 5, 10, 15, 20].map((count) => middle(at(eyeUp, count), 'hatch'));
    for (let i = 1; i < days.length; i++) expect(days[i]).toBeLessThanOrEqual(days[i - 1] + 0.2);
  });

  it('keeps a stage passed exactly when progress is 1', () => {
    const { lots } = at(eyeUp, 10);
    for (const { stage: name, passed } of lots[0].windows) expect(passed).toBe(lots[0].progress[name] >= 1);
  });

  it('of another lot, of a later day, or with figures that cannot be, counts for nothing', () => {
    for (const other of [
      seen({ lot: 'L2' }),
      seen({ day: AS_OF + 1 }),
      seen({ seen: 21, upTo: 21 }),
      seen({ box: 'elsewhere' }),
    ])
      expect(only({ observations: [other] })).toEqual(only());
  });

  it('that hardly a draw agrees with is believed in part, and said', () => {
    const answer = only({
      observations: [seen({ stage: 'hatch', day: dayOf('2025-12-01'), seen: 20, upTo: 20 })],
    });
    expect(codes(answer.assumptions)).toContain('observation-surprises');
    for (const { median } of answer.windows) expect(median.p50).not.toBeNaN();
  });

  it('in one box weighs every box of the lot', () => {
    const boxes = [box(), box({ box: 'B2' })];
    const [first, second] = forecast(
      season({ asOf: AS_OF, boxes, observations: [seen({ day: eyeUp, seen: 0, upTo: 0 })] }),
    ).boxes;
    expect(second.lots).toEqual(first.lots);
  });
});

describe('the chance of what was seen', () => {
  it('is greatest where the share is what was seen, and falls on either side', () => {
    const of = seen({ seen: 6, upTo: 6, of: 20 });
    const chance = (p: number) => logChance(p, of);
    expect(chance(0.3)).toBeGreaterThan(chance(0.2));
    expect(chance(0.3)).toBeGreaterThan(chance(0.4));
  });

  it('of bounds is the sum over what lies between them, 1 where nothing is bound', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true });
    fc.assert(
      fc.property(share, fc.integer({ min: 0, max: 20 }), (p, count) => {
        const parts = [
          logChance(p, seen({ seen: 0, upTo: count })),
          logChance(p, seen({ seen: Math.min(20, count + 1), upTo: 20 })),
        ];
        if (count < 20) expect(Math.exp(parts[0]) + Math.exp(parts[1])).toBeCloseTo(1, 6);
      }),
      { seed: 5, numRuns: 40 },
    );
    expect(logChance(0.2, seen({ seen: 0, upTo: 20 }))).toBeCloseTo(0, 9);
  });

  it('evidence that says the same of every draw leaves every draw', () => {
    expect([...reweighted(new Float64Array(7).fill(-3)).kept]).toEqual([0, 1, 2, 3, 4, 5, 6]);
  });
});

describe('a lifted box', () => {
  it('bounds hatch: alevins have hatched, living eggs have not, empty compartments may have', () => {
    expect(observedAtLifting('L1', 'B1', AS_OF, { eggs: 30, alevins: 5, empty: 65 })).toEqual({
      lot: 'L1',
      box: 'B1',
      stage: 'hatch',
      day: AS_OF,
      seen: 5,
      upTo: 70,
      of: 100,
    });
  });

  it('with nothing but empty compartments tells nothing of when', () => {
    expect(observedAtLifting('L1', 'B1', AS_OF, { eggs: 0, alevins: 0, empty: 100 })).toBeNull();
  });
});

describe('the stock adjustment', () => {
  const late = (name: string, progress: number) => ({
    lot: name,
    stage: 'hatch',
    progress,
    waterSpread: 0.01,
    seen: 25,
    of: 50,
  });

  it('is nothing without lots, and shrunk the less the more lots support it', () => {
    expect(stockAdjustment(atlanticSalmon, [])).toBeNull();
    const of = (count: number) =>
      stockAdjustment(
        atlanticSalmon,
        Array.from({ length: count }, (_, i) => late(`L${i}`, 1.05)),
      );
    const [one, four, many] = [of(1), of(4), of(400)];
    expect(one?.shown).toBeCloseTo(0.05, 2);
    expect(one?.adjustment).toBeGreaterThan(0);
    expect(four?.adjustment ?? 0).toBeGreaterThan(one?.adjustment ?? 1);
    expect(many?.adjustment).toBeCloseTo(0.05, 2);
    expect(many?.spread ?? 1).toBeLessThan(one?.spread ?? 0);
    expect(of(4)?.lots).toBe(4);
  });

  it('one lot looked at often is one lot', () => {
    const often = stockAdjustment(atlanticSalmon, [late('L1', 1.05), late('L1', 1.05), late('L1', 1.05)]);
    expect(often?.lots).toBe(1);
    expect(often?.weight).toBeLessThan(0.7);
  });

  it('makes every law of the shipped tables need that much more, at any temperature', () => {
    for (const table of shippedTables) {
      const adjusted = adjustedTable(table, {
        lots: 3,
        adjustment: 0.04,
        spread: 0.01,
        shown: 0.05,
        weight: 0.8,
      });
      for (const row of table.stages) {
        const published = daysAtConstant(wayTo(table, row.stage), 6);
        if (!Number.isFinite(published)) continue;
        expect(daysAtConstant(wayTo(adjusted, row.stage), 6) / published).toBeCloseTo(1.04, 6);
      }
    }
  });

  it('a forecast with the adjusted table comes later by as much of the way', () => {
    const stock = stockAdjustment(
      atlanticSalmon,
      ['a', 'b', 'c'].map((name) => late(name, 1.06)),
    );
    if (stock === null) throw new Error('three lots tell something');
    const later = only({ lots: [lot({ table: adjustedTable(atlanticSalmon, stock) })] });
    expect(middle(later, 'hatch')).toBeGreaterThan(middle(only(), 'hatch'));
  });
});
