import { readBins } from '../residual/season-kernel.js';
import type { SeasonAxis } from '../season-axis.js';
import { relate } from './relation.js';
import type { Stack } from './stack.js';

/**
 * Each station's estimate is floored at freezing, so their mean lies too warm on the ice plateau, by what
 * cross-validation shows; away from freezing there is no floor and no such error (°C; tried 1, 2, 4 and everywhere).
 */
const NEAR_FREEZING = 2;

/** What the stations together say of the target's water, before its own days correct it. */
export interface StackEstimate {
  /** Index on the axis of the first day. */
  readonly from: number;
  readonly mean: Float64Array;
  /** Standard deviation of its error, °C. */
  readonly sd: Float64Array;
  /** Days each candidate spoke for, its weight added up. */
  readonly share: Float64Array;
  /** Which candidates spoke on each day, candidate k as bit k. */
  readonly spoke: Int32Array;
  /** Days on which a candidate had a value and was not believed. */
  readonly doubted: Uint16Array;
}

/**
 * A day on which nothing is said has NaN. `values[k]` are candidate k's days on the axis, as far as they are known.
 *
 * A neighbour that went bad this year (a stuck or shifted logger, one read in °F) is found by its company: see
 * `doubts`.
 */
export function stackEstimate(
  axis: SeasonAxis,
  stack: Stack,
  values: readonly Float64Array[],
  target: Float64Array,
  from: number,
  to: number,
): StackEstimate {
  const length = Math.max(0, to - from);
  const count = stack.candidates.length;
  const said = stack.candidates.map((candidate, k) => {
    const predicted = new Float64Array(length);
    for (let d = 0; d < length; d++) {
      const x = values[k][from + d];
      predicted[d] = Number.isNaN(x) ? Number.NaN : relate(candidate.relation, axis.seasonDay[from + d], x);
    }
    return predicted;
  });
  const doubted = doubts(stack, said, target.subarray(from, to));
  const estimate = {
    from,
    mean: new Float64Array(length).fill(Number.NaN),
    sd: new Float64Array(length).fill(Number.NaN),
    share: new Float64Array(count),
    spoke: new Int32Array(length),
    doubted,
  };
  for (let d = 0; d < length; d++) {
    let bits = 0;
    for (let k = 0; k < count; k++) if (!Number.isNaN(said[k][d])) bits |= 1 << k;
    if (bits === 0) continue;
    estimate.spoke[d] = bits;
    const weights = stack.weights(bits);
    let mean = 0;
    for (let k = 0; k < count; k++) {
      if (weights.of[k] === 0) continue;
      mean += weights.of[k] * said[k][d];
      estimate.share[k] += weights.of[k];
    }
    const lacks = readBins(stack.lacks, axis.seasonDay[from + d]);
    estimate.mean[d] = Math.max(0, mean + lacks * Math.exp(-((mean / NEAR_FREEZING) ** 2)));
    estimate.sd[d] = weights.wider * readBins(stack.sd, axis.seasonDay[from + d]);
  }
  return estimate;
}

/** Days on each side, of those that can be compared, over which a station is compared with its company. */
const REACH = 7;
/** Mean distance from the company, in its usual errors, at which it is not believed: a normal error has 0.8. */
const TOO_FAR = 4;
/** No error is held to be smaller in this comparison, °C. */
const LEAST_ERROR = 0.3;

/**
 * Takes out, day by day, what a candidate says when over a fortnight it stays far from what the others say and
 * from the target's own days: the mean of |said − company| above 4 of its usual errors. The company is the
 * target itself where it was measured, else the median of all candidates where there are three. Days without company
 * are judged by the nearest that have it.
 */
function doubts(stack: Stack, said: readonly Float64Array[], target: Float64Array): Uint16Array {
  const length = target.length;
  const count = said.length;
  const doubted = new Uint16Array(count);
  const company = companyOf(said, target);
  const doubtful = said.map((own, k) => {
    const error = Math.max(LEAST_ERROR, stack.candidates[k].error);
    return farDays(own, company, error);
  });
  for (let k = 0; k < count; k++) {
    for (let d = 0; d < length; d++) {
      if (!doubtful[k][d]) continue;
      said[k][d] = Number.NaN;
      doubted[k]++;
    }
  }
  return doubted;
}

function companyOf(said: readonly Float64Array[], target: Float64Array): Float64Array {
  const company = target.slice();
  const values: number[] = [];
  for (let d = 0; d < company.length; d++) {
    if (!Number.isNaN(company[d])) continue;
    values.length = 0;
    for (const own of said) if (!Number.isNaN(own[d])) values.push(own[d]);
    if (values.length < 3) continue;
    values.sort((a, b) => a - b);
    const middle = values.length >> 1;
    company[d] = values.length % 2 === 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
  }
  return company;
}

function farDays(own: Float64Array, company: Float64Array, error: number): Uint8Array {
  const length = own.length;
  const far = new Uint8Array(length);
  const sums = new Float64Array(length + 1);
  let known = 0;
  // days that can be compared before each day
  const before = new Int32Array(length + 1);
  for (let d = 0; d < length; d++) {
    const distance = Math.abs(own[d] - company[d]);
    if (!Number.isNaN(distance)) {
      sums[known + 1] = sums[known] + distance;
      known++;
    }
    before[d + 1] = known;
  }
  for (let d = 0; d < length; d++) {
    const first = Math.max(0, before[d] - REACH);
    const last = Math.min(known, before[d] + REACH + 1);
    const n = last - first;
    if (n >= REACH && sums[last] - sums[first] > TOO_FAR * error * n) far[d] = 1;
  }
  return far;
}
