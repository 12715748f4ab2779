import type { Forecast } from '../forecast.js';
import type { StageName } from '../table.js';
import type { DayNumber } from '../units.js';

/** Which side of emergence the boxes come out on: the biologist's decision. */
export type LiftingRule = 'before-emergence' | 'after-emergence';

/**
 * Shares 0 to 1 that a lifting day may not pass: alevins still in the box; and fry already out of the gravel (before
 * emergence) or still in it (after emergence).
 */
export interface LiftingLevels {
  readonly stillInBox: number;
  readonly emerged: number;
}

/** Levels where nobody states others (ours): the first costs alevins outright, the second mostly evidence. */
export const USUAL_LEVELS: LiftingLevels = { stillInBox: 0.02, emerged: 0.05 };

/** A day on which a site cannot be worked, and why, in the group's own words or as a code. */
export interface BlockedDay {
  readonly site: string | null;
  readonly from: DayNumber;
  readonly to: DayNumber;
  readonly reason: string;
}

export interface LiftingQuestion {
  readonly forecast: Forecast;
  readonly rule: LiftingRule;
  readonly levels: LiftingLevels;
  readonly blocked: readonly BlockedDay[];
  /** Boxes the crew can lift in a day; null: as many as there are. */
  readonly boxesADay: number | null;
  /** Sites worked on one trip; a site named nowhere is a trip of its own. */
  readonly trips: readonly (readonly string[])[];
  /** Boxes that are out of the water already, or gone. */
  readonly over: ReadonlySet<string>;
}

/** An expected share with its 80 % interval. */
export interface Share {
  readonly mean: number;
  readonly p10: number;
  readonly p90: number;
}

export interface DayOfPlan {
  readonly day: DayNumber;
  readonly stillInBox: Share;
  /** Share of fry out of the gravel, whichever the rule. */
  readonly emerged: Share;
  /** Chance that both are within the levels: of the box, or of every box of the site or the season. */
  readonly chance: number;
  readonly blocked: string | null;
}

export interface BoxPlan {
  readonly box: string;
  readonly site: string;
  readonly eggs: number;
  /** The stage that stands for leaving the gravel; null where the table names none after hatch. */
  readonly stage: StageName | null;
  readonly days: readonly DayOfPlan[];
  /** Its day in the recommended plan. */
  readonly planned: DayNumber | null;
}

export interface SitePlan {
  readonly site: string;
  readonly boxes: readonly string[];
  readonly days: readonly DayOfPlan[];
}

/** What the recommended plan would be, were every day of it so many days later (earlier: negative). */
export interface Shifted {
  readonly by: number;
  readonly chance: number;
  /** Expected eggs and alevins still in boxes, and fry out of the gravel, of all planted in planned boxes. */
  readonly stillInBox: number;
  readonly emerged: number;
}

export interface LiftingDay {
  readonly day: DayNumber;
  readonly boxes: readonly string[];
  readonly sites: readonly string[];
}

export type NoBoxReason = 'over' | 'no-forecast';

export interface LiftingPlan {
  readonly asOf: DayNumber;
  readonly rule: LiftingRule;
  readonly levels: LiftingLevels;
  /** The whole season, were every box lifted on that day. */
  readonly days: readonly DayOfPlan[];
  readonly sites: readonly SitePlan[];
  readonly boxes: readonly BoxPlan[];
  readonly left: readonly { readonly box: string; readonly site: string; readonly why: NoBoxReason }[];
  /** In order of days; empty where no day is left. */
  readonly recommended: readonly LiftingDay[];
  /** Chance that every box of the plan is within both levels on its day. */
  readonly chance: number;
  /** Best chance of a single day for every box, whatever is blocked and however many boxes. */
  readonly bestSingle: { readonly day: DayNumber; readonly chance: number } | null;
  /** Best chance if every trip had its own best day with nothing blocked and no limit of boxes. */
  readonly free: number;
  /** Best chance if sites that share a trip were lifted apart; null where none share one. */
  readonly apart: number | null;
  readonly shifts: readonly Shifted[];
  /** Boxes that found no day: everything is blocked, or too few days for so many boxes. */
  readonly without: readonly string[];
  readonly lookAgain: DayNumber | null;
}
