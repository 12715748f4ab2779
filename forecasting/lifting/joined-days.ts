import type { DayNumber } from '../units.js';
import { addTo, type BoxDraws, chanceOf, type Days, type Within, within } from './box-days.js';
import type { BlockedDay, DayOfPlan, LiftingPlan, LiftingQuestion, SitePlan } from './contract.js';
import { shareOf } from './share-of.js';

export interface Frame {
  readonly question: LiftingQuestion;
  readonly days: Days;
  readonly boxes: readonly BoxDraws[];
}

export function drawsOf({ boxes, days }: Frame): number {
  return boxes.length === 0 ? 0 : boxes[0].still.length / days.count;
}

/** Boxes with the same draws share their bits. */
export function withinOnce(
  boxes: readonly BoxDraws[],
  days: Days,
  { rule, levels }: LiftingQuestion,
): Within[] {
  const made = new Map<Float32Array, Within>();
  return boxes.map((box) => {
    const known = made.get(box.still) ?? within(box, days, rule, levels);
    made.set(box.still, known);
    return known;
  });
}

/** Bits of draws in which every one of these is within its levels. */
export function allWithin(bits: readonly Within[], { count }: Days): Within | null {
  const [first, ...rest] = new Set(bits);
  if (first === undefined) return null;
  const all = first.bits.slice(0, first.words * count);
  for (const { bits: own } of rest) for (let i = 0; i < all.length; i++) all[i] &= own[i];
  return { ...first, bits: all };
}

export type Figures = Omit<DayOfPlan, 'blocked'>;

/** What each box's days come to; boxes with the same draws share them. */
export function figuresOf(frame: Frame, bits: readonly Within[]): (readonly Figures[])[] {
  const made = new Map<Float32Array, Figures[]>();
  return frame.boxes.map((one, i) => {
    const known = made.get(one.still) ?? figures(frame, one, bits[i]);
    made.set(one.still, known);
    return known;
  });
}

function figures(frame: Frame, { still, out }: Shares, { bits, words }: Within): Figures[] {
  const { days } = frame;
  const draws = drawsOf(frame);
  return Array.from({ length: days.count }, (_, d) => ({
    day: days.from + d,
    stillInBox: shareOf(still, d * draws, draws),
    emerged: shareOf(out, d * draws, draws),
    chance: chanceOf(bits, d * words, words, draws),
  }));
}

interface Shares {
  readonly still: Float32Array;
  readonly out: Float32Array;
}

/** Draw by draw, the shares of all eggs of several together. */
function pooled(all: readonly (Shares & { readonly eggs: number })[]): Shares & { readonly eggs: number } {
  const eggs = all.reduce((sum, one) => sum + one.eggs, 0);
  const weights = new Map<Float32Array, { one: Shares; weight: number }>();
  for (const one of all) {
    const weight = eggs > 0 ? one.eggs / eggs : 1 / all.length;
    weights.set(one.still, { one, weight: weight + (weights.get(one.still)?.weight ?? 0) });
  }
  const [first, ...more] = weights.values();
  if (more.length === 0) return { ...first.one, eggs };
  const length = first.one.still.length;
  const still = new Float32Array(length);
  const out = new Float32Array(length);
  for (const { one, weight } of [first, ...more]) {
    addTo(still, weight, one.still);
    addTo(out, weight, one.out);
  }
  return { still, out, eggs };
}

/** Each site, and the season as if it were one: shares of all their eggs, and the chance that every box is within. */
export function joined(
  frame: Frame,
  bits: readonly Within[],
  season: Within | null,
): Pick<LiftingPlan, 'days' | 'sites'> {
  const { boxes, days, question } = frame;
  const numbers = new Map<string, number[]>();
  for (const [i, { box }] of boxes.entries()) numbers.set(box.site, [...(numbers.get(box.site) ?? []), i]);
  const shares: (Shares & { readonly eggs: number })[] = [];
  const sites = [...numbers].flatMap(([site, of]): SitePlan[] => {
    const within = allWithin(
      of.map((i) => bits[i]),
      days,
    );
    if (within === null) return [];
    const own = pooled(of.map((i) => ({ ...boxes[i], eggs: boxes[i].box.eggs })));
    shares.push(own);
    return [
      { site, boxes: of.map((i) => boxes[i].box.box), days: stated(figures(frame, own, within), [site]) },
    ];
  });
  const all = [...numbers.keys()];
  if (season === null) return { days: [], sites };
  return { days: stated(figures(frame, pooled(shares), season), all), sites };

  function stated(figures: readonly Figures[], of: readonly string[]): DayOfPlan[] {
    return figures.map((one) => ({ ...one, blocked: blockedBy(question.blocked, of, one.day) }));
  }
}

/** Why none of these sites' boxes may be lifted on a day: the first reason; null where nothing stands against it. */
export function blockedBy(
  blocked: readonly BlockedDay[],
  sites: readonly string[],
  day: DayNumber,
): string | null {
  const all = blocked.find(
    ({ site, from, to }) => day >= from && day <= to && (site === null || sites.includes(site)),
  );
  return all?.reason ?? null;
}
