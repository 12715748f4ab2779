import { type Way, wayTo } from '../needs.js';
import { lookUp, rateTable } from '../rate-lookup.js';
import type { DevelopmentTable, StageName } from '../table.js';

/**
 * Days from the start of a course of daily water to a stage: the sum of 1/(factor · D) reaches 1. Infinity where the
 * course ends, or has no value, before it does.
 */
export type StageClock = (course: ArrayLike<number>) => number;

export function stageClock(table: DevelopmentTable, stage: StageName): StageClock {
  return clockOf(wayTo(table, stage));
}

function clockOf(way: Way): StageClock {
  const rates = rateTable(way.law);
  const before = way.after === null ? null : clockOf(way.after);
  return (course) => {
    const begun = before === null ? 0 : before(course);
    let left = way.factor;
    for (let d = Math.floor(begun); d < course.length; d++) {
      if (Number.isNaN(course[d])) return Number.POSITIVE_INFINITY;
      const rate = lookUp(rates, course[d]);
      const starts = Math.max(d, begun);
      if (rate * (d + 1 - starts) >= left) return starts + left / rate;
      left -= rate * (d + 1 - starts);
    }
    return Number.POSITIVE_INFINITY;
  };
}
