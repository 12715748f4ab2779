import jStat from 'jstat';
import { FIRST, LAST, type StageDraws } from './stage-draws.js';

/** Some eggs among others in a box: when they come to a stage, and how many they are. */
export interface Part {
  readonly draws: StageDraws;
  readonly eggs: number;
}

/** A hundredth of a day: a quarter of an hour is finer than any of this can tell. */
const CLOSE_ENOUGH = 0.01;
/** Standard deviations in which every egg is held to have come. */
const REACH = 6;

/**
 * When 5, 50 and 95 % of all the eggs of several lots have come to a stage, draw by draw: the moment at which the
 * lots' shares, weighted by eggs, add up to it. A lot's share at a moment is read off the normal scores of its own
 * first, median and last. Parts without eggs count only where none has any.
 */
export function mixture(parts: readonly Part[]): StageDraws {
  const total = parts.reduce((sum, { eggs }) => sum + eggs, 0);
  const counted = total > 0 ? parts.filter(({ eggs }) => eggs > 0) : parts;
  if (counted.length === 1) return counted[0].draws;
  const lots = counted.map(({ draws, eggs }) => ({
    draws,
    weight: total > 0 ? eggs / total : 1 / counted.length,
  }));
  const length = lots[0].draws.median.length;
  const first = new Float64Array(length);
  const median = new Float64Array(length);
  const last = new Float64Array(length);
  for (let k = 0; k < length; k++) {
    first[k] = momentOfShare(lots, k, 0.05, 'first');
    median[k] = Math.max(first[k], momentOfShare(lots, k, 0.5, 'median'));
    last[k] = Math.max(median[k], momentOfShare(lots, k, 0.95, 'last'));
  }
  return { first, median, last };
}

interface Lot {
  readonly draws: StageDraws;
  readonly weight: number;
}

/** In draw k, the moment by which `share` of all eggs have come; `which` is that share's moment in each lot alone. */
function momentOfShare(lots: readonly Lot[], k: number, share: number, which: keyof StageDraws): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let never = false;
  for (const { draws } of lots) {
    const moment = draws[which][k];
    low = Math.min(low, moment);
    if (moment === Number.POSITIVE_INFINITY) never = true;
    else high = Math.max(high, moment);
  }
  if (low === Number.POSITIVE_INFINITY) return low;
  // Lots that never come leave the whole share to the others, down to their last egg.
  if (never) high = Math.max(high, ...lots.map((lot) => everyEgg(lot, k)).filter(Number.isFinite));
  if (shareAt(lots, k, high) < share - 1e-4) return Number.POSITIVE_INFINITY;
  return crossing(lots, k, share, low, high);
}

/** Between two moments, where the share of eggs crosses a level: false position, Illinois variant (Dowell & Jarratt 1971). */
function crossing(lots: readonly Lot[], k: number, share: number, from: number, to: number): number {
  let [low, high] = [from, to];
  let below = shareAt(lots, k, low) - share;
  let above = shareAt(lots, k, high) - share;
  for (let turn = 0; high - low > CLOSE_ENOUGH && below < 0 && above > 0 && turn < 40; turn++) {
    const straight = Number.isFinite(above - below)
      ? low - (below * (high - low)) / (above - below)
      : Number.NaN;
    const middle = turn % 8 === 7 || !(straight > low && straight < high) ? (low + high) / 2 : straight;
    const found = shareAt(lots, k, middle) - share;
    if (Math.abs(found) < 1e-4) return middle;
    if (found < 0) {
      low = middle;
      below = found;
      above /= 2;
    } else {
      high = middle;
      above = found;
      below /= 2;
    }
  }
  return below >= 0 ? low : high;
}

/** By when every egg of a lot has come, six standard deviations out; not finite where its last never do. */
function everyEgg({ draws }: Lot, k: number): number {
  return draws.median[k] + (REACH / LAST) * (draws.last[k] - draws.median[k]);
}

/** Share of a lot's eggs that has come to its stage by a moment, in draw k. */
export function shareArrived(draws: StageDraws, k: number, moment: number): number {
  return normalCdf(scoreAt(draws.first[k], draws.median[k], draws.last[k], moment));
}

function shareAt(lots: readonly Lot[], k: number, moment: number): number {
  let share = 0;
  for (let l = 0; l < lots.length; l++) {
    const { draws, weight } = lots[l];
    share += weight * shareArrived(draws, k, moment);
  }
  return share;
}

/** In draw k, the share of eggs that have come to a stage by a moment, 0 to 1. */
export function shareCome({ first, median, last }: StageDraws, k: number, moment: number): number {
  return shareBy(first[k], median[k], last[k], moment);
}

/** The same, from the moments of the first, median and last egg. */
export function shareBy(first: number, median: number, last: number, moment: number): number {
  return normalCdf(scoreAt(first, median, last, moment));
}

/** The moment before which no egg has come, six standard deviations out; no moment where that is not known. */
export function noneBefore(first: number, median: number): number {
  return Number.isFinite(median) && Number.isFinite(first)
    ? median + (REACH / FIRST) * (median - first)
    : Number.NEGATIVE_INFINITY;
}

/** The normal score of the egg that comes at `moment`, straight between first, median and last and on beyond. */
function scoreAt(first: number, median: number, last: number, moment: number): number {
  if (moment < median) {
    if (!Number.isFinite(first)) return Number.NEGATIVE_INFINITY;
    if (median === Number.POSITIVE_INFINITY) return moment < first ? Number.NEGATIVE_INFINITY : FIRST;
    return FIRST * ((median - moment) / (median - first));
  }
  if (last === Number.POSITIVE_INFINITY) return 0;
  return last > median ? LAST * ((moment - median) / (last - median)) : Number.POSITIVE_INFINITY;
}

const STEP = 1 / 64;
const CDF = Float64Array.from({ length: (2 * REACH) / STEP + 2 }, (_, i) =>
  jStat.normal.cdf(-REACH + i * STEP, 0, 1),
);

/** Normal distribution function, straight between steps of 1/64: right to 1e-5. */
function normalCdf(z: number): number {
  if (z <= -REACH) return 0;
  if (z >= REACH) return 1;
  const x = (z + REACH) / STEP;
  const i = x | 0;
  return CDF[i] + (x - i) * (CDF[i + 1] - CDF[i]);
}
