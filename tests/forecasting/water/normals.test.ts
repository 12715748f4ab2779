import { describe, expect, it } from 'vitest';
import { departureFading } from '../../../forecasting/projection/departure-fading.js';
import { normalsOf } from '../../../forecasting/projection/normals.js';
import { BINS } from '../../../forecasting/residual/season-kernel.js';
import { seasonAxis } from '../../../forecasting/season-axis.js';
import { dayOf } from '../invented-river.js';

describe('the normals of a river that freezes', () => {
  const axis = seasonAxis(dayOf('2015-09-01'), dayOf('2022-08-31'), dayOf('2015-09-01'));
  const MELT = 210;
  const RISE = 0.1;
  /** 0 °C until the melt, then 0.1 °C a day for two months, every year alike. */
  const water = (seasonDay: number) => Math.min(6, Math.max(0, RISE * (seasonDay - MELT)));
  const record = Float64Array.from(axis.seasonDay, water);
  const normals = normalsOf(axis, record, record, 2022, new Float64Array(BINS));

  it('gather no warmth before the melt: one bell of s days adds rise · s²/2, 12.8 °C·day for 16', () => {
    let surplus = 0;
    for (let day = MELT - 30; day < MELT + 30; day++) surplus += normals.mean[day] - water(day);
    expect(Math.abs(surplus)).toBeLessThan(3);
  });

  it('are the plateau on the plateau and the line on the line', () => {
    for (const day of [100, 130]) expect(normals.mean[day]).toBeCloseTo(0, 2);
  });
});

describe('the memory of departures', () => {
  const memory = (usual: readonly number[]) => departureFading(Float64Array.from(usual)).slowDays;

  it('is longer from the day the usual water is within 1 °C of its lowest', () => {
    expect(memory([8, 4, 1.5, 0.9, 0, 2, 7])).toEqual(Float64Array.of(22, 22, 22, 60, 60, 60, 60));
  });

  it('is the longer one where the usual water never cools, and the shorter where none is known', () => {
    expect(memory([7, 7.5, 6.8])).toEqual(Float64Array.of(60, 60, 60));
    expect(memory([Number.NaN, Number.NaN])).toEqual(Float64Array.of(22, 22));
  });
});
