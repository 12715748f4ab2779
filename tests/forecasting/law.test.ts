import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { COLDEST, dailyRate, daysToStage, type Law, shippedTables } from '../../forecasting/index.js';
import { lookUp, rateTable } from '../../forecasting/rate-lookup.js';

const laws: Law[] = shippedTables.flatMap(({ stages }) =>
  stages.flatMap(({ needs }) => ('law' in needs ? [needs.law] : [])),
);
const anyLaw = fc.constantFrom(...laws);
const water = fc.double({ min: -5, max: 35, noNaN: true });

describe('days to a stage at constant temperature', () => {
  it('are never more in warmer water, whatever the law', () => {
    fc.assert(
      fc.property(anyLaw, water, fc.double({ min: 0, max: 20, noNaN: true }), (law, celsius, warmer) => {
        expect(daysToStage(law, celsius + warmer)).toBeLessThanOrEqual(daysToStage(law, celsius));
      }),
    );
  });

  it('take water colder than -0.5 °C for -0.5', () => {
    for (const law of laws) expect(daysToStage(law, -8)).toBe(daysToStage(law, COLDEST));
  });

  it('never arrive where the law gathers nothing: at a base, at or below alpha', () => {
    expect(daysToStage({ form: 'thermal-units', units: 500, base: 2 }, 2)).toBe(Number.POSITIVE_INFINITY);
    expect(dailyRate({ form: 'thermal-units', units: 500, base: 2 }, 1)).toBe(0);
    expect(daysToStage({ form: 'power', log10a: 2, b: -1, alpha: 3 }, 3)).toBe(Number.POSITIVE_INFINITY);
  });

  it('between listed temperatures run straight in ln D, colder go on along the first two, warmer stay', () => {
    const law: Law = {
      form: 'days-at',
      rows: [
        { celsius: 2, days: 160 },
        { celsius: 6, days: 80 },
        { celsius: 10, days: 40 },
      ],
    };
    expect(daysToStage(law, 4)).toBeCloseTo(Math.sqrt(160 * 80), 9);
    expect(daysToStage(law, 10)).toBe(40);
    expect(daysToStage(law, 0)).toBeCloseTo(160 * Math.SQRT2, 9);
    expect(daysToStage(law, 25)).toBe(40);
  });

  it('stay at the lowest of a parabola, where the formula would have eggs slow down', () => {
    const law: Law = { form: 'log-quadratic', d0: 266, c1: -0.0967, c2: 0.00207 };
    expect(daysToStage(law, 30)).toBe(daysToStage(law, 0.0967 / 0.00414));
  });
});

describe('the looked-up rate', () => {
  it('is the rate to a millionth of itself, whatever the law', () => {
    fc.assert(
      fc.property(anyLaw, fc.double({ min: COLDEST, max: 30, noNaN: true }), (law, celsius) => {
        const exact = dailyRate(law, celsius);
        expect(Math.abs(lookUp(rateTable(law), celsius) - exact)).toBeLessThanOrEqual(1e-6 * exact + 1e-6);
      }),
    );
  });

  it('holds at both ends', () => {
    for (const law of laws) {
      expect(lookUp(rateTable(law), -9)).toBeCloseTo(dailyRate(law, COLDEST), 12);
      expect(lookUp(rateTable(law), 90)).toBeCloseTo(dailyRate(law, 40), 6);
    }
  });
});
