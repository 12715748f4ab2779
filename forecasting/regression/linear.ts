import { MultivariateLinearRegression } from 'ml-regression';
import { NoRegression } from './no-regression.js';
import { center, type Standard, standardise } from './standardise.js';

export interface LinearOptions {
  /** One weight a row, 0 or more; all 1 when left out. */
  readonly weights?: ArrayLike<number>;
  /** Ridge penalty on the slopes of the standardised predictors, in units of one row; 0 when left out. */
  readonly ridge?: number;
}

export interface LinearFit {
  readonly intercept: number;
  /** One slope a predictor, in the predictors' own units. */
  readonly slopes: readonly number[];
  readonly n: number;
  /** Fraction of the (weighted) variance explained. */
  readonly r2: number;
  /** √(Σ w e² / (n − predictors − 1)), the residual standard deviation. */
  readonly residualSd: number;
}

/**
 * Linear least squares y = a + Σ bⱼ xⱼ through ml-regression.
 *
 * ml-regression inverts XᵀX, which loses half of the digits when predictors are large or alike, so predictors and
 * y are centred and scaled first and the slopes carried back. A weight w enters as √w times its row. A ridge
 * penalty λ enters as one more row √λ for each standardised predictor with y = 0 (Hoerl & Kennard 1970,
 * Technometrics 12:55-67: memory).
 *
 * @param predictors columns, each as long as y
 * @throws NoRegression when a column is constant, rows are too few, lengths differ or a value is not finite
 * @example fitLinear([[1, 2, 3]], [3, 5, 7.5]) // slope 2.25, intercept 0.667
 */
export function fitLinear(
  predictors: readonly ArrayLike<number>[],
  y: ArrayLike<number>,
  options: LinearOptions = {},
): LinearFit {
  const n = y.length;
  const p = predictors.length;
  const weights = rowWeights(options.weights, n);
  if (predictors.some((x) => x.length !== n)) throw new NoRegression('uneven', 'columns differ in length');
  if (weights.used < p + 2) {
    throw new NoRegression('too-few', `${weights.used} rows are too few for ${p} predictors`);
  }
  const columns = predictors.map((x) => standardise(x, weights.of, weights.total));
  const response = center(y, weights.of, weights.total);
  const flat = columns.findIndex((c) => !(c.sd > 0));
  if (flat >= 0) throw new NoRegression('constant', `predictor ${flat + 1} does not vary`);
  const slopes = standardSlopes(columns, response, weights.of, options.ridge ?? 0);
  return carriedBack(columns, response, slopes, weights);
}

interface RowWeights {
  readonly of: Float64Array;
  readonly total: number;
  readonly used: number;
}

function rowWeights(given: ArrayLike<number> | undefined, n: number): RowWeights {
  const of = new Float64Array(n).fill(1);
  if (given === undefined) return { of, total: n, used: n };
  if (given.length !== n) throw new NoRegression('uneven', 'there is not one weight a row');
  let total = 0;
  let used = 0;
  for (let i = 0; i < n; i++) {
    if (!(given[i] >= 0)) throw new NoRegression('not-finite', `weight ${i + 1} is ${given[i]}`);
    of[i] = given[i];
    total += given[i];
    if (given[i] > 0) used++;
  }
  return { of, total, used };
}

function standardSlopes(
  columns: readonly Standard[],
  response: Standard,
  weights: Float64Array,
  ridge: number,
): number[] {
  const scale = response.sd > 0 ? response.sd : 1;
  const x: number[][] = [];
  const y: number[][] = [];
  for (let i = 0; i < weights.length; i++) {
    const root = Math.sqrt(weights[i]);
    if (root === 0) continue;
    x.push(columns.map((c) => root * c.z[i]));
    y.push([(root * response.z[i]) / scale]);
  }
  if (ridge > 0) {
    for (let j = 0; j < columns.length; j++) {
      x.push(columns.map((_, k) => (k === j ? Math.sqrt(ridge) : 0)));
      y.push([0]);
    }
  }
  const fit = new MultivariateLinearRegression(x, y, { intercept: false, statistics: false });
  const slopes = fit.weights.map((row) => row[0] * scale);
  if (!slopes.every(Number.isFinite)) throw new NoRegression('collinear', 'predictors say the same');
  return slopes;
}

function carriedBack(
  columns: readonly Standard[],
  response: Standard,
  standard: readonly number[],
  weights: RowWeights,
): LinearFit {
  const n = weights.of.length;
  const slopes = standard.map((b, j) => b / columns[j].sd);
  const intercept = slopes.reduce((a, b, j) => a - b * columns[j].mean, response.mean);
  let left = 0;
  let all = 0;
  for (let i = 0; i < n; i++) {
    let e = response.z[i];
    for (let j = 0; j < columns.length; j++) e -= standard[j] * columns[j].z[i];
    left += weights.of[i] * e * e;
    all += weights.of[i] * response.z[i] * response.z[i];
  }
  return {
    intercept,
    slopes,
    n: weights.used,
    r2: all > 0 ? 1 - left / all : 0,
    residualSd: Math.sqrt(left / (weights.used - columns.length - 1)),
  };
}
