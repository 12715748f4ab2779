import fc from 'fast-check';
import { expect, test } from 'vitest';
import { judgeStation, type RecordToJudge } from '../../../forecasting/quality/index.js';
import { HOUR, START, valley } from './invented-record.js';

const near = valley(20);

/** Any record a station may have: gaps, repeats, absurd values, hours or minutes between readings. */
const records: fc.Arbitrary<RecordToJudge> = fc
  .record({
    kind: fc.constantFrom('stream', 'gravel', 'air', 'tank', 'gauge'),
    steps: fc.array(
      fc.record({
        gap: fc.constantFrom(1, 1, 1, 1, 2, 30, 700),
        value: fc.oneof(
          fc.double({ min: -2, max: 12, noNaN: true }),
          fc.constantFrom(0, 0, 0, 0.1, 5, -0.4, 60, -40),
        ),
        times: fc.integer({ min: 1, max: 12 }),
      }),
      { minLength: 0, maxLength: 40 },
    ),
    minutes: fc.constantFrom(10, 60, 1440),
    offsetMinutes: fc.constantFrom(-240, 0, 345),
    beside: fc.boolean(),
  })
  .map(({ kind, steps, minutes, offsetMinutes, beside }) => {
    const at: number[] = [];
    const value: number[] = [];
    let now = START;
    for (const step of steps) {
      for (let i = 0; i < step.times; i++) {
        now += step.gap * minutes * 60_000;
        at.push(now);
        value.push(Math.round(step.value * 100) / 100);
      }
    }
    return {
      kind,
      quantity: 'temperature' as const,
      at: Float64Array.from(at),
      value: Float64Array.from(value),
      offsetMinutes,
      accuracy: 0.2,
      deployments: [],
      batteries: [],
      air: beside ? near.air : [],
      neighbours: beside ? near.neighbours : [],
      history: null,
    };
  });

test('judging changes no reading, gives the same answer twice, and speaks of the record only', () => {
  fc.assert(
    fc.property(records, (made) => {
      const [at, value] = [Float64Array.from(made.at), Float64Array.from(made.value)];
      const found = judgeStation(made);
      expect(made.at).toEqual(at);
      expect(made.value).toEqual(value);
      expect(judgeStation(made)).toEqual(found);
      for (const one of found) {
        expect(one.from).toBeLessThanOrEqual(one.to);
        expect(one.to).toBeGreaterThanOrEqual(at[0] - 24 * HOUR);
        expect(one.from).toBeLessThanOrEqual(at[at.length - 1]);
        for (const figure of Object.values(one.figures)) expect(Number.isFinite(figure)).toBe(true);
      }
    }),
    { numRuns: 150 },
  );
});

test('water on the ice plateau, whatever its noise within 0.15 °C and its resolution, is never doubted', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: -0.15, max: 0.15, noNaN: true }), { minLength: 24 * 12, maxLength: 24 * 20 }),
      fc.constantFrom(0.01, 0.1),
      (noise, resolution) => {
        const found = judgeStation({
          kind: 'stream',
          quantity: 'temperature',
          at: Float64Array.from(noise, (_, i) => START + i * HOUR),
          value: Float64Array.from(noise, (one) => Math.round(one / resolution) * resolution),
          offsetMinutes: 0,
          accuracy: 0.2,
          deployments: [],
          batteries: [],
          air: [],
          neighbours: [],
          history: null,
        });
        expect(found.filter(({ flag }) => flag >= 3)).toEqual([]);
      },
    ),
    { numRuns: 60 },
  );
});
