import type { BoxForecast } from '../forecast.js';
import type { DayNumber } from '../units.js';
import type { Days } from './box-days.js';
import { lotShares } from './shares.js';

/** A plan reaches over so many days at most: from first hatch to the last fry is three months in the coldest rivers. */
const MOST_DAYS = 150;
/** Days kept beyond the last fry, so that lifting after emergence is complete has days to choose from. */
const BEYOND = 14;
const MANY = 0.9;

/**
 * Days worth looking at: from the first of hatch that is likely (10 %) to two weeks beyond the last of emergence
 * (90 %), never before the as-of day. A box whose eggs never get there ends nothing.
 */
export function candidateDays(boxes: readonly BoxForecast[], asOf: DayNumber): Days {
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  const seen = new Set<object>();
  for (const box of boxes) {
    for (const { leaving, outOfGravel } of lotShares(box) ?? []) {
      if (seen.has(leaving)) continue;
      seen.add(leaving);
      first = Math.min(first, quantileOf(leaving.first, 1 - MANY) - 10);
      last = Math.max(
        last,
        quantileOf(leaving.last, MANY),
        quantileOf(outOfGravel?.last ?? leaving.last, MANY),
      );
    }
  }
  if (!Number.isFinite(first)) return { from: asOf, count: seen.size === 0 ? 0 : 1 };
  const from = Math.max(asOf, Math.floor(first));
  const end = Number.isFinite(last) ? Math.ceil(last) + BEYOND : from + MOST_DAYS - 1;
  return { from, count: Math.max(1, Math.min(MOST_DAYS, end - from + 1)) };
}

/**
 * Whether anything is known of when a box's alevins leave it: in a tenth of the possible winters at least, so that the
 * window has an early end. Of a box without that no day is better than another.
 */
export function hasDates(box: BoxForecast): boolean {
  const lots = lotShares(box) ?? [];
  return (
    lots.length > 0 &&
    lots.every(
      ({ leaving: { median } }) => median.filter(Number.isFinite).length >= (1 - MANY) * median.length,
    )
  );
}

/** A quantile of moments among those that come at all; not finite where too few do. */
function quantileOf(moments: Float64Array, q: number): number {
  const sorted = moments.slice().sort();
  const at = sorted[Math.floor(q * (sorted.length - 1))];
  return Number.isFinite(at) ? at : (sorted.findLast(Number.isFinite) ?? Number.NEGATIVE_INFINITY);
}
