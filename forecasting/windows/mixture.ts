import jStat from 'jstat';
import { FIRST, LAST, type StageDraws } from './stage-draws.js';

/** Some eggs among others in a box: when they come to a stage, and how many they are. */
export interface Part {
  readonly draws: StageDraws;
  readonly eggs: number;
}

/** A hundredth of a day: a quarter of an hour is finer than any of this can tell. */
const CLOSE_ENOUGH = 0.01;

/**
 * When 5, 50 and 95 % of all the eggs of several lots have come to a stage, draw by draw: the moment at which the
 * lots' shares, weighted by eggs, add up to it. A lot's share at a moment is read off the normal scores of its own
 * first, median and last. Parts without eggs count only where none has any.
 */
export function mixture(parts: readonly Part[]): StageDraws {
  const total = parts.reduce((sum, { eggs }) => sum + eggs, 0);
  const counted = total > 0 ? parts.filter(({ eggs }) => eggs > 0) : parts;
  if (counted.length === 1) return counted[0].draws;
  const weights = counted.map(({ eggs }) => (total > 0 ? eggs / total : 1 / counted.length));
  const draws = counted.map((part) => part.draws);
  const length = draws[0].median.length;
  const mixed = {
    first: new Float64Array(length),
    median: new Float64Array(length),
    last: new Float64Array(length),
  };
  for (let k = 0; k < length; k++) {
    const curves = draws.map(({ first, median, last }): Curve => [first[k], median[k], last[k]]);
    mixed.first[k] = momentOfShare(curves, weights, 0.05, 0);
    mixed.median[k] = Math.max(mixed.first[k], momentOfShare(curves, weights, 0.5, 1));
    mixed.last[k] = Math.max(mixed.median[k], momentOfShare(curves, weights, 0.95, 2));
  }
  return mixed;
}

/** Standard deviations in which every egg is held to have come. */
const REACH = 6;
const STEP = 1 / 64;

/** First, median and last of one lot in one draw. */
type Curve = readonly [number, number, number];

function momentOfShare(
  curves: readonly Curve[],
  weights: readonly number[],
  share: number,
  which: 0 | 1 | 2,
): number {
  let low = Number.POSITIVE_INFINITY;
  let high = Number.NEGATIVE_INFINITY;
  let never = false;
  for (const curve of curves) {
    low = Math.min(low, curve[which]);
    if (curve[which] === Number.POSITIVE_INFINITY) never = true;
    else high = Math.max(high, curve[which]);
  }
  if (low === Number.POSITIVE_INFINITY) return low;
  // Lots that never come leave the whole share to the others, down to their last egg.
  if (never) high = Math.max(high, ...curves.map(everyEgg).filter(Number.isFinite));
  if (shareAt(curves, weights, high) < share - 1e-4) return Number.POSITIVE_INFINITY;
  while (high - low > CLOSE_ENOUGH) {
    const middle = (low + high) / 2;
    if (shareAt(curves, weights, middle) >= share) high = middle;
    else low = middle;
  }
  return high;
}

/** By when every egg of a lot has come, six standard deviations out; Infinity where its last never do. */
function everyEgg([, median, last]: Curve): number {
  return median + (REACH / LAST) * (last - median);
}

function shareAt(curves: readonly Curve[], weights: readonly number[], moment: number): number {
  let share = 0;
  for (let l = 0; l < curves.length; l++) share += weights[l] * normalCdf(scoreAt(curves[l], moment));
  return share;
}

function scoreAt([first, median, last]: Curve, moment: number): number {
  const early = moment < median;
  const [from, to] = early ? [first, median] : [median, last];
  const [low, high] = early ? [FIRST, 0] : [0, LAST];
  if (!Number.isFinite(from)) return Number.NEGATIVE_INFINITY;
  if (!Number.isFinite(to)) return early && moment < from ? Number.NEGATIVE_INFINITY : low;
  if (to <= from) return moment >= median ? Number.POSITIVE_INFINITY : Number.NEGATIVE_INFINITY;
  return low + ((moment - from) / (to - from)) * (high - low);
}

const CDF = Float64Array.from({ length: (2 * REACH) / STEP + 2 }, (_, i) =>
  jStat.normal.cdf(-REACH + i * STEP, 0, 1),
);

/** Normal distribution function, straight between steps of 1/64: right to 1e-5. */
function normalCdf(z: number): number {
  if (z <= -REACH) return 0;
  if (z >= REACH) return 1;
  const x = (z + REACH) / STEP;
  const i = Math.floor(x);
  return CDF[i] + (x - i) * (CDF[i + 1] - CDF[i]);
}
