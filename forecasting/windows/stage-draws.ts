import jStat from 'jstat';
import { type Way, wayTo } from '../needs.js';
import type { Law, StageRow } from '../table.js';
import type { DayTime } from '../units.js';
import { type EggPaths, type Eggs, eggPaths } from './eggs.js';
import { type Ensemble, normalsFor, pathsOf } from './ensemble.js';

/**
 * First and last are the 5 % and 95 % of eggs, never the extremes of a thousand (Elliott & Hurley 1998, J. Fish
 * Biol. 53:414-433).
 */
export const FIRST = jStat.normal.inv(0.05, 0, 1);
export const LAST = jStat.normal.inv(0.95, 0, 1);

/** When some eggs come to a stage, one moment a draw; Infinity where that draw never gets there. */
export interface StageDraws {
  readonly first: Float64Array;
  readonly median: Float64Array;
  readonly last: Float64Array;
}

/** Progress each draw has made at a moment, with what it has drawn of the lot's and the table's spread taken off. */
export type ProgressAt = (draw: number, moment: DayTime) => number;

export interface StageCourse {
  readonly draws: StageDraws;
  readonly progress: ProgressAt;
}

/**
 * The course of some eggs to one stage. An egg z standard deviations behind the median needs
 * 1 + z * eggSpread + lot * lotSpread + own * ownSpread of the way: the spread lives in progress, so it becomes
 * weeks in cold water and days in warm. `lot` and `own` are drawn once for a lot and once for a table.
 */
export function stageCourse(
  all: Ensemble,
  eggs: Eggs,
  row: StageRow,
  paths: (law: Law) => EggPaths = (law) => eggPaths(eggs, law, pathsOf(all, law)),
): StageCourse {
  const course = courseOf(all, eggs, wayTo(eggs.table, row.stage), sharedSpread(all, eggs), paths);
  return {
    draws: {
      first: course.moments(FIRST * row.eggSpread),
      median: course.moments(0),
      last: course.moments(LAST * row.eggSpread),
    },
    progress: course.progress,
  };
}

function sharedSpread(all: Ensemble, { lot, table }: Eggs): Float64Array {
  const lots = normalsFor(all, 'lot', lot);
  const own = normalsFor(all, 'table', table.id);
  return lots.map((z, k) => z * table.lotSpread + own[k] * table.ownSpread);
}

interface Course {
  moments(late: number): Float64Array;
  readonly progress: ProgressAt;
}

/** Sums are in the law's own units: `factor` of them make the whole way. */
function courseOf(
  all: Ensemble,
  eggs: Eggs,
  way: Way,
  shared: Float64Array,
  pathsFor: (law: Law) => EggPaths,
): Course {
  const count = all.winters.traces.length;
  const paths = pathsFor(way.law);
  const anchor = way.after === null ? null : courseOf(all, eggs, way.after, shared, pathsFor).moments(0);
  const begun = (k: number) => (anchor === null ? 0 : paths.at(k % count, anchor[k]));
  const moments = (late: number) =>
    Float64Array.from({ length: all.draws }, (_, k) => {
      if (anchor !== null && anchor[k] === Number.POSITIVE_INFINITY) return anchor[k];
      return paths.when(k % count, begun(k) + Math.max(0, way.factor * (1 + shared[k] + late)));
    });
  const progress: ProgressAt = (k, moment) => {
    if (moment <= (anchor === null ? eggs.fertilised : anchor[k])) return 0;
    return Math.max(0, (paths.at(k % count, moment) - begun(k)) / way.factor - shared[k]);
  };
  return { moments, progress };
}
