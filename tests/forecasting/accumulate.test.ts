import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  accumulate,
  dailyRate,
  shippedTables,
  thermalUnits,
  wayTo,
  whenReached,
  whenUnitsReached,
} from '../../forecasting/index.js';

const law = fc.constantFrom(...shippedTables.map((table) => wayTo(table, 'hatch').law));
const means = fc.array(fc.double({ min: -1, max: 16, noNaN: true }), { minLength: 1, maxLength: 300 });
const share = fc.double({ min: 0, max: 1, noNaN: true });
const at = (mean: number[]) => ({ firstDay: 100, mean });

describe('progress', () => {
  it('never falls', () => {
    fc.assert(
      fc.property(law, means, share, share, (one, mean, a, b) => {
        const [early, late] = [a, b].sort((x, y) => x - y).map((x) => 100 + x * mean.length);
        const first = accumulate(one, at(mean), 100, early) ?? Number.NaN;
        const second = accumulate(one, at(mean), 100, late) ?? Number.NaN;
        expect(second).toBeGreaterThanOrEqual(first - 1e-12);
      }),
    );
  });

  it('adds up over any cut of the days', () => {
    fc.assert(
      fc.property(law, means, share, (one, mean, cut) => {
        const middle = 100 + cut * mean.length;
        const whole = accumulate(one, at(mean), 100, 100 + mean.length) ?? Number.NaN;
        const before = accumulate(one, at(mean), 100, middle) ?? Number.NaN;
        const after = accumulate(one, at(mean), middle, 100 + mean.length) ?? Number.NaN;
        expect(before + after).toBeCloseTo(whole, 9);
      }),
    );
  });

  it('makes a stage no later in warmer water', () => {
    fc.assert(
      fc.property(
        law,
        means,
        fc.double({ min: 0, max: 5, noNaN: true }),
        share,
        (one, mean, warmer, target) => {
          const cold = whenReached(one, at(mean), 100, target);
          const warm = whenReached(one, at(mean.map((t) => t + warmer)), 100, target);
          if (cold === null) return;
          expect(warm).not.toBeNull();
          expect(warm ?? 0).toBeLessThanOrEqual(cold + 1e-9);
        },
      ),
    );
  });

  it('at the moment a stage is reached is the way to it', () => {
    fc.assert(
      fc.property(law, means, share, (one, mean, target) => {
        const moment = whenReached(one, at(mean), 100, target);
        if (moment === null) return;
        expect(accumulate(one, at(mean), 100, moment)).toBeCloseTo(target, 9);
      }),
    );
  });

  it('counts a day begun at noon by half', () => {
    const { law: crisp } = wayTo(shippedTables[0], 'hatch');
    expect(accumulate(crisp, at([5, 5]), 100.5, 102)).toBeCloseTo(1.5 * dailyRate(crisp, 5), 12);
  });

  it('is not known where a day has no value or lies outside the days given', () => {
    const { law: crisp } = wayTo(shippedTables[0], 'hatch');
    expect(accumulate(crisp, at([5, Number.NaN, 5]), 100, 103)).toBeNull();
    expect(accumulate(crisp, at([5]), 99, 101)).toBeNull();
    expect(whenReached(crisp, at([5, 5]), 100, 1)).toBeNull();
    expect(thermalUnits(at([5, Number.NaN]), 100, 102, 0)).toBeNull();
    expect(whenUnitsReached(at([0, 0]), 100, 1, 0)).toBeNull();
  });
});
