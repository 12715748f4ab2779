import fc from 'fast-check';
import { linearRegression, linearRegressionLine, rSquared } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { fitLinear } from '../../../forecasting/regression/linear.js';
import { NoRegression } from '../../../forecasting/regression/no-regression.js';
import { longley, norris } from './references/nist.js';

/** Digits in which `value` agrees with `certified`, NIST's log relative error. */
const digits = (value: number, certified: number) => -Math.log10(Math.abs((value - certified) / certified));

describe('linear regression', () => {
  it('gives the certified values of Norris (NIST StRD)', () => {
    const fit = fitLinear([norris.x], norris.y);
    expect(digits(fit.slopes[0], norris.slope)).toBeGreaterThan(12);
    expect(digits(fit.intercept, norris.intercept)).toBeGreaterThan(10);
    expect(digits(fit.residualSd, norris.residualSd)).toBeGreaterThan(11);
    expect(fit.n).toBe(36);
  });

  it('gives the certified values of Longley (NIST StRD), where inverting the raw XᵀX gives −53 for 15.06', () => {
    // NIST counts what R's longley gives in thousands (GNP, population) and hundreds (unemployed, armed forces)
    const units = [1, 1000, 10, 10, 1000, 1];
    const fit = fitLinear(
      units.map((unit, j) => longley.rows.map((row) => row[j] * unit)),
      longley.rows.map((row) => row[6] * 1000),
    );
    for (const [j, certified] of longley.slopes.entries()) {
      expect(digits(fit.slopes[j], certified)).toBeGreaterThan(9);
    }
    expect(digits(fit.intercept, longley.intercept)).toBeGreaterThan(9);
    expect(digits(fit.residualSd, longley.residualSd)).toBeGreaterThan(9);
  });

  it('agrees with simple-statistics on any line', () => {
    const value = fc.double({ min: -40, max: 40, noNaN: true });
    fc.assert(
      fc.property(fc.array(fc.tuple(value, value), { minLength: 5, maxLength: 60 }), (pairs) => {
        const x = pairs.map((p) => p[0]);
        const y = pairs.map((p) => p[1]);
        fc.pre(Math.max(...x) - Math.min(...x) > 0.1 && Math.max(...y) - Math.min(...y) > 0.1);
        const line = linearRegression(pairs);
        const fit = fitLinear([x], y);
        expect(fit.slopes[0]).toBeCloseTo(line.m, 6);
        expect(fit.intercept).toBeCloseTo(line.b, 5);
        expect(fit.r2).toBeCloseTo(rSquared(pairs, linearRegressionLine(line)), 6);
      }),
      { seed: 11 },
    );
  });

  it('counts a row of weight 3 as three rows, and one of weight 0 as none', () => {
    const x = [0, 1, 2, 3, 4];
    const y = [0.1, 1.3, 1.8, 3.4, 3.9];
    const weighted = fitLinear([x], y, { weights: [1, 3, 1, 1, 0] });
    const repeated = fitLinear([[0, 1, 1, 1, 2, 3]], [0.1, 1.3, 1.3, 1.3, 1.8, 3.4]);
    expect(weighted.slopes[0]).toBeCloseTo(repeated.slopes[0], 12);
    expect(weighted.intercept).toBeCloseTo(repeated.intercept, 12);
    expect(weighted.n).toBe(4);
  });

  it('shrinks slopes as ridge regression does: b/(1 + λ/n) for one predictor', () => {
    const x = [0, 1, 2, 3, 4, 5];
    const y = [1, 2.5, 2, 4.5, 5, 5.5];
    const plain = fitLinear([x], y);
    const ridged = fitLinear([x], y, { ridge: 3 });
    expect(ridged.slopes[0]).toBeCloseTo(plain.slopes[0] / (1 + 3 / 6), 12);
  });

  it.each([
    ['a constant predictor', [[4, 4, 4, 4]], [1, 2, 3, 4], 'constant'],
    ['two rows', [[1, 2]], [1, 2], 'too-few'],
    ['a missing value', [[1, 2, Number.NaN, 4]], [1, 2, 3, 4], 'not-finite'],
    ['columns of different lengths', [[1, 2, 3]], [1, 2, 3, 4], 'uneven'],
  ])('refuses %s', (_, x, y, reason) => {
    let refused: unknown = null;
    try {
      fitLinear(x, y);
    } catch (error) {
      refused = error;
    }
    expect(refused).toBeInstanceOf(NoRegression);
    expect(refused).toMatchObject({ reason });
  });
});
