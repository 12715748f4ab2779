import fc from 'fast-check';
import { describe, it } from 'vitest';
import { sameReadings } from './compare.js';
import type { Layout } from './layout.js';
import { layouts } from './layouts.js';
import type { Plan } from './record.js';
import { readThrough } from './through.js';

const MINUTE = 60_000;

/**
 * Any date that no clock change of a zone used here is near: what a file shows of a change is tested by itself
 * (zones.test.ts), and a record that begins in a repeated hour cannot be told from the other.
 */
const quietDay = fc
  .record({
    year: fc.integer({ min: 2001, max: 2024 }),
    day: fc.oneof(fc.integer({ min: 100, max: 285 }), fc.integer({ min: 320, max: 360 })),
    minute: fc.integer({ min: 0, max: 1439 }),
  })
  .map(({ year, day, minute }) => Date.UTC(year, 0, day, 0, minute));

const steps = (layout: Layout): readonly number[] => (layout.days ? [1440] : [5, 10, 15, 30, 60]);

/** Long enough to reach another date, so that steps and monotony can settle the order of day and month. */
function plans(layout: Layout): fc.Arbitrary<Plan> {
  if (!layout.anyDate) return fc.integer({ min: 0, max: 1e9 }).map((seed) => ({ ...layout.plan, seed }));
  return fc
    .record({
      seed: fc.integer({ min: 0, max: 1e9 }),
      first: quietDay,
      stepMinutes: fc.constantFrom(...steps(layout)),
      more: fc.integer({ min: 0, max: 60 }),
    })
    .map(({ seed, first, stepMinutes, more }) => ({
      stations: layout.plan.stations,
      seed,
      first: first - (first % (stepMinutes * MINUTE)),
      stepMinutes,
      readings: Math.ceil(1.5 * (1440 / stepMinutes)) + 30 + more,
    }));
}

describe('an invented record comes back through every layout, reading for reading', () => {
  it.each(layouts.map((layout) => [layout.file, layout] as const))('%s', async (_, layout) => {
    await fc.assert(
      fc.asyncProperty(plans(layout), async (plan) => {
        const record = layout.record(plan);
        const read = await readThrough(layout.write(record), layout.asked, layout.known, layout.file);
        sameReadings(read, layout.expected(record));
      }),
      { numRuns: 12, seed: 20251114 },
    );
  });
});
