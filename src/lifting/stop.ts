import type { BoxPlan } from '../../forecasting/index.js';
import type { DayNumber } from '../../forecasting/units.js';
import type { LiftingState } from './plan.js';

/** Which box of a site is opened first, and above how many live alevins in it the site is left alone. */
export interface StopRule {
  readonly box: string;
  readonly most: number;
  readonly boxes: number;
}

/** Opened first is the box that is furthest behind: what it says holds for the others. Null where there is no box. */
export function stopRule(
  { season, plan }: Pick<LiftingState, 'season' | 'plan'>,
  boxes: readonly BoxPlan[],
  day: DayNumber,
): StopRule | null {
  const left = (one: BoxPlan) => one.days.find((at) => at.day === day)?.stillInBox.mean ?? 0;
  const [first] = boxes.toSorted((a, b) => left(b) - left(a));
  if (first === undefined) return null;
  const most = season.lifting?.stopAbove ?? Math.max(1, Math.round(plan.levels.stillInBox * first.eggs));
  return { box: first.box, most, boxes: boxes.length };
}
