import { accumulate, type DailyMeans, whenReached } from '../accumulate.js';
import type { DevelopmentTable, Law } from '../table.js';
import type { DayTime } from '../units.js';
import { momentOf, type RatePaths, sumAt } from './rate-paths.js';

/** Where eggs were between fertilisation and planting, where that was not the water of the box. */
export interface Before {
  readonly days: DailyMeans;
  readonly from: DayTime;
}

/** Eggs of one lot that reached one box together. */
export interface Eggs {
  readonly lot: string;
  readonly table: DevelopmentTable;
  readonly count: number;
  readonly fertilised: DayTime;
  readonly planted: DayTime;
  /** Null: the eggs gathered nothing but the box's own water, from `planted` on. */
  readonly before: Before | null;
}

/** The sums of one law that some eggs gather, from fertilisation on, in every trace of the box's water. */
export interface EggPaths {
  /** Sum gathered up to a moment in trace i. */
  at(trace: number, moment: DayTime): number;
  /** The moment at which trace i has brought them `sum`; Infinity when it never does. */
  when(trace: number, sum: number): DayTime;
}

export function eggPaths(eggs: Eggs, law: Law, water: RatePaths): EggPaths {
  const { before, planted } = eggs;
  const since = Float64Array.from({ length: water.count }, (_, i) => sumAt(water, i, planted));
  if (before === null) {
    return {
      at: (trace, moment) => Math.max(0, sumAt(water, trace, moment) - since[trace]),
      when: (trace, sum) => (sum <= 0 ? planted : momentOf(water, trace, since[trace] + sum)),
    };
  }
  const { days, from } = before;
  const brought = accumulate(law, days, from, planted) ?? 0;
  return {
    at: (trace, moment) =>
      moment >= planted
        ? brought + sumAt(water, trace, moment) - since[trace]
        : (accumulate(law, days, from, Math.max(from, moment)) ?? 0),
    when: (trace, sum) =>
      sum <= brought
        ? (whenReached(law, days, from, sum) ?? planted)
        : momentOf(water, trace, since[trace] + sum - brought),
  };
}

/**
 * The same sums if the water up to `moment` were known better: every trace then has gathered the mean of what they
 * differ about now, but for a share `left` of the difference, and goes on from there.
 */
export function settledPaths(paths: EggPaths, count: number, moment: DayTime, left = 0): EggPaths {
  const gathered = Float64Array.from({ length: count }, (_, i) => paths.at(i, moment));
  const middle = gathered.reduce((sum, value) => sum + value, 0) / count;
  const settled = gathered.map((value) => middle + left * (value - middle));
  return {
    at: (trace, when) =>
      when >= moment
        ? paths.at(trace, when) - gathered[trace] + settled[trace]
        : gathered[trace] > 0
          ? (paths.at(trace, when) * settled[trace]) / gathered[trace]
          : 0,
    when: (trace, sum) =>
      sum > settled[trace] || settled[trace] === 0
        ? paths.when(trace, sum - settled[trace] + gathered[trace])
        : paths.when(trace, (sum * gathered[trace]) / settled[trace]),
  };
}
