import { describe, expect, it } from 'vitest';
import {
  atlanticSalmon,
  brookTrout,
  checkTable,
  type DevelopmentTable,
  forecast,
  type Needs,
  refuseInvalid,
  type StageRow,
  shippedTables,
  TableRefused,
} from '../../forecasting/index.js';
import { lot, season } from './invented-river.js';

/** The salmon table with one stage changed. */
function changed(stage: string, changes: Partial<StageRow>): DevelopmentTable {
  return {
    ...atlanticSalmon,
    stages: atlanticSalmon.stages.map((row) => (row.stage === stage ? { ...row, ...changes } : row)),
  };
}
const needs = (stage: string, needed: Needs) => changed(stage, { needs: needed });
const daysAt = (...rows: [number, number][]) =>
  changed('hatch', {
    needs: { law: { form: 'days-at', rows: rows.map(([celsius, days]) => ({ celsius, days })) } },
    validity: { min: 2, max: 10 },
  });

describe('a table that can be used', () => {
  it('is each of those shipped', () => {
    for (const table of shippedTables) expect(checkTable(table)).toEqual([]);
    expect(new Set(shippedTables.map(({ id }) => id)).size).toBe(shippedTables.length);
  });

  it('may count feeding from hatch', () => {
    const feeding: StageRow = {
      stage: 'feeding',
      needs: { after: 'hatch', law: { form: 'power', log10a: 2.674, b: -1.27, alpha: 0 } },
      eggSpread: 0.05,
      validity: { min: 2, max: 12 },
      sources: [],
    };
    const stages = atlanticSalmon.stages.slice(0, 2);
    expect(checkTable({ ...atlanticSalmon, stages: [...stages, feeding] })).toEqual([]);
  });
});

describe('a table that cannot be used is refused with the row, the value and the rule', () => {
  const power = { form: 'power', log10a: 5.1908, b: -2.6562, alpha: -11 } as const;
  it.each<[string, DevelopmentTable, string, Record<string, unknown>]>([
    ['no stages', { ...atlanticSalmon, stages: [] }, 'table-no-stages', { row: 'table' }],
    [
      'a stage twice',
      { ...atlanticSalmon, stages: [...atlanticSalmon.stages, atlanticSalmon.stages[1]] },
      'table-stage-twice',
      { row: 'hatch' },
    ],
    [
      'days that rise',
      daysAt([2, 140], [6, 150], [10, 40]),
      'table-days-rise',
      { row: 'hatch', celsius: 6, days: 150, before: 140 },
    ],
    [
      'temperatures out of order',
      daysAt([2, 140], [10, 40], [6, 90]),
      'table-temperatures-unsorted',
      { row: 'hatch', celsius: 6, before: 10 },
    ],
    ['one temperature', daysAt([2, 140]), 'table-too-few-rows', { row: 'hatch', rows: 1 }],
    ['days of 0', daysAt([2, 140], [10, 0]), 'table-not-positive', { row: 'hatch', field: 'days', value: 0 }],
    [
      'a range beyond its temperatures',
      daysAt([4, 140], [10, 40]),
      'table-rows-outside-validity',
      { row: 'hatch', min: 4, max: 10 },
    ],
    [
      'a power that rises',
      needs('hatch', { law: { ...power, b: 2 } }),
      'table-law-slows',
      { row: 'hatch', field: 'b', value: 2 },
    ],
    [
      'a power without a value in its range',
      needs('hatch', { law: { ...power, alpha: 3 } }),
      'table-power-undefined',
      { row: 'hatch', alpha: 3, min: 0 },
    ],
    [
      'a parabola that turns in its range',
      needs('hatch', { law: { form: 'log-quadratic', d0: 266, c1: -0.0967, c2: 0.006 } }),
      'table-law-slows',
      { row: 'hatch', field: 'c2', value: 0.006, celsius: 12 },
    ],
    [
      'no thermal units',
      needs('hatch', { law: { form: 'thermal-units', units: 0, base: 0 } }),
      'table-not-positive',
      { row: 'hatch', field: 'units', value: 0 },
    ],
    [
      'a base above its range',
      needs('hatch', { law: { form: 'thermal-units', units: 500, base: 14 } }),
      'table-units-never',
      { row: 'hatch', base: 14, max: 12 },
    ],
    [
      'a figure that is none',
      needs('hatch', { law: { ...power, b: Number.NaN } }),
      'table-not-a-number',
      { row: 'hatch', field: 'b', value: 'NaN' },
    ],
    ['itself', needs('emergence', { sameAs: 'emergence' }), 'table-refers-to-itself', { row: 'emergence' }],
    [
      'a stage that is not there',
      needs('emergence', { sameAs: 'swim-up' }),
      'table-refers-to-unknown',
      { row: 'emergence', to: 'swim-up' },
    ],
    [
      'a loop',
      needs('hatch', { multipleOf: 'eye-up', factor: 2 }),
      'table-loop',
      { row: 'eye-up', loop: 'eye-up → hatch → eye-up' },
    ],
    [
      'a later stage to count from',
      needs('eye-up', { after: 'hatch', law: power }),
      'table-after-later',
      { row: 'eye-up', to: 'hatch' },
    ],
    [
      'a multiple of a counted stage',
      {
        ...atlanticSalmon,
        stages: [
          atlanticSalmon.stages[1],
          { ...atlanticSalmon.stages[2], needs: { after: 'hatch', law: power } },
          { ...atlanticSalmon.stages[3], needs: { multipleOf: 'button-up', factor: 1.1 } },
        ],
      },
      'table-multiple-of-counted',
      { row: 'emergence', to: 'button-up' },
    ],
    [
      'a factor of 0',
      needs('eye-up', { multipleOf: 'hatch', factor: 0 }),
      'table-not-positive',
      { row: 'eye-up', field: 'factor', value: 0 },
    ],
    [
      'stages out of order',
      needs('eye-up', { multipleOf: 'hatch', factor: 1.2 }),
      'table-out-of-order',
      { row: 'hatch', before: 'eye-up' },
    ],
    [
      'a negative spread',
      changed('hatch', { eggSpread: -0.03 }),
      'table-negative-spread',
      { row: 'hatch', field: 'eggSpread', value: -0.03 },
    ],
    [
      'a spread in days',
      { ...atlanticSalmon, lotSpread: 3 },
      'table-wide-spread',
      { row: 'table', field: 'lotSpread', value: 3 },
    ],
    [
      'an empty range',
      changed('hatch', { validity: { min: 12, max: 2 } }),
      'table-span-empty',
      { row: 'hatch', field: 'validity', from: 12, to: 2 },
    ],
    [
      'a span that ends before it begins',
      { ...atlanticSalmon, doNotHandle: { from: 0.5, to: 0.1, sources: [] } },
      'table-span-empty',
      { row: 'table', field: 'doNotHandle', from: 0.5, to: 0.1 },
    ],
    [
      'days to leave the box out of order',
      { ...atlanticSalmon, leavesBox: { days: 3, min: 5, max: 20, sources: [] } },
      'table-leaves-box',
      { row: 'table', days: 3, min: 5, max: 20 },
    ],
    [
      'a limit over no span',
      { ...atlanticSalmon, harm: [{ ...atlanticSalmon.harm[0], toProgress: 0 }] },
      'table-span-empty',
      { row: 'harm 1', field: 'progress', from: 0, to: 0 },
    ],
    [
      'a limit with negative hours',
      { ...atlanticSalmon, harm: [{ ...atlanticSalmon.harm[0], hours: -1 }] },
      'table-hours-negative',
      { row: 'harm 1', value: -1 },
    ],
  ])('%s', (_what, table, code, figures) => {
    const problem = checkTable(table).find((one) => one.code === code);
    expect(problem?.with).toMatchObject(figures);
    expect(() => refuseInvalid(table)).toThrow(TableRefused);
  });

  it('and the forecast refuses it too, with exit 2', () => {
    const input = season({ lots: [lot({ table: { ...brookTrout, ownSpread: -1 } })] });
    expect(() => forecast(input)).toThrow(TableRefused);
    try {
      forecast(input);
    } catch (error) {
      expect(error).toMatchObject({ exit: 2, table: 'brook-trout' });
    }
  });
});
