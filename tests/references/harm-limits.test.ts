import { describe, expect, it } from 'vitest';
import {
  atlanticSalmon,
  brookTrout,
  brownTrout,
  type DevelopmentTable,
  type HarmLimit,
  shippedTables,
} from '../../forecasting/index.js';

/** Published limits that the shipped tables carry, each with its source and mark. */

const limits = (table: DevelopmentTable, kind: HarmLimit['kind']) =>
  table.harm.filter((limit) => limit.kind === kind);

describe('warm water', () => {
  it('Atlantic salmon eggs: ≥ 12 °C sustained is watched (Gunnes 1979, abstract), > 16 °C harms, alevins survive to 22 °C (Elliott & Elliott 2010, memory)', () => {
    const warm = limits(atlanticSalmon, 'warm').map(({ limit, severity, fromProgress, toProgress }) => [
      limit,
      severity,
      fromProgress,
      toProgress,
    ]);
    expect(warm).toEqual([
      [12, 'lowers-survival', 0, 1],
      [16, 'lethal', 0, 1],
      [22, 'lethal', 1, 1.7],
    ]);
  });

  it('brown trout: upper limit 13 (memory) and none hatched at 16 °C (J. Fish Biol. 62:580-590, abstract): both shown', () => {
    expect(limits(brownTrout, 'warm').map(({ limit }) => limit)).toEqual([13, 16]);
  });
});

describe('freezing', () => {
  // Fletcher et al. 1988, Aquaculture 71:369 (abstract): lethal with ice present, after hatch, in seawater.
  it.each([
    ['Atlantic salmon', -0.76, atlanticSalmon],
    ['brown trout', -0.81, brownTrout],
    ['brook trout', -0.87, brookTrout],
  ] as const)('%s is warned before it freezes at its published %s', (_name, published, table) => {
    const [lethal] = limits(table, 'freezing').filter(({ severity }) => severity === 'lethal');
    expect(lethal?.limit).toBeGreaterThanOrEqual(published);
    expect(lethal?.limit).toBe(-0.7);
  });

  it('bulk water supercools by about 0.04 °C only (Osterkamp et al. 1983), and a normal winter at 0.0 ± 0.2 °C passes no limit', () => {
    for (const table of shippedTables)
      for (const { limit } of limits(table, 'freezing')) expect(limit).toBeLessThanOrEqual(-0.2);
  });
});

describe('handling and cold', () => {
  it('eggs shocked at 10-20 % of the way died by half, eyed eggs hardly (Crisp 1990, Hydrobiologia 194:57-65, abstract): the span covers it and ends at eye-up', () => {
    for (const { doNotHandle } of shippedTables) {
      expect(doNotHandle.from).toBeLessThanOrEqual(0.1);
      expect(doNotHandle.to).toBe(0.5);
    }
  });

  it('a cold start below 4 °C is advice to 0.25 of the way, never an alarm (Peterson, Spinney & Sreedharan 1977, abstract)', () => {
    expect(limits(atlanticSalmon, 'cold-start')).toMatchObject([
      { severity: 'advice', limit: 4, toProgress: 0.25 },
    ]);
  });

  it('changes coho bore, +8.4 to -6.2 °C in 8 h, stay below the sudden-change limit (Tang, Bryant & Brannon 1987, abstract)', () => {
    for (const table of shippedTables)
      for (const { limit } of limits(table, 'sudden-change')) expect(limit).toBeGreaterThan(8.4 / 8);
  });

  it('alevins leave a box in 10 days, 5 to 20 (common practice, no source)', () => {
    for (const { leavesBox } of shippedTables)
      expect([leavesBox.days, leavesBox.min, leavesBox.max]).toEqual([10, 5, 20]);
  });
});

describe('where the numbers come from', () => {
  it('every row and every limit of every shipped table names a source', () => {
    for (const table of shippedTables) {
      for (const { sources } of [...table.stages, ...table.harm, table.doNotHandle, table.leavesBox])
        expect(sources.length).toBeGreaterThan(0);
      expect(table.sources.some(({ of }) => of === 'lotSpread')).toBe(true);
      expect(table.sources.some(({ of }) => of === 'ownSpread')).toBe(true);
    }
  });
});
