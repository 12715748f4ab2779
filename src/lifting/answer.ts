import type { DayOfPlan, Share } from '../../forecasting/index.js';
import { cautions } from '../group/forecast-answer.js';
import { isoDay, type Language, say, words } from '../words/index.js';
import { GAUGE_HIGH, type LiftingState, OUTSIDE_PERMIT } from './plan.js';
import { gaugeRemark, type LiftingRemark, standingRemarks, whyRemarks, wouldHelp } from './sentences.js';

/** One candidate day; other programs rely on these names (README, "For other programs"). */
export interface DayAnswer {
  readonly date: string;
  /** Expected share of alevins still in the box, 0 to 1, and its 80 % interval. */
  readonly stillInBox: number;
  readonly stillInBoxInterval: readonly [number, number];
  /** Expected share of fry out of the gravel. */
  readonly emerged: number;
  readonly emergedInterval: readonly [number, number];
  readonly chance: number;
  readonly blocked: string | null;
}

export interface LiftingAnswer {
  readonly asOf: string;
  readonly cautions: readonly string[];
  readonly rule: string;
  readonly levels: { readonly stillInBox: number; readonly emerged: number };
  readonly days: readonly DayAnswer[];
  readonly sites: readonly { readonly site: string; readonly days: readonly DayAnswer[] }[];
  readonly boxes: readonly {
    readonly box: string;
    readonly site: string;
    readonly planned: string | null;
    readonly days: readonly DayAnswer[];
  }[];
  readonly recommended: readonly string[];
  readonly plan: readonly {
    readonly date: string;
    readonly sites: readonly string[];
    readonly boxes: readonly string[];
  }[];
  readonly chance: number;
  readonly why: string;
  readonly costs: readonly {
    readonly days: number;
    readonly chance: number;
    readonly stillInBox: number;
    readonly emerged: number;
  }[];
  readonly wouldHelp: readonly string[];
  readonly lookAgainBy: string | null;
  readonly state: 'draft' | 'approved';
  readonly approved: { readonly by: string; readonly at: string; readonly days: readonly string[] } | null;
  readonly standing: readonly string[];
}

export function liftingAnswer(state: LiftingState, language: Language): LiftingAnswer {
  const { plan, approved } = state;
  const sentences = (remarks: readonly LiftingRemark[]) => remarks.map((remark) => say(language, remark));
  const gauge = gaugeRemark(state);
  const days = (of: readonly DayOfPlan[]) => of.map((day) => dayAnswer(day, state, language));
  return {
    asOf: isoDay(plan.asOf),
    cautions: [...cautions(language), ...(gauge === null ? [] : [say(language, gauge)])],
    rule: plan.rule,
    levels: plan.levels,
    days: days(plan.days),
    sites: plan.sites.map(({ site, days: own }) => ({ site, days: days(own) })),
    boxes: [
      ...plan.boxes.map(({ box, site, planned, days: own }) => ({
        box,
        site,
        planned: planned === null ? null : isoDay(planned),
        days: days(own),
      })),
      ...plan.left.map(({ box, site }) => ({ box, site, planned: null, days: [] })),
    ],
    recommended: plan.recommended.map(({ day }) => isoDay(day)),
    plan: plan.recommended.map(({ day, sites, boxes }) => ({ date: isoDay(day), sites, boxes })),
    chance: rounded(plan.chance),
    why: sentences(whyRemarks(state, language)).join(' '),
    costs: plan.shifts.map(({ by, chance, stillInBox, emerged }) => ({
      days: by,
      chance: rounded(chance),
      stillInBox: Number(stillInBox.toFixed(1)),
      emerged: Number(emerged.toFixed(1)),
    })),
    wouldHelp: sentences(wouldHelp(state, language)),
    lookAgainBy: plan.lookAgain === null ? null : isoDay(plan.lookAgain),
    state: approved === null ? 'draft' : 'approved',
    approved:
      approved === null
        ? null
        : { by: approved.by, at: approved.at, days: approved.days.map(({ date }) => date) },
    standing: sentences(standingRemarks(state)),
  };
}

function dayAnswer(day: DayOfPlan, state: LiftingState, language: Language): DayAnswer {
  return {
    date: isoDay(day.day),
    stillInBox: rounded(day.stillInBox.mean),
    stillInBoxInterval: interval(day.stillInBox),
    emerged: rounded(day.emerged.mean),
    emergedInterval: interval(day.emerged),
    chance: rounded(day.chance),
    blocked: reasonOf(day.blocked, state, language),
  };
}

/** Why a day is blocked, in words: the group's own, or the gauge's. */
export function reasonOf(reason: string | null, { gauge }: LiftingState, language: Language): string | null {
  if (reason?.startsWith(OUTSIDE_PERMIT))
    return words(language, 'lifting-outside-permit', { permits: reason.slice(OUTSIDE_PERMIT.length) });
  if (reason !== GAUGE_HIGH || gauge === null || gauge.value === null) return reason;
  const { station, quantity, most, value } = gauge;
  return words(language, 'lifting-gauge-high', { station, quantity, most, value });
}

function interval({ p10, p90 }: Share): [number, number] {
  return [rounded(p10), rounded(p90)];
}

function rounded(value: number): number {
  return Number(value.toFixed(4));
}
