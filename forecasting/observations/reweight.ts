import type { StageDraws } from '../windows/stage-draws.js';

/** Draws that must carry the evidence at least, as independent ones: below, it is believed only in part. */
const LEAST_CARRIED = 60;

/** Which draws are left when evidence has weighed them, as many as there were. */
export interface Reweighted {
  readonly kept: Int32Array;
  /** 1: the evidence counts whole. Less: hardly a draw agreed with it. */
  readonly believed: number;
}

/**
 * Importance resampling: draw k is kept in proportion to exp(β · logChance[k]), systematically, so that the same
 * weights keep the same draws (Kitagawa 1996, J. Comput. Graph. Stat. 5:1-25: memory). β is 1, or halved until the
 * weights are spread over 60 draws' worth, (Σw)² / Σw².
 */
export function reweighted(logChance: Float64Array): Reweighted {
  let believed = 1;
  for (;;) {
    const weights = weightsOf(logChance, believed);
    if (carriedBy(weights) >= Math.min(LEAST_CARRIED, logChance.length) || believed < 1e-3)
      return { kept: systematic(weights), believed };
    believed /= 2;
  }
}

export function weightsOf(logChance: Float64Array, believed: number): Float64Array {
  let most = Number.NEGATIVE_INFINITY;
  for (const value of logChance) if (value > most) most = value;
  return logChance.map((value) => Math.exp(believed * (value - most)));
}

function carriedBy(weights: Float64Array): number {
  let sum = 0;
  let squares = 0;
  for (const weight of weights) {
    sum += weight;
    squares += weight * weight;
  }
  return (sum * sum) / squares;
}

function systematic(weights: Float64Array): Int32Array {
  const count = weights.length;
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const kept = new Int32Array(count);
  let at = 0;
  let sum = weights[0];
  for (let i = 0; i < count; i++) {
    const level = ((i + 0.5) / count) * total;
    while (sum < level && at < count - 1) sum += weights[++at];
    kept[i] = at;
  }
  return kept;
}

export function keptDraws(draws: StageDraws, kept: Int32Array | null): StageDraws {
  if (kept === null) return draws;
  const pick = (moments: Float64Array) => Float64Array.from(kept, (k) => moments[k]);
  return { first: pick(draws.first), median: pick(draws.median), last: pick(draws.last) };
}
