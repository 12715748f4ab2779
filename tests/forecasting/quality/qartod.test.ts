import { describe, expect, test } from 'vitest';
import { measuredDays } from '../../../forecasting/day-series.js';
import {
  flatLine,
  grossRange,
  judgeStation,
  rateOfChange,
  spike,
} from '../../../forecasting/quality/index.js';
import { seasonRange } from '../../../forecasting/quality/qartod/climatology.js';
import { countsFor } from '../../../forecasting/quality/qartod/flat-line.js';
import { HOUR, record } from './invented-record.js';

/**
 * Mechanics of the QARTOD manual for in-situ temperature and salinity (IOOS, "Manual for Real-Time Quality Control of
 * In-situ Temperature and Salinity Data"), tests 4 to 8. Memory: the mechanics were written down from the manual and
 * its siblings, not copied; the limits are the operator's, here chosen for the example.
 */
const hourly = (values: readonly number[]) => Float64Array.from(values, (_, i) => i * HOUR);

describe('the tests of the QARTOD manual', () => {
  test('gross range: 4 beyond the sensor, 3 beyond the operator, 9 where there is no value', () => {
    const limits = { fail: [-5, 40], suspect: [-1, 32] } as const;
    expect([...grossRange([-5.1, -5, -1.1, -1, 20, 32, 32.1, 40.1, Number.NaN], limits)]).toEqual([
      4, 3, 3, 1, 1, 1, 3, 4, 9,
    ]);
  });

  test('spike: n−1 is judged against the mean of n−2 and n; the newest stays 2', () => {
    const limits = { suspect: 1, fail: 3 };
    // SPK_REF = (4 + 4.4) / 2 = 4.2: 5.1 is 0.9 off, 5.3 is 1.1 off, 7.3 is 3.1 off.
    for (const [value, flag] of [
      [5.1, 1],
      [5.3, 3],
      [7.3, 4],
      [1.0, 4],
    ])
      expect([...spike(hourly([4, value, 4.4]), [4, value, 4.4], limits)]).toEqual([2, flag, 2]);
    // A spike at the end is not known yet; with one more reading it is.
    expect(spike(hourly([4, 4, 9]), [4, 4, 9], limits)[2]).toBe(2);
    expect(spike(hourly([4, 4, 9, 4]), [4, 4, 9, 4], limits)[2]).toBe(4);
  });

  test('rate of change: more than three deviations of the 25 hours before is 3, and never 4', () => {
    const before = Array.from({ length: 26 }, (_, i) => 10 + (i % 2));
    // Standard deviation of 10, 11, 10, 11 … is 0.5: from the last, 11, more than 1.5 is suspect.
    for (const [value, flag] of [
      [12.4, 1],
      [12.6, 3],
      [30, 3],
    ]) {
      const values = [...before, value];
      expect(rateOfChange(hourly(values), values, 0.1).at(-1)).toBe(flag);
    }
    // On the ice plateau the deviation is nothing: the floor holds.
    const still = [...Array.from({ length: 26 }, () => 0), 0.4];
    expect(rateOfChange(hourly(still), still, 0.5).at(-1)).toBe(1);
  });

  test('flat line: three equal are suspect, five fail', () => {
    expect([...flatLine([5, 5.1, 5.1, 5.1, 5.1, 5.1, 5.1, 5.2], 0.01)]).toEqual([1, 1, 1, 3, 3, 4, 4, 1]);
    // The ice plateau is spared.
    const spared = (value: number) => Math.abs(value) <= 0.3;
    expect([
      ...flatLine(
        Array.from({ length: 50 }, () => 0.1),
        0.01,
        undefined,
        spared,
      ),
    ]).toEqual(Array.from({ length: 50 }, () => 1));
  });

  test('flat line: the counts of the manual are the least; a coarse resolution asks for more', () => {
    expect(countsFor(0)).toEqual({ suspect: 3, fail: 5 });
    expect(countsFor(0.7).suspect).toBeGreaterThan(40);
    expect(countsFor(0.7).fail).toBeGreaterThan(countsFor(0.7).suspect);
  });

  test('climatology: the range of the same season in other years, the year itself left out', () => {
    const means = Array.from({ length: 4 * 365 }, (_, d) => 10 - 10 * Math.cos((2 * Math.PI * d) / 365.2425));
    means[3 * 365 + 180] = 35;
    const days = measuredDays(0, means);
    const range = seasonRange(days, 3 * 365 + 180);
    expect(range.years).toBe(3);
    expect(range.high).toBeLessThanOrEqual(20);
    expect(range.low).toBeGreaterThan(18);
  });
});

describe('in one record', () => {
  test('a spike of 6 °C is found where it is, and fails', () => {
    const made = record({ at: (i) => (i === 500 ? 12 : null) });
    const found = judgeStation(made).filter(({ kind }) => kind === 'spike');
    expect(found).toMatchObject([{ from: made.at[500], to: made.at[500], flag: 4 }]);
  });

  test('a sensor that sticks for a day fails; five months on the ice plateau do not', () => {
    const stuck = record({ at: (i) => (i >= 300 && i < 330 ? 7.13 : null) });
    expect(judgeStation(stuck).filter(({ kind }) => kind === 'flat-line')).toMatchObject([
      { to: stuck.at[329], flag: 4 },
    ]);
    const plateau = record({ days: 150, water: () => 0, noise: 0 });
    expect(judgeStation(plateau).filter(({ flag }) => flag >= 3)).toEqual([]);
  });

  test('limits go by the kind of station: a tank at 21 °C is doubted, air at −30 °C is not', () => {
    const kinds = (kind: 'tank' | 'stream' | 'air', celsius: number) =>
      judgeStation(record({ kind, days: 3, water: () => celsius }))
        .filter((one) => one.kind === 'gross-range')
        .map(({ flag }) => flag);
    expect(kinds('tank', 21)).toEqual([3]);
    expect(kinds('stream', 21)).toEqual([]);
    expect(kinds('air', -30)).toEqual([]);
    expect(kinds('stream', -30)).toEqual([4]);
  });

  test('a gauge that stands still is doubted, its level near 0 no less', () => {
    const level = {
      ...record({ days: 20, water: (at) => 0.1 * Math.sin(at / 3e7) + 0.1 }),
      quantity: 'level' as const,
    };
    for (let i = 100; i < 160; i++) level.value[i] = 0.12;
    expect(judgeStation({ ...level, kind: 'gauge' }).map(({ kind, flag }) => [kind, flag])).toContainEqual([
      'flat-line',
      4,
    ]);
  });
});
