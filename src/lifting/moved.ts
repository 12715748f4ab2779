import type { LiftingPlan } from '../../forecasting/index.js';
import type { DayNumber } from '../../forecasting/units.js';
import type { Group } from '../group/index.js';
import type { Lifting } from '../season/index.js';

const DAY = 86_400_000;
/** How many of the things that came in since are named. */
const NAMED = 5;

/** How the plan now differs from the one that was approved. */
export interface Moved {
  /** Mean over its boxes, whole days; negative: earlier. */
  readonly days: number;
  readonly boxes: readonly string[];
  /** The day on which the first thing came in that the approved plan did not know. */
  readonly since: DayNumber;
  /** Downloads loaded and season versions since. */
  readonly cameIn: readonly string[];
}

/** What has changed since a plan was approved: box by box, and what came in meanwhile; null where no day moved. */
export async function movedSince(
  group: Group,
  plan: LiftingPlan,
  approved: NonNullable<Lifting['approved']>,
): Promise<Moved | null> {
  const then = new Map(
    approved.days.flatMap(({ date, boxes }) =>
      boxes.map((box) => [box, Date.parse(`${date}T00:00Z`) / DAY] as const),
    ),
  );
  const apart = plan.boxes.flatMap(({ box, planned }) => {
    const before = then.get(box);
    return before === undefined || planned === null || before === planned
      ? []
      : [{ box, by: planned - before }];
  });
  if (apart.length === 0) return null;
  const at = Date.parse(approved.at);
  const loads = (await group.loads()).filter((load) => load.at > at);
  const versions = (await group.seasonVersions()).filter((version) => version.at > at).slice(0, -1);
  const first = Math.min(...loads.map((load) => load.at), ...versions.map((version) => version.at));
  const asked = Date.parse(`${approved.asOf}T00:00Z`) / DAY + 1;
  const named = [...loads.map(({ file }) => file), ...versions.reverse().map(({ by }) => by)];
  return {
    days: Math.round(apart.reduce((sum, { by }) => sum + by, 0) / apart.length),
    boxes: apart.map(({ box }) => box),
    since: Number.isFinite(first) ? Math.floor(first / DAY) : asked,
    cameIn: [...new Set(named)].slice(0, NAMED),
  };
}
