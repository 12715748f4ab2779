import jStat from 'jstat';

/**
 * The winters that the spread of a day, pooled over days and stations, counts for in the traces beside the winters
 * at hand (ours; the same figure as in `projection/departures`).
 */
const POOLED_WINTERS = 3;

const Z90 = jStat.normal.inv(0.9, 0, 1);

/**
 * How much wider the 80 % interval of a projection must be, because the spread of its traces is itself an estimate
 * from n winters; the error of their mean, √(1 + 1/n), is already within the traces.
 *
 *     t(0.9; v) / z(0.9),   v = n - 1 + 3 degrees of freedom
 *
 * 1 without winters: a stated curve brings its own spread.
 *
 * @example widerFor(1) // 1.28; for 4 winters 1.12, for 12 1.05
 */
export function widerFor(winters: number): number {
  return winters < 1 ? 1 : jStat.studentt.inv(0.9, winters - 1 + POOLED_WINTERS) / Z90;
}

/**
 * What to add to the progress that the projected days bring in each trace, so that traces stray from their mean that
 * much more. The offset each trace carries is taken out first: it is no difference between winters.
 *
 * @param projected progress that the projected days bring, one value a trace
 */
export function fewWinters(projected: Float64Array, offset: Float64Array, winters: number): Float64Array {
  const more = widerFor(winters) - 1;
  return withoutOffset(projected, offset).map((rest) => more * rest);
}

/** What is left of y after its mean and its straight-line dependence on x are taken out. */
function withoutOffset(y: Float64Array, x: Float64Array): Float64Array {
  const centre = mean(y);
  const middle = mean(x);
  let xy = 0;
  let xx = 0;
  for (let i = 0; i < y.length; i++) {
    xy += (x[i] - middle) * (y[i] - centre);
    xx += (x[i] - middle) ** 2;
  }
  const slope = xx > 0 ? xy / xx : 0;
  return y.map((value, i) => value - centre - slope * (x[i] - middle));
}

function mean(values: Float64Array): number {
  let sum = 0;
  for (const value of values) sum += value;
  return sum / values.length;
}
