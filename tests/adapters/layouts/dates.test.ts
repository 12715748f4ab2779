import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DateOrder } from '../../../adapters/index.js';
import { sameReadings } from './compare.js';
import { expectedOf } from './layouts-delimited.js';
import { type InventedSeries, invent, inventDaily } from './record.js';
import { refusalOf, text } from './refused.js';
import type { DateForm } from './stamp.js';
import { plainStyle, type Style, stamp } from './style.js';
import { readThrough } from './through.js';
import { write } from './write.js';

const style = (date: DateForm, more: Partial<Style> = {}): Style => ({
  ...plainStyle,
  zone: 'UTC-04:00',
  saysOffset: 'header',
  time: stamp(date, { seconds: false }),
  ...more,
});

const orders: readonly (readonly [DateForm, DateOrder])[] = [
  ['d/m/y', 'dmy'],
  ['m/d/y', 'mdy'],
  ['d/m/yy', 'dmy'],
  ['m/d/yy', 'mdy'],
  ['d.m.y', 'dmy'],
  ['d-m-y', 'dmy'],
];

const record = (first: number, stepMinutes: number, readings: number): InventedSeries =>
  invent({ seed: 21, stations: ['ford'], first, stepMinutes, readings })[0]!;

describe.each(orders)('the order of %s', (date, order) => {
  it('is settled by a value above 12, wherever it stands', async () => {
    const series = record(Date.UTC(2025, 11, 1, 4), 60, 24 * 13 - 1);
    const read = await readThrough(write(series, style(date)));
    sameReadings(read, expectedOf(series, style(date)));
    expect(read.report.understood.dateOrder).toBe(order);
  });

  it('is settled by steps where no value is above 12', async () => {
    for (const [stepMinutes, readings] of [
      [15, 300],
      [60, 100],
      [360, 30],
    ] as const) {
      const series = record(Date.UTC(2026, 1, 1, 4), stepMinutes, readings);
      const read = await readThrough(write(series, style(date)));
      sameReadings(read, expectedOf(series, style(date)));
      expect(read.report.understood.dateOrder).toBe(order);
    }
  });

  it('is settled by steps in a file that begins with the newest', async () => {
    const series = record(Date.UTC(2026, 1, 1, 4), 60, 100);
    const turned = { ...series, at: series.at.toReversed(), value: series.value.toReversed() };
    sameReadings(await readThrough(write(turned, style(date))), expectedOf(turned, style(date)));
  });

  it('is asked where one day is all there is, and any answer is taken', async () => {
    const series = record(Date.UTC(2026, 1, 3, 4), 60, 20);
    const file = write(series, style(date));
    const refusal = await refusalOf(file);
    expect([refusal.remark.code, refusal.question?.code]).toEqual(['ambiguous-dates', 'which-date-order']);
    sameReadings(await readThrough(file, { dateOrder: order }), expectedOf(series, style(date)));
  });

  it('stands against an answer that the file contradicts', async () => {
    const series = record(Date.UTC(2025, 11, 10, 4), 60, 200);
    const wrong = order === 'dmy' ? 'mdy' : 'dmy';
    const outcome = await readThrough(write(series, style(date)), { dateOrder: wrong }).catch(
      (error: unknown) => error,
    );
    if (outcome instanceof Error) expect(outcome).toMatchObject({ exit: 2 });
    else sameReadings(outcome as Awaited<ReturnType<typeof readThrough>>, expectedOf(series, style(date)));
  });
});

describe('days without a clock', () => {
  it('are ordered by steps of a day', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.constantFrom('dmy', 'mdy'),
        fc.integer({ min: 0, max: 3000 }),
        async (order, day) => {
          const first = Date.UTC(2016, 0, 1) + day * 86_400_000;
          const series = inventDaily({ seed: day, stations: ['ford'], first, readings: 45 })[0]!;
          const rows = series.at.map((at, i) => {
            const [y, m, d] = new Date(at).toISOString().slice(0, 10).split('-');
            return `${order === 'dmy' ? `${d}/${m}` : `${m}/${d}`}/${y},${series.value[i]}`;
          });
          const read = await readThrough(text(`Date,Mean temperature (°C)\n${rows.join('\n')}\n`), {
            zone: 'UTC',
          });
          expect(read.got[0]?.at).toEqual(series.at);
          expect(read.got[0]?.key.span).toBe('day');
        },
      ),
      { numRuns: 60, seed: 3 },
    );
  });
});
