import { describe, expect, it } from 'vitest';
import { atlanticSalmon, daysAtConstant, shippedTables, stageRow, wayTo } from '../../forecasting/index.js';

/** How far eggs and lots lie apart: published spans, each with its source and mark. */

const Z95 = 1.645;
const row = (stage: string) => {
  const found = stageRow(atlanticSalmon, stage);
  if (found === undefined || found === null) throw new Error(`no ${stage}`);
  return found;
};
const daysTo = (stage: string, celsius: number) => daysAtConstant(wayTo(atlanticSalmon, stage), celsius);

describe('eggs of one lot', () => {
  it('hatch with SD 0.03 of the way (ours): from the 5th to the 95th in 1-3 weeks in cold water (Konecki 1995, seen, of coho)', () => {
    expect(row('hatch').eggSpread).toBe(0.03);
    for (const celsius of [1, 2, 3, 4, 5]) {
      const span = 2 * Z95 * row('hatch').eggSpread * daysTo('hatch', celsius);
      expect(span).toBeGreaterThan(7);
      expect(span).toBeLessThan(21.5);
    }
  });

  it('emerge with SD 0.04-0.07 of the way (ours): 95 % within 12 days (Beall et al., abstract), 80 % within two weeks (García de Leániz et al., abstract)', () => {
    // In the 10 °C that a river has by then, the two spans are SDs of about 0.04 and 0.07 of the way.
    const way = daysTo('emergence', 10);
    const beall = 12 / (2 * 1.96 * way);
    const garcia = 14 / (2 * 1.2816 * way);
    expect(beall).toBeCloseTo(0.04, 2);
    expect(garcia).toBeCloseTo(0.07, 2);
    expect(row('emergence').eggSpread).toBeGreaterThan(beall);
    expect(row('emergence').eggSpread).toBeLessThan(garcia);
  });
});

describe('lots', () => {
  it('lie SD 0.025 apart (ours): two stocks at 479.8 ± 6.4 and 472.3 ± 12.1 degree-days vary by 1.3 and 2.6 % (PMC3833687, seen)', () => {
    for (const { lotSpread } of shippedTables) expect(lotSpread).toBe(0.025);
    expect(6.4 / 479.8).toBeLessThan(0.025);
    expect(12.1 / 472.3).toBeCloseTo(0.025, 2);
  });
});
