import type { Remark } from '../../adapters/remark.js';
import type { Shifted } from '../../forecasting/index.js';
import { nameIn } from '../season/index.js';
import { type Language, say, stageName } from '../words/index.js';
import type { LiftingState } from './plan.js';
import type { LiftingPlanWords } from './words.js';

export type LiftingRemark = Remark<LiftingPlanWords>;

/** Below this chance no day is said to be good (ours). */
export const GOOD_ENOUGH = 0.5;
/** A chance must differ by this much to be worth a sentence (ours). */
const WORTH_SAYING = 0.05;
/** Beyond so many days the weather to come is most of what is not known (ours). */
const FAR_OFF = 30;
/** Days of a window that are worth a walk, as in what would sharpen a box. */
const WORTH_A_WALK = 0.5;

/** The plan's answer: the days, how sure, and what either side costs. First things first. */
export function whyRemarks(state: LiftingState, language: Language): LiftingRemark[] {
  const { plan } = state;
  if (plan.recommended.length === 0) return [...nothingPlanned(state), ...leftOut(state, language)];
  const { chance, levels, recommended } = plan;
  const boxes = recommended.reduce((sum, day) => sum + day.boxes.length, 0);
  const [first] = recommended;
  const each = recommended.map(({ day, boxes }) => ({ day, boxes: boxes.length }));
  const days: LiftingRemark =
    recommended.length === 1
      ? {
          code: 'lifting-one-day',
          with: { day: first.day, boxes: first.boxes.length, sites: first.sites.length },
        }
      : { code: 'lifting-days', with: { days: each } };
  // Where no day is good that is the answer, and the days come after it.
  const answer: LiftingRemark[] =
    chance < GOOD_ENOUGH
      ? [
          { code: 'lifting-none-good', with: { chance, ...levels } },
          { code: 'lifting-least-bad', with: { days: each } },
        ]
      : [days, { code: 'lifting-sure', with: { chance, boxes } }];
  return [
    ...answer,
    ...farOff(plan.asOf, first.day, chance),
    ...price(state),
    ...eitherSide(state),
    ...lookAgain(state),
    ...leftOut(state, language),
  ];
}

function farOff(asOf: number, first: number, chance: number): LiftingRemark[] {
  const days = first - asOf;
  return chance < GOOD_ENOUGH && days > FAR_OFF ? [{ code: 'lifting-far-off', with: { days } }] : [];
}

function nothingPlanned({ plan, season }: LiftingState): LiftingRemark[] {
  if (plan.without.length > 0)
    return [
      { code: 'lifting-all-blocked', with: { boxes: plan.without.length } },
      { code: 'lifting-would-free', with: { chance: plan.free } },
    ];
  if (season.boxes.length === 0) return [{ code: 'lifting-no-boxes', with: {} }];
  if (plan.left.every(({ why }) => why === 'over')) return [{ code: 'lifting-nothing-left', with: {} }];
  return [];
}

function price({ plan }: LiftingState): LiftingRemark[] {
  const at = plan.shifts.find(({ by }) => by === 0);
  if (at === undefined) return [];
  const eggs = plan.boxes.reduce((sum, box) => sum + (box.planned === null ? 0 : box.eggs), 0);
  const after = plan.rule === 'after-emergence';
  const fry = after ? eggs - at.emerged : at.emerged;
  return [{ code: 'lifting-price', with: { alevins: at.stillInBox, fry, eggs, after } }];
}

/** What a day earlier and a day later cost, beside the recommended ones. */
function eitherSide({ plan }: LiftingState): LiftingRemark[] {
  const at = plan.shifts.find(({ by }) => by === 0);
  if (at === undefined) return [];
  const after = plan.rule === 'after-emergence';
  const beside = (by: number) => plan.shifts.find((shift) => shift.by === by);
  const cost = (one: Shifted) => ({
    alevins: one.stillInBox - at.stillInBox,
    fry: after ? at.emerged - one.emerged : one.emerged - at.emerged,
    chance: one.chance,
  });
  const [earlier, later] = [beside(-1), beside(1)];
  const remarks: LiftingRemark[] = [];
  if (earlier !== undefined)
    remarks.push({ code: after ? 'lifting-earlier-after' : 'lifting-earlier', with: cost(earlier) });
  if (later !== undefined)
    remarks.push({ code: after ? 'lifting-later-after' : 'lifting-later', with: cost(later) });
  return remarks;
}

function lookAgain({ plan }: LiftingState): LiftingRemark[] {
  return plan.lookAgain === null ? [] : [{ code: 'lifting-look-again', with: { day: plan.lookAgain } }];
}

function leftOut({ plan, forecast }: LiftingState, language: Language): LiftingRemark[] {
  const remarks: LiftingRemark[] = [];
  const unknown = plan.left.filter(({ why }) => why === 'no-forecast').map(({ box }) => box);
  if (unknown.length > 0) {
    const why = forecast.boxes
      .filter(({ box }) => unknown.includes(box))
      .flatMap(({ lots }) =>
        lots.flatMap(({ windows }) => windows.find(({ stage }) => stage === 'hatch') ?? []),
      )
      .flatMap(({ unreached }) => (unreached === null ? [] : [say(language, unreached)]));
    remarks.push({ code: 'lifting-no-forecast', with: { boxes: unknown, why: [...new Set(why)] } });
  }
  if (plan.recommended.length > 0 && plan.without.length > 0)
    remarks.push({ code: 'lifting-some-blocked', with: { boxes: plan.without } });
  const other = plan.boxes.filter(({ stage }) => stage !== 'emergence');
  for (const stage of new Set(other.map((box) => box.stage))) {
    const boxes = other.filter((box) => box.stage === stage).map(({ box }) => box);
    remarks.push(
      stage === null
        ? { code: 'lifting-no-gravel-stage', with: { boxes } }
        : { code: 'lifting-stage-stands-in', with: { boxes, stage: stageName(stage, language) } },
    );
  }
  return remarks;
}

/** What would make a better day possible; empty where the plan is good as it is. */
export function wouldHelp(state: LiftingState, language: Language): LiftingRemark[] {
  const { plan } = state;
  if (plan.recommended.length === 0) return [];
  const remarks: LiftingRemark[] = [];
  const single = plan.bestSingle;
  const days = plan.recommended.length;
  if (single !== null && days > 1 && plan.chance > single.chance + WORTH_SAYING)
    remarks.push({ code: 'lifting-would-stagger', with: { chance: plan.chance, single: single.chance } });
  else if (single !== null && days > 1 && plan.chance >= GOOD_ENOUGH)
    remarks.push({ code: 'lifting-single-site-trade', with: { single: single.chance, day: single.day } });
  if (plan.free > plan.chance + WORTH_SAYING)
    remarks.push({ code: 'lifting-would-free', with: { chance: plan.free } });
  if (plan.apart !== null && plan.apart > plan.chance + WORTH_SAYING)
    remarks.push({ code: 'lifting-would-apart', with: { chance: plan.apart } });
  if (plan.chance >= 0.9) return remarks;
  remarks.push(...oneMoreDownload(state, language));
  if (plan.chance < GOOD_ENOUGH) remarks.push({ code: 'lifting-would-levels', with: {} });
  return remarks;
}

/** The loggers worth reading before then, and by how many days the best of them narrows a window. */
function oneMoreDownload({ plan, forecast, season }: LiftingState, language: Language): LiftingRemark[] {
  const planned = new Set(plan.boxes.map(({ box }) => box));
  const worth = forecast.boxes.flatMap(({ box, sharpenBy }) =>
    sharpenBy.flatMap((remark) =>
      planned.has(box) && 'narrower' in remark.with && 'station' in remark.with ? [remark.with] : [],
    ),
  );
  const found = worth.filter(({ narrower }) => narrower >= WORTH_A_WALK);
  const [best] = found.toSorted((a, b) => b.narrower - a.narrower);
  if (best === undefined) return [];
  const stations = [...new Set(found.map(({ station }) => nameIn(season.stations, station)))];
  const stage = stageName(best.stage, language);
  return [{ code: 'lifting-would-download', with: { stations, stage, narrower: best.narrower } }];
}

/** Draft or approved, and what has moved since. */
export function standingRemarks({ approved, moved, season }: LiftingState): LiftingRemark[] {
  if (approved === null) return [{ code: 'lifting-draft', with: {} }];
  const by: LiftingRemark = {
    code: 'lifting-approved',
    with: {
      by: approved.by,
      at: Date.parse(approved.at),
      zone: season.group.zone,
    },
  };
  if (moved === null) return [by, { code: 'lifting-not-moved', with: {} }];
  const remarks: LiftingRemark[] = [by];
  if (moved.days !== 0)
    remarks.push({
      code: 'lifting-moved',
      with: { days: Math.abs(moved.days), later: moved.days > 0, since: moved.since },
    });
  remarks.push({ code: 'lifting-moved-boxes', with: { boxes: moved.boxes } });
  if (moved.cameIn.length > 0) remarks.push({ code: 'lifting-came-in', with: { things: moved.cameIn } });
  return remarks;
}

/** The limit nobody wades above; null where the group names none. */
export function gaugeRemark({ gauge }: LiftingState): LiftingRemark | null {
  if (gauge === null) return null;
  const { station, quantity, most, value } = gauge;
  return { code: 'lifting-gauge-rule', with: { station, quantity, most, value } };
}
