import fc from 'fast-check';
import { quantileSorted } from 'simple-statistics';
import { describe, expect, it } from 'vitest';
import { Origin, type StationDays, type Water, waterAt } from '../../../forecasting/index.js';
import { air, asked, cut, dayOf, meanOf, redNoise, station, stream, widthOf } from './invented-network.js';

const noise = [31, 32, 33].map((seed) => redNoise(seed, 0.7, 0.3));
const brook = (day: number) => Math.max(0, 0.8 * stream(day) + 0.4 + noise[0](day));
const others = [
  station('upper', (day) => Math.max(0, stream(day) + noise[1](day)), { place: [47.6, -66.2] }),
  station('lower', (day) => Math.max(0, 1.1 * stream(day) + noise[2](day)), { place: [47.3, -66.0] }),
  station('weather', air, { kind: 'air', place: null }),
];
const AS_OF = dayOf('2026-02-15');

describe('the origin of a day', () => {
  it('is never lost: measured days are the record in every trace, all others are filled or projected', () => {
    const gaps = fc.array(
      fc.record({ from: fc.integer({ min: 0, max: 190 }), days: fc.integer({ min: 1, max: 60 }) }),
      { maxLength: 4 },
    );
    fc.assert(
      fc.property(gaps, fc.integer({ min: 0, max: 2 }), (missing, neighbours) => {
        const start = dayOf('2025-10-15');
        const isMissing = (day: number) =>
          missing.some(({ from, days }) => day >= start + from && day < start + from + days);
        const target = station('brook', (day) => (isMissing(day) ? Number.NaN : brook(day)));
        const input = asked(target, others.slice(0, neighbours), { traces: 11 });
        const water = waterAt(input);
        expect(water.days.mean.length).toBe(input.to - input.from + 1);
        for (let d = 0; d < water.days.mean.length; d++) {
          const day = input.from + d;
          const measured = day <= AS_OF && !isMissing(day);
          expect(water.days.origin[d] === Origin.measured).toBe(measured);
          const unknown = day > AS_OF || neighbours === 0 ? Origin.projected : Origin.filled;
          if (!measured) expect(water.days.origin[d]).toBe(unknown);
          if (measured) {
            expect(water.days.mean[d]).toBe(brook(day));
            for (const trace of water.traces) expect(trace[d]).toBe(brook(day));
          }
        }
      }),
      { seed: 3, numRuns: 12 },
    );
  });
});

describe('an answer', () => {
  const target = station('brook', brook, { to: '2025-11-20' });

  it('is the same for the same question', () => {
    expect(waterAt(asked(target, others))).toEqual(waterAt(asked(target, others)));
  });

  it('does not depend on the order of the stations', () => {
    const once = waterAt(asked(target, others));
    fc.assert(
      fc.property(fc.shuffledSubarray(others, { minLength: 3 }), (shuffled) => {
        expect(waterAt(asked(target, shuffled))).toEqual(once);
      }),
      { seed: 4, numRuns: 5 },
    );
  });

  it('uses nothing after the as-of day: poison there changes nothing', () => {
    const poisoned = (of: StationDays): StationDays => {
      const mean = of.days.mean.slice();
      for (let i = Math.max(0, AS_OF + 1 - of.days.firstDay); i < mean.length; i++) mean[i] = 31;
      return { ...of, days: { ...of.days, mean } };
    };
    const whole = station('brook', (day) =>
      day > dayOf('2025-11-20') && day <= AS_OF ? Number.NaN : brook(day),
    );
    const clean = waterAt(asked(whole, others));
    expect(waterAt(asked(poisoned(whole), others.map(poisoned)))).toEqual(clean);
    // the poison is felt where it is not later than the as-of day
    const later = asked(poisoned(whole), others.map(poisoned), { asOf: AS_OF + 3 });
    expect(waterAt(later).days.mean).not.toEqual(clean.days.mean);
  });

  it('changes with the seed in its traces, hardly in its mean', () => {
    const [one, two] = [1, 2].map((seed) => waterAt(asked(target, others, { seed })));
    expect(one.traces).not.toEqual(two.traces);
    const apart = one.days.mean.map((value, d) => Math.abs(value - two.days.mean[d]));
    expect(Math.max(...apart)).toBeLessThan(1e-9);
  });
});

/** Days from the 10th to the 90th percentile of the traces' median hatch, eggs fertilised on the first day. */
function hatchInterval(water: Water): number {
  const dates = water.traces.map((trace) => {
    let left = 1;
    for (let d = 0; d < trace.length; d++) {
      // Crisp 1981 (coefficients: memory), floored as in the design
      const rate = 1 / 10 ** (5.1908 - 2.6562 * Math.log10(Math.max(-0.5, trace[d]) + 11));
      if (rate >= left) return d + left / rate;
      left -= rate;
    }
    return Number.POSITIVE_INFINITY;
  });
  const at = (share: number) =>
    quantileSorted(
      [...dates].sort((a, b) => a - b),
      share,
    );
  return at(0.9) - at(0.1);
}

describe('one more station', () => {
  it('that follows the water perfectly never widens it', () => {
    const target = station('brook', brook, { to: '2025-11-20' });
    const twin = station('twin', (day) => brook(day) + 1, { place: [47.55, -66.15] });
    const width = (neighbours: readonly StationDays[]) => {
      const water = waterAt(asked(target, neighbours));
      return {
        hatch: hatchInterval(water),
        filled: widthOf(water, '2025-11-21', '2026-02-15'),
        ahead: widthOf(water, '2026-02-16', '2026-06-30'),
        spread: meanOf(cut(water, water.days.spread, '2025-11-21', '2026-02-15')),
      };
    };
    for (const known of [others, others.slice(0, 1), others.slice(2), []]) {
      const before = width(known);
      const after = width([...known, twin]);
      expect(after.filled).toBeLessThan(before.filled);
      expect(after.ahead).toBeLessThanOrEqual(1.01 * before.ahead);
      expect(after.hatch).toBeLessThanOrEqual(before.hatch);
      expect(after.spread).toBeLessThan(before.spread);
    }
  });
});
