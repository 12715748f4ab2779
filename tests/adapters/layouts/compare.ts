import { expect } from 'vitest';
import type { Expected } from './layout.js';
import type { Got, Read } from './through.js';

const label = (station: string | null, quantity: string): string => `${station ?? '(none)'} ${quantity}`;

const labelOf = ({ key }: Got): string =>
  `${label(key.station, key.quantity)} in ${key.medium ?? 'anything'}`;

const iso = (at: number): string => (Number.isFinite(at) ? new Date(at).toISOString() : String(at));

/** One line a reading: what failed is then read off the difference, not counted out of two columns of numbers. */
const lines = (at: readonly number[], value: readonly number[]): string[] =>
  at.map((instant, i) => `${iso(instant)} ${value[i]}`);

function sameSeries(got: Got, expected: Expected): void {
  expect(lines(got.at, got.value)).toEqual(lines(expected.at, expected.value));
  expect(got.key.span).toBe(expected.span);
}

const isOf = (got: Got, { station, quantity, medium }: Expected): boolean =>
  got.key.station === station &&
  got.key.quantity === quantity &&
  (medium === undefined || got.key.medium === medium);

/** Every reading's instant and value came back, in order, and none more. */
export function sameReadings({ report, got }: Read, expected: readonly Expected[]): void {
  const left = got.filter(({ at }) => at.length > 0);
  for (const one of expected) {
    const found = left.findIndex((series) => isOf(series, one));
    expect(found, `${label(one.station, one.quantity)} among ${left.map(labelOf).join(', ')}`).not.toBe(-1);
    sameSeries(left.splice(found, 1)[0]!, one);
  }
  expect(left.map(labelOf)).toEqual([]);
  sameSummaries({ report, got });
}

/** What the report says of each series is true of the readings that came out. */
function sameSummaries({ report, got }: Read): void {
  expect(report.series.length).toBe(report.summaries.length);
  got.forEach(({ key, at, value }, index) => {
    expect(report.series[index]).toEqual(key);
    const summary = report.summaries[index]!;
    expect(summary.rows).toBe(at.length);
    expect([summary.first, summary.last]).toEqual([Math.min(...at), Math.max(...at)]);
    expect([summary.min, summary.max]).toEqual([Math.min(...value), Math.max(...value)]);
  });
}
