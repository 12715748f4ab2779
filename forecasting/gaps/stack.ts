import { Matrix, solve } from 'ml-matrix';
import { BINS, binOf, seasonKernel, spreadOverSeason } from '../residual/season-kernel.js';
import type { SeasonAxis } from '../season-axis.js';
import { widerFor } from '../windows/few-winters.js';
import type { Candidate } from './candidate.js';

/** How several stations speak together. */
export interface Stack {
  readonly candidates: readonly Candidate[];
  /** Weights of the stations that have a day, given as bits; they add up to 1. */
  weights(present: number): StackWeights;
  /**
   * Standard deviation of the stacked estimate's error by bin of the season, all stations present, °C; wider where
   * it was judged on few seasons.
   */
  readonly sd: Float64Array;
  /** What the stacked estimate lacks on average by bin of the season, °C: see `estimate`. */
  readonly lacks: Float64Array;
}

export interface StackWeights {
  readonly of: Float64Array;
  /** How much larger the error is than with all of them. */
  readonly wider: number;
}

/** Stations asked at most (tried 6, 10, 12, 15). */
export const MOST_CANDIDATES = 12;
/** Added to each error variance, as a share of it: a ridge, so that two stations that err alike share the weight. */
const RIDGE = 0.15;
/** Error correlation is shrunk to this where few days tell (tried 0-0.7 of the way). */
const USUAL_CORRELATION = 0.6;
const CORRELATION_PULL = 0.1;
/** Days that must be shared before two stations' errors are compared. */
const LEAST_SHARED = 100;
/** Days for which the error of the whole season counts beside that of the bin. */
const SD_PULL = 10;
/** No estimate is better than this, °C: the loggers' own disagreement. */
const LEAST_SD = 0.15;
const SD_KERNEL = seasonKernel(15);
/** Days for which no mean error counts beside those of the bin (tried 5, 10, 30: the same within 1 %). */
const LACKS_PULL = 30;
/** A season counts among those judged on with so many days. */
const SEASON_JUDGED = 40;

/**
 * Stacks candidates by the weights that make the cross-validated error of their mean least (Bates & Granger 1969,
 * Operational Research Quarterly 20:451-468; stacking with weights of 0 or more: Breiman 1996, Machine Learning
 * 24:49-64: both memory): w = Σ⁻¹1 / 1ᵀΣ⁻¹1 with Σ the covariance of their errors, shrunk, stations with a negative
 * weight left out. Equal weights by 1/error^p, p = 2-6, lost by 5-15 % (see the hindcast).
 */
export function stackOf(axis: SeasonAxis, ranked: readonly Candidate[]): Stack {
  const candidates = ranked.slice(0, MOST_CANDIDATES);
  const covariance = errorCovariance(candidates);
  const known = new Map<number, StackWeights>();
  const all = 2 ** candidates.length - 1;
  const best = candidates.length > 0 ? leastError(covariance, presentIn(all, candidates.length)) : null;
  const weights = (present: number): StackWeights => {
    let found = known.get(present);
    if (found === undefined) {
      const own = leastError(covariance, presentIn(present, candidates.length));
      found = { of: own.of, wider: best === null ? 1 : Math.sqrt(own.variance / best.variance) };
      known.set(present, found);
    }
    return found;
  };
  return { candidates, weights, ...stackedErrors(axis, candidates, best?.of ?? new Float64Array(0)) };
}

function presentIn(bits: number, count: number): number[] {
  const present: number[] = [];
  for (let k = 0; k < count; k++) if ((bits >> k) & 1) present.push(k);
  return present;
}

function errorCovariance(candidates: readonly Candidate[]): Float64Array[] {
  const m = candidates.length;
  const covariance = candidates.map(() => new Float64Array(m));
  for (let i = 0; i < m; i++) {
    for (let j = 0; j <= i; j++) {
      const r = i === j ? 1 + RIDGE : sharedCorrelation(candidates[i].residuals, candidates[j].residuals);
      const floor = LEAST_SD / 3;
      const c = r * Math.max(floor, candidates[i].error) * Math.max(floor, candidates[j].error);
      covariance[i][j] = c;
      covariance[j][i] = c;
    }
  }
  return covariance;
}

/** Correlation of two stations' errors about 0, shrunk to the usual one. */
function sharedCorrelation(a: Float32Array, b: Float32Array): number {
  let ab = 0;
  let aa = 0;
  let bb = 0;
  let n = 0;
  for (let i = 0; i < a.length; i++) {
    const x = a[i];
    const y = b[i];
    if (Number.isNaN(x) || Number.isNaN(y)) continue;
    ab += x * y;
    aa += x * x;
    bb += y * y;
    n++;
  }
  const r = n > LEAST_SHARED && aa > 0 && bb > 0 ? ab / Math.sqrt(aa * bb) : USUAL_CORRELATION;
  return CORRELATION_PULL * USUAL_CORRELATION + (1 - CORRELATION_PULL) * r;
}

function leastError(
  covariance: readonly Float64Array[],
  present: readonly number[],
): { of: Float64Array; variance: number } {
  const of = new Float64Array(covariance.length);
  let active = [...present];
  while (active.length > 0) {
    const sub = new Matrix(active.map((i) => active.map((j) => covariance[i][j])));
    const raw = active.length === 1 ? [1] : solve(sub, Matrix.columnVector(active.map(() => 1))).to1DArray();
    const least = raw.reduce((a, w, i) => (w < raw[a] ? i : a), 0);
    if (raw[least] < 0) {
      active = active.filter((_, i) => i !== least);
      continue;
    }
    const sum = raw.reduce((a, w) => a + w, 0);
    active.forEach((k, i) => {
      of[k] = raw[i] / sum;
    });
    break;
  }
  let variance = 0;
  for (const i of active) for (const j of active) variance += of[i] * of[j] * covariance[i][j];
  return { of, variance };
}

/** Standard deviation and mean by bin of the stacked cross-validation errors. */
function stackedErrors(
  axis: SeasonAxis,
  candidates: readonly Candidate[],
  weights: Float64Array,
): Pick<Stack, 'sd' | 'lacks'> {
  const sums = new Float64Array(BINS * 3);
  const seasons = new Map<number, number>();
  let squares = 0;
  let days = 0;
  for (let i = 0; i < axis.length; i++) {
    let weight = 0;
    let error = 0;
    for (let k = 0; k < candidates.length; k++) {
      const e = candidates[k].residuals[i];
      if (Number.isNaN(e)) continue;
      const w = weights[k] + 1e-6;
      weight += w;
      error += w * e;
    }
    if (weight < 1e-4) continue;
    error /= weight;
    const at = binOf(axis.seasonDay[i]) * 3;
    sums[at] += error * error;
    sums[at + 1]++;
    sums[at + 2] += error;
    squares += error * error;
    days++;
    seasons.set(axis.season[i], (seasons.get(axis.season[i]) ?? 0) + 1);
  }
  const overall = days > 0 ? squares / days : (candidates[0]?.error ?? 1) ** 2;
  const local = spreadOverSeason(sums, 3, SD_KERNEL);
  const judged = Math.max(1, [...seasons.values()].filter((count) => count >= SEASON_JUDGED).length);
  // a further season errs about a mean that is itself known from few, by a spread that is known from few
  const wider = Math.sqrt(1 + 1 / judged) * widerFor(judged);
  return {
    sd: Float64Array.from({ length: BINS }, (_, bin) => {
      const variance = (local[3 * bin] + SD_PULL * overall) / (local[3 * bin + 1] + SD_PULL);
      return wider * Math.sqrt(variance + LEAST_SD * LEAST_SD);
    }),
    lacks: Float64Array.from(
      { length: BINS },
      (_, bin) => local[3 * bin + 2] / (local[3 * bin + 1] + LACKS_PULL),
    ),
  };
}
