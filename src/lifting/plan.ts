import type { Forecast } from '../../forecasting/forecast.js';
import {
  type BlockedDay,
  type LiftingPlan,
  type LiftingQuestion,
  liftingPlan,
} from '../../forecasting/index.js';
import type { DayNumber } from '../../forecasting/units.js';
import { blockedDays } from '../autumn/index.js';
import type { Group } from '../group/index.js';
import { epochMillis, type LocalDate, type Season, standardOffset } from '../season/index.js';
import { isoDay } from '../words/index.js';
import { type GaugeNow, gaugeNow } from './gauge.js';
import { type Moved, movedSince } from './moved.js';

const DAY = 86_400_000;

/** Stands for the gauge's own sentence among the reasons of blocked days. */
export const GAUGE_HIGH = '\u0000gauge';
/** Stands before the numbers of the permits that do not cover a day. */
export const OUTSIDE_PERMIT = '\u0000permit ';
/** No plan reaches further than this, days. */
const A_SEASON = 400;
/** High water seen today is held to last over tomorrow (ours); after that nobody knows. */
const HIGH_WATER_LASTS = 1;

/** The plan with everything that is said about it. */
export interface LiftingState {
  readonly plan: LiftingPlan;
  readonly forecast: Forecast;
  readonly season: Season;
  readonly gauge: GaugeNow | null;
  /** Null while the plan is a draft. */
  readonly approved: NonNullable<NonNullable<Season['lifting']>['approved']> | null;
  /** What has changed since it was approved; null where nothing has. */
  readonly moved: Moved | null;
}

/** The lifting plan as known on a day; null: today. */
export async function liftingState(group: Group, asOf: DayNumber | null): Promise<LiftingState> {
  const [season, forecast] = [await group.season(), await group.forecast({ box: null, asOf })];
  const gauge = await gaugeNow(group, season, forecast.asOf);
  const plan = planOf(forecast, season, gauge);
  const stated = season.lifting?.approved ?? null;
  const approved = stated !== null && dayOf(stated.asOf) <= forecast.asOf ? stated : null;
  const moved = approved === null ? null : await movedSince(group, plan, approved);
  return { plan, forecast, season, gauge, approved, moved };
}

const plans = new WeakMap<Forecast, { season: Season; gauge: string; plan: LiftingPlan }>();

/** Worked out once for a forecast: pages, feed and answers ask for the same one. */
function planOf(forecast: Forecast, season: Season, gauge: GaugeNow | null): LiftingPlan {
  const known = plans.get(forecast);
  const stands = JSON.stringify(gauge);
  if (known !== undefined && known.season === season && known.gauge === stands) return known.plan;
  const plan = liftingPlan(liftingQuestion(forecast, season, gauge));
  plans.set(forecast, { season, gauge: stands, plan });
  return plan;
}

/** The season's rule, levels, limits and blocked days as the planner takes them. */
export function liftingQuestion(
  forecast: Forecast,
  season: Season,
  gauge: GaugeNow | null = null,
): LiftingQuestion {
  const { lifting } = season;
  const [from, to] = [isoDay(forecast.asOf), isoDay(forecast.asOf + A_SEASON)];
  const byHand = new Set(season.blocked);
  const blocked = blockedDays(season, from, to).map(
    (one): BlockedDay => ({
      site: one.site,
      from: dayOf(one.from),
      to: dayOf(one.to),
      reason: byHand.has(one) ? one.reason : `${OUTSIDE_PERMIT}${one.reason}`,
    }),
  );
  const high: BlockedDay[] =
    gauge?.above === true
      ? [
          {
            site: null,
            from: forecast.asOf,
            to: forecast.asOf + HIGH_WATER_LASTS,
            reason: GAUGE_HIGH,
          },
        ]
      : [];
  return {
    forecast,
    rule: lifting?.rule ?? 'before-emergence',
    levels: { stillInBox: lifting?.stillInBox ?? 0.02, emerged: lifting?.emerged ?? 0.05 },
    blocked: [...blocked, ...high],
    boxesADay: lifting?.boxesADay ?? null,
    trips: lifting?.trips ?? [],
    over: boxesOver(season, forecast.asOf),
  };
}

/** Boxes that are lifted, tallied, or found gone by a day. */
export function boxesOver(season: Season, asOf: DayNumber): ReadonlySet<string> {
  const offset = standardOffset(season.group.zone) * 60_000;
  const lifted = season.boxes.filter(
    (box) => box.lifted !== null && Math.floor((epochMillis(box.lifted) + offset) / DAY) <= asOf,
  );
  const tallied = season.tallies.filter(({ when }) => dayOf(when.date) <= asOf);
  return new Set([...lifted.map(({ id }) => id), ...tallied.map(({ box }) => box)]);
}

/** A local date as a day number. */
export function dayOf(date: LocalDate): DayNumber {
  return Date.parse(`${date}T00:00Z`) / DAY;
}
