import type { BoxForecast } from '../forecast.js';
import type { DayNumber } from '../units.js';
import { type BoxDraws, chanceOf, type Days, KnownDraws, ones, type Within } from './box-days.js';
import { candidateDays, hasDates } from './candidate-days.js';
import type { BoxPlan, LiftingDay, LiftingPlan, LiftingQuestion, Shifted } from './contract.js';
import {
  allWithin,
  blockedBy,
  drawsOf,
  type Figures,
  type Frame,
  figuresOf,
  joined,
  withinOnce,
} from './joined-days.js';
import { type Schedule, schedule, type TripDays } from './schedule.js';
import { type Trip, tripsOf } from './trips.js';

/** Fry out of the gravel cost evidence, and are trodden on where others are still in it: a quarter of an alevin (ours). */
const LATE_COSTS = 0.25;
/** How far before the first lifting day a plan is looked at again, and how often at least (ours). */
const LOOK_BEFORE = 7;
const LOOK_EVERY = 14;

/**
 * On which day the boxes come out: for every candidate day the shares and chances of each box, site and the season,
 * and the days that keep most within the levels as the crew works. Pure: the same question has the same answer.
 */
export function liftingPlan(question: LiftingQuestion): LiftingPlan {
  const { forecast, rule, levels, over } = question;
  const wanted = forecast.boxes.filter((box) => !over.has(box.box) && hasDates(box));
  const days = candidateDays(wanted, forecast.asOf);
  const known = new KnownDraws(days);
  const boxes = wanted.map((box) => known.of(box)).filter((made) => made !== null);
  const frame = { question, days, boxes };
  const bits = withinOnce(boxes, days, question);
  const boxDays = figuresOf(frame, bits);
  const trips = tripsOf(
    boxes.map(({ box }) => box.site),
    question,
  );
  const tripDays = trips.map((trip) => daysOfTrip(frame, trip, bits, boxDays));
  const found = schedule(tripDays, days.count, question.boxesADay);
  const recommended = liftingDays(frame, trips, found);
  const planned = plannedDays(frame, trips, found);
  const seasonBits = allWithin(bits, days);
  return {
    asOf: forecast.asOf,
    rule,
    levels,
    ...joined(frame, bits, seasonBits),
    boxes: boxes.map((one, i) => boxPlan(frame, one, boxDays[i], planned[i])),
    left: leftOut(forecast.boxes, boxes, over),
    recommended,
    chance: found.chance,
    bestSingle: bestSingle(seasonBits, days),
    free: freest(tripDays, days),
    apart: sitesApart(frame, bits, boxDays),
    shifts: recommended.length === 0 ? [] : shifts(frame, bits, boxDays, planned),
    without: boxes.filter((_, i) => planned[i] === null).map(({ box }) => box.box),
    lookAgain: lookAgain(forecast.asOf, recommended),
  };
}

function boxPlan(
  { question }: Frame,
  { box, lots }: BoxDraws,
  figures: readonly Figures[],
  planned: DayNumber | null,
): BoxPlan {
  const stage = lots.find((lot) => lot.stage !== null)?.stage ?? null;
  const days = figures.map((one) => ({ ...one, blocked: blockedBy(question.blocked, [box.site], one.day) }));
  return { box: box.box, site: box.site, eggs: box.eggs, stage, days, planned };
}

function daysOfTrip(
  frame: Frame,
  trip: Trip,
  bits: readonly Within[],
  boxDays: readonly (readonly Figures[])[],
): TripDays {
  const { days, question, boxes } = frame;
  const joined = allWithin(
    trip.boxes.map((i) => bits[i]),
    days,
  );
  if (joined === null) throw new RangeError('a trip has boxes');
  const draws = drawsOf(frame);
  const eggsOf = (numbers: readonly number[]) => numbers.reduce((sum, i) => sum + boxes[i].box.eggs, 0);
  const eggs = eggsOf([...boxes.keys()]);
  const mine = eggsOf(trip.boxes);
  const after = question.rule === 'after-emergence';
  const costOf = (i: number, d: number) => {
    const { stillInBox, emerged } = boxDays[i][d];
    return stillInBox.mean + (after ? 1 - emerged.mean : LATE_COSTS * emerged.mean);
  };
  const part = (i: number) => (mine > 0 ? boxes[i].box.eggs / mine : 1 / trip.boxes.length);
  return {
    boxes: trip.boxes.length,
    open: Array.from(
      { length: days.count },
      (_, d) => blockedBy(question.blocked, trip.sites, days.from + d) === null,
    ),
    within: joined,
    chance: Float64Array.from({ length: days.count }, (_, d) =>
      chanceOf(joined.bits, d * joined.words, joined.words, draws),
    ),
    cost: Float64Array.from({ length: days.count }, (_, d) =>
      trip.boxes.reduce((sum, i) => sum + part(i) * costOf(i, d), 0),
    ),
    weight: eggs > 0 ? mine / eggs : trip.boxes.length / boxes.length,
  };
}

function plannedDays(
  { boxes, days }: Frame,
  trips: readonly Trip[],
  { day }: Schedule,
): (DayNumber | null)[] {
  const planned: (DayNumber | null)[] = boxes.map(() => null);
  for (const [t, trip] of trips.entries())
    for (const i of trip.boxes) planned[i] = day[t] < 0 ? null : days.from + day[t];
  return planned;
}

function liftingDays({ boxes, days }: Frame, trips: readonly Trip[], { day }: Schedule): LiftingDay[] {
  const used = [...new Set(day)].filter((d) => d >= 0).sort((a, b) => a - b);
  return used.map((d) => {
    const numbers = trips.flatMap((trip, t) => (day[t] === d ? trip.boxes : []));
    const there = numbers.map((i) => boxes[i].box);
    return {
      day: days.from + d,
      boxes: there.map(({ box }) => box),
      sites: [...new Set(there.map(({ site }) => site))],
    };
  });
}

function leftOut(
  all: readonly BoxForecast[],
  planned: readonly BoxDraws[],
  over: ReadonlySet<string>,
): LiftingPlan['left'] {
  const there = new Set(planned.map(({ box }) => box.box));
  return all
    .filter(({ box }) => !there.has(box))
    .map(({ box, site }) => ({
      box,
      site,
      why: over.has(box) ? ('over' as const) : ('no-forecast' as const),
    }));
}

function bestSingle(bits: Within | null, days: Days): LiftingPlan['bestSingle'] {
  if (bits === null) return null;
  let best = { day: days.from, chance: -1 };
  for (let d = 0; d < days.count; d++) {
    const chance = chanceOf(bits.bits, d * bits.words, bits.words, bits.draws);
    if (chance > best.chance) best = { day: days.from + d, chance };
  }
  return best;
}

/** Were nothing blocked and the crew without limit. */
function freest(trips: readonly TripDays[], days: Days): number {
  const free = trips.map((trip) => ({ ...trip, open: trip.open.map(() => true) }));
  return schedule(free, days.count, null).chance;
}

/** Were the sites of a trip lifted each on its own day, with the days and the crew there are. */
function sitesApart(
  frame: Frame,
  bits: readonly Within[],
  boxDays: readonly (readonly Figures[])[],
): number | null {
  const { question, boxes, days } = frame;
  if (question.trips.every((sites) => sites.length < 2)) return null;
  const sites = boxes.map(({ box }) => box.site);
  const apart = tripsOf(sites, { ...question, trips: [] });
  const trips = apart.map((trip) => daysOfTrip(frame, trip, bits, boxDays));
  return schedule(trips, days.count, question.boxesADay).chance;
}

const SHIFTS = [-7, -3, -2, -1, 0, 1, 2, 3, 7];

/** The plan as a whole some days earlier or later: what either side costs. */
function shifts(
  frame: Frame,
  bits: readonly Within[],
  boxDays: readonly (readonly Figures[])[],
  planned: readonly (DayNumber | null)[],
): Shifted[] {
  const { boxes, days } = frame;
  const draws = drawsOf(frame);
  return SHIFTS.flatMap((by): Shifted[] => {
    const at = planned.map((day) => (day === null ? null : day + by - days.from));
    if (at.some((d) => d !== null && (d < 0 || d >= days.count))) return [];
    let [stillInBox, emerged] = [0, 0];
    const joint = new Uint32Array(bits[0].words).fill(0xffffffff);
    for (const [i, { box }] of boxes.entries()) {
      const d = at[i];
      if (d === null) continue;
      stillInBox += box.eggs * boxDays[i][d].stillInBox.mean;
      emerged += box.eggs * boxDays[i][d].emerged.mean;
      for (let w = 0; w < joint.length; w++) joint[w] &= bits[i].bits[d * joint.length + w];
    }
    const chance = joint.reduce((sum, word) => sum + ones(word), 0) / draws;
    return [{ by, chance, stillInBox, emerged }];
  });
}

function lookAgain(asOf: DayNumber, recommended: readonly LiftingDay[]): DayNumber | null {
  const first = recommended[0]?.day;
  if (first === undefined) return asOf + LOOK_EVERY;
  if (first <= asOf + 1) return asOf + 1;
  return Math.max(asOf + 1, Math.min(asOf + LOOK_EVERY, first - LOOK_BEFORE));
}
