import { stageRow, type Way, wayTo } from '../needs.js';
import { lookUp, rateTable } from '../rate-lookup.js';
import type { DevelopmentTable, StageName } from '../table.js';
import { FIRST, LAST } from '../windows/stage-draws.js';
import { eggOfStage } from './egg-of-stage.js';

/**
 * Days from the start of a course of daily water to a stage: the sum of 1/(factor · D) reaches 1. Infinity where the
 * course ends, or has no value, before it does.
 */
export type StageClock = (course: ArrayLike<number>) => number;

/** @throws RangeError for what the table does not name */
export function stageClock(table: DevelopmentTable, name: StageName): StageClock {
  const asked = eggOfStage(table, name);
  if (asked === null) throw new RangeError(`stage ${name} is not in table ${table.id}`);
  const z = { first: FIRST, median: 0, last: LAST }[asked.egg];
  const spread = stageRow(table, asked.stage)?.eggSpread ?? 0;
  return clockOf(wayTo(table, asked.stage), Math.max(0, 1 + z * spread));
}

/** @param part of the way that is asked for: 1 for the median egg */
function clockOf(way: Way, part = 1): StageClock {
  const rates = rateTable(way.law);
  const before = way.after === null ? null : clockOf(way.after);
  return (course) => {
    const begun = before === null ? 0 : before(course);
    let left = way.factor * part;
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
