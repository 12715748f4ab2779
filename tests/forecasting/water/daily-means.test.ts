import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { extent, mean } from 'd3-array';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { dailyMeans, type ReadingColumns } from '../../../forecasting/daily-means.js';
import { Origin } from '../../../forecasting/day-series.js';
import { csvRows } from './references/csv-rows.js';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const utc = (text: string) => Date.parse(text);

/** A file that vega-datasets carries, without the network its own loader wants. */
function vega(file: string): string[][] {
  const entry = createRequire(import.meta.url).resolve('vega-datasets');
  return csvRows(readFileSync(new URL(`../data/${file}`, `file://${entry}`), 'utf8'));
}

function readings(rows: readonly (readonly [number, number])[]): ReadingColumns {
  return {
    at: Float64Array.from(rows, (r) => r[0]),
    value: Float64Array.from(rows, (r) => r[1]),
    usable: null,
    span: 'instant',
  };
}

/** `count` readings `step` hours apart from midnight UTC of `day`. */
const every = (step: number, count: number, day: string, value: (hour: number) => number) =>
  Array.from({ length: count }, (_, i) => [utc(day) + i * step * HOUR, value(i * step)] as const);

const from = 17_167; // 2017-01-01

describe('daily means', () => {
  it("gives the trapezoid means of vega-datasets' hourly Seattle normals, as d3-array counts them", () => {
    const rows = vega('seattle-weather-hourly-normals.csv').map(
      (row) => [utc(`${row[0]}Z`), Number(row[2])] as const,
    );
    const days = dailyMeans(readings(rows), { offsetMinutes: 0 });
    expect(days.origin.filter((o) => o === Origin.measured).length).toBe(365);
    for (let d = 2; d < 364; d++) {
      const start = (days.firstDay + d) * DAY;
      const hours = rows.filter((r) => r[0] >= start && r[0] <= start + DAY).map((r) => r[1]);
      // the trapezoid over 25 hourly values is the mean of the means of neighbours
      const joined = hours.slice(1).map((v, i) => (v + hours[i]) / 2);
      expect(days.mean[d]).toBeCloseTo(mean(joined) ?? Number.NaN, 10);
      expect([days.min[d], days.max[d]]).toEqual(extent(hours.slice(0, -1)));
      expect(days.coverage[d]).toBeCloseTo(1, 12);
    }
  });

  it('counts days in the fixed offset of the station', () => {
    // 03:30 UTC is midnight at UTC−03:30; one day of 1 °C, then one of 5 °C
    const rows = every(0.5, 97, '2017-01-01T03:30Z', (h) => (h < 24 ? 1 : 5));
    const days = dailyMeans(readings(rows), { offsetMinutes: -210 });
    expect(days.firstDay).toBe(from);
    // the half hour before midnight joins 1 to 5
    expect(days.mean[0]).toBeCloseTo(1 + (4 * 0.5 * 0.5) / 24, 12);
    expect(days.mean[1]).toBeCloseTo(5, 12);
    const east = dailyMeans(readings(rows), { offsetMinutes: 345 });
    expect(east.origin[0]).toBe(Origin.none);
  });

  it('keeps the mean of a straight line however the readings stand', () => {
    fc.assert(
      fc.property(
        fc.array(fc.integer({ min: 1, max: 90 }), { minLength: 120, maxLength: 200 }),
        fc.double({ min: -3, max: 3, noNaN: true }),
        (minutes, slope) => {
          let at = utc('2017-01-01T00:00Z') - 30 * 60_000;
          const rows = minutes.map((m) => {
            at += m * 60_000;
            return [at, 10 + (slope * (at - from * DAY)) / DAY] as const;
          });
          const days = dailyMeans(readings(rows), { offsetMinutes: 0 });
          for (let d = 1; d < days.mean.length - 1; d++) {
            expect(days.mean[d]).toBeCloseTo(10 + slope * (days.firstDay + d - from + 0.5), 8);
          }
        },
      ),
      { seed: 5 },
    );
  });

  it('takes a hole of 6 h as a straight line, and makes a gap day of a longer one', () => {
    const without = (a: number, b: number) =>
      readings(every(1, 73, '2017-01-01', (h) => h).filter((_, h) => h - 24 <= a || h - 24 >= b));
    const six = dailyMeans(without(6, 12), { offsetMinutes: 0 });
    expect(six.mean[1]).toBeCloseTo(36, 10);
    expect(six.coverage[1]).toBeCloseTo(19 / 24, 10);
    const seven = dailyMeans(without(6, 13), { offsetMinutes: 0 });
    expect(seven.mean[1]).toBeNaN();
    expect(seven.origin[1]).toBe(Origin.none);
    expect(seven.coverage[1]).toBeCloseTo(17 / 24, 10);
  });

  it('adds up short holes: two of five hours leave less than 75 % of the day', () => {
    const rows = every(1, 73, '2017-01-01', () => 2).filter(
      (_, h) => ![26, 27, 28, 29, 36, 37, 38, 39].includes(h),
    );
    const days = dailyMeans(readings(rows), { offsetMinutes: 0 });
    expect(days.coverage[1]).toBeCloseTo(16 / 24, 10);
    expect(days.origin[1]).toBe(Origin.none);
    expect(days.origin[2]).toBe(Origin.measured);
  });

  it('measures a day that the record ends at 18:00, not one that it ends at 17:00', () => {
    const ending = (hours: number) =>
      dailyMeans(readings(every(1, 25 + hours, '2017-01-01', () => 3)), { offsetMinutes: 0 });
    expect(ending(18).origin[1]).toBe(Origin.measured);
    expect(ending(17).origin[1]).toBe(Origin.none);
    expect(ending(17).origin[0]).toBe(Origin.measured);
  });

  it('leaves out unusable and missing readings', () => {
    const columns = readings(every(1, 49, '2017-01-01', (h) => (h === 30 ? 85 : h === 31 ? Number.NaN : 1)));
    const usable = new Uint8Array(49).fill(1);
    usable[30] = 0;
    const days = dailyMeans({ ...columns, usable }, { offsetMinutes: 0 });
    expect(days.mean[1]).toBeCloseTo(1, 12);
    expect(days.max[1]).toBe(1);
  });

  it('takes loggers of one step after the other: 15 minutes to noon, then hours', () => {
    const rows = [...every(0.25, 48, '2017-01-01', () => 2), ...every(1, 13, '2017-01-01T12:00Z', () => 2)];
    expect(dailyMeans(readings(rows), { offsetMinutes: 0 }).coverage[0]).toBeCloseTo(1, 12);
  });

  it("passes daily means through: vega-datasets' Seattle weather", () => {
    const rows = vega('seattle-weather.csv').map((row) => [utc(row[0]), Number(row[2])] as const);
    const days = dailyMeans({ ...readings(rows), span: 'day' }, { offsetMinutes: 0 });
    expect(days.mean.length).toBe(1461);
    expect(mean(days.mean)).toBeCloseTo(mean(rows, (r) => r[1]) ?? Number.NaN, 12);
    expect(days.coverage.every((c) => c === 1)).toBe(true);
    expect(days.min[0]).toBeNaN();
  });

  it('answers for the days asked, and for none without readings', () => {
    const none = readings([]);
    expect(dailyMeans(none, { offsetMinutes: 0 }).mean.length).toBe(0);
    const asked = dailyMeans(none, { offsetMinutes: 0, firstDay: from, lastDay: from + 2 });
    expect([...asked.origin]).toEqual([0, 0, 0]);
    const one = dailyMeans(readings(every(1, 73, '2017-01-01', () => 2)), {
      offsetMinutes: 0,
      firstDay: from + 1,
      lastDay: from + 1,
    });
    expect([...one.mean]).toEqual([2]);
  });

  it('refuses columns that disagree and time that falls', () => {
    const rows = readings(every(1, 3, '2017-01-01', () => 2));
    expect(() => dailyMeans({ ...rows, value: new Float64Array(2) }, { offsetMinutes: 0 })).toThrow(
      RangeError,
    );
    rows.at[2] = 0;
    expect(() => dailyMeans(rows, { offsetMinutes: 0 })).toThrow(RangeError);
  });
});
