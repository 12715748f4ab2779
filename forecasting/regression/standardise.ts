import { NoRegression } from './no-regression.js';

/** A column about its weighted mean; `z` is divided by `sd` where the column was scaled. */
export interface Standard {
  readonly z: Float64Array;
  readonly mean: number;
  readonly sd: number;
}

/** x − x̄, unscaled. */
export function center(x: ArrayLike<number>, weights: Float64Array, total: number): Standard {
  const z = new Float64Array(x.length);
  let mean = 0;
  for (let i = 0; i < x.length; i++) {
    if (!Number.isFinite(x[i])) throw new NoRegression('not-finite', `row ${i + 1} holds ${x[i]}`);
    mean += weights[i] * x[i];
  }
  mean /= total;
  // a second pass takes away what rounding left in the first mean
  let rest = 0;
  for (let i = 0; i < x.length; i++) rest += weights[i] * (x[i] - mean);
  mean += rest / total;
  let squares = 0;
  for (let i = 0; i < x.length; i++) {
    z[i] = x[i] - mean;
    squares += weights[i] * z[i] * z[i];
  }
  const sd = Math.sqrt(squares / total);
  return { z, mean, sd: sd > 1e-12 * Math.max(1, Math.abs(mean)) ? sd : 0 };
}

/** (x − x̄)/s. */
export function standardise(x: ArrayLike<number>, weights: Float64Array, total: number): Standard {
  const centred = center(x, weights, total);
  if (centred.sd > 0) for (let i = 0; i < centred.z.length; i++) centred.z[i] /= centred.sd;
  return centred;
}
