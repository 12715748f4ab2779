import type { Interval } from '../forecast.js';
import { sortedQuantile } from './draws.js';

/** The 80 % interval of drawn moments; null where the quantile falls among the draws that never get there. */
export function intervalOf(moments: Float64Array): Interval {
  const sorted = moments.slice().sort();
  const at = (q: number) => {
    const moment = sortedQuantile(sorted, q);
    return Number.isFinite(moment) ? moment : null;
  };
  return { p10: at(0.1), p50: at(0.5), p90: at(0.9) };
}

/** Share of the draws that never get there. */
export function neverShare(moments: Float64Array): number {
  return moments.filter((moment) => moment === Number.POSITIVE_INFINITY).length / moments.length;
}
