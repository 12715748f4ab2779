import fc from 'fast-check';
import jStat from 'jstat';
import { describe, expect, test } from 'vitest';
import { eggsBySamples } from '../../src/autumn/index.js';
import { student95 } from '../../src/autumn/student.js';
import { askR, vector } from '../references/r.js';

describe('eggs from counted samples', () => {
  // Worked example of a fisheries school's course, "Harvesting, hauling, measuring and stocking" (L. Rose, BIOL/MSCI
  // 537, sheets 13): samples of 36, 35 and 41 eggs weigh 1.5, 1.6 and 1.9 g, the egg mass 316.8 g: 22.4 eggs a gram,
  // 7,096 eggs (an excerpt was read).
  test('a published worked example by weight comes out', () => {
    const samples = [
      { eggs: 36, amount: 1.5 },
      { eggs: 35, amount: 1.6 },
      { eggs: 41, amount: 1.9 },
    ];
    const count = eggsBySamples(samples, 316.8);
    expect(count.perUnit).toBeCloseTo(22.4, 10);
    expect(count.eggs).toBe(7096);
    // The ratio of two sums and its error (Cochran, Sampling Techniques, 6.4: memory), by hand from the residuals.
    const residuals = [2.4, -0.84, -1.56];
    const perGram = Math.sqrt(residuals.reduce((sum, r) => sum + r * r, 0) / 2 / 3) / (5 / 3);
    expect(count.error).toBeCloseTo(perGram * 316.8, 6);
  });

  // Worked example of a public hatchery manual, "Counting fry" by water displaced, the sum that counts eggs too
  // (University of Florida Digital Collections, UF00072581, page 10: an excerpt was read): a sample of 300 raises the
  // water from 50 to 62 ml, the whole clutch from 500 to 900 ml: 300 × 400 / 12 = 10,000.
  test('a published worked example by water displaced comes out', () => {
    const count = eggsBySamples([{ eggs: 300, amount: 62 - 50 }], 900 - 500);
    expect(count.perUnit).toBe(25);
    expect(count.eggs).toBe(10_000);
    expect(count.error).toBeNull();
  });

  // Hundred-egg samples drained and weighed, the lot's weight over the mean egg: the weight method of Piper et al. 1982,
  // Fish Hatchery Management, U.S. Fish and Wildlife Service (an excerpt was read); the same sum by water displaced.
  test('samples of a hundred eggs give the lot over the mean egg', () => {
    const displaced = [12.4, 12.6, 12.5].map((amount) => ({ eggs: 100, amount }));
    expect(eggsBySamples(displaced, 500).eggs).toBe(Math.round(500 / (37.5 / 300)));
  });

  test('samples that agree leave no error; one alone cannot say', () => {
    const same = Array.from({ length: 4 }, () => ({ eggs: 100, amount: 12.5 }));
    expect(eggsBySamples(same, 500)).toMatchObject({ eggs: 4000, error: 0, low: 4000, high: 4000 });
    expect(eggsBySamples([{ eggs: 100, amount: 12.5 }], 500)).toMatchObject({ error: null, low: null });
  });

  // The estimate of a total by a ratio, its error and Student's interval as R's package survey works them out (Debian's
  // r-cran-survey: svyratio and its predict, Lumley 2010): samples by weight and by water displaced alike.
  test('the lot, its error and its interval agree with R’s survey package', () => {
    const byWeight = { eggs: [36, 35, 41], amounts: [1.5, 1.6, 1.9], total: 316.8 };
    const displaced = { eggs: [98, 103, 100, 101], amounts: [12.4, 12.6, 12.9, 12.1], total: 1250 };
    const cases = [byWeight, displaced];
    const lots = cases.map(
      ({ eggs, amounts, total }) => `lot(${vector(eggs)}, ${vector(amounts)}, ${total})`,
    );
    const answers = askR(`suppressMessages(library(survey))
      lot <- function(eggs, amount, total) {
        design <- suppressWarnings(svydesign(ids = ~1, data = data.frame(eggs, amount)))
        lot <- predict(svyratio(~eggs, ~amount, design), total = total)
        say(c(lot$total, lot$se, qt(0.975, length(eggs) - 1) * lot$se))
      }
      ${lots.join('\n')}`);
    for (const [i, { eggs, amounts, total }] of cases.entries()) {
      const count = eggsBySamples(
        eggs.map((number, k) => ({ eggs: number, amount: amounts[k] ?? Number.NaN })),
        total,
      );
      const [mean = Number.NaN, error = Number.NaN, reach = Number.NaN] = answers[i] ?? [];
      expect(count.eggs).toBe(Math.round(mean));
      expect((count.error ?? 0) / error).toBeCloseTo(1, 9);
      // Told in whole eggs.
      expect(Math.abs((count.high ?? 0) - mean - reach)).toBeLessThan(0.51);
    }
  });

  // Student's t of 2 degrees of freedom, 0.975: 4.302653 (any printed table).
  test('the interval is Student’s', () => {
    const { low, high, error } = eggsBySamples(
      [
        { eggs: 98, amount: 12.5 },
        { eggs: 100, amount: 12.5 },
        { eggs: 102, amount: 12.5 },
      ],
      1250,
    );
    expect(error).not.toBeNull();
    expect((high ?? 0) - (low ?? 0)).toBeCloseTo(2 * 4.302653 * (error ?? 0), -1);
  });

  test('the printed table of Student’s t and what goes on from it agree with jStat', () => {
    for (const freedom of [1, 2, 3, 10, 30, 31, 40, 100])
      expect(student95(freedom)).toBeCloseTo(jStat.studentt.inv(0.975, freedom), 2);
  });

  test('nothing measured, nothing counted: refused', () => {
    expect(() => eggsBySamples([], 500)).toThrow(RangeError);
    expect(() => eggsBySamples([{ eggs: 10, amount: 0 }], 500)).toThrow(RangeError);
    expect(() => eggsBySamples([{ eggs: 10, amount: 1 }], Number.NaN)).toThrow(RangeError);
  });

  test('the unit does not matter', () => {
    const sample = fc.record({
      eggs: fc.integer({ min: 1, max: 500 }),
      amount: fc.integer({ min: 1, max: 900 }),
    });
    fc.assert(
      fc.property(
        fc.array(sample, { minLength: 2, maxLength: 6 }),
        fc.integer({ min: 1, max: 9000 }),
        (all, total) => {
          const litres = all.map(({ eggs, amount }) => ({ eggs, amount: amount / 1000 }));
          const [one, other] = [eggsBySamples(all, total), eggsBySamples(litres, total / 1000)];
          expect(Math.abs(one.eggs - other.eggs)).toBeLessThanOrEqual(1);
          expect(other.error ?? 0).toBeCloseTo(one.error ?? 0, 4);
        },
      ),
      { numRuns: 60 },
    );
  });
});
