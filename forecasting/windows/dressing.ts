import jStat from 'jstat';
import { sortedQuantile } from './draws.js';

/**
 * The winters that the spread of a day, pooled over days and stations, counts for in the traces beside the winters
 * at hand (ours; the same figure as in `projection/departures`).
 */
const POOLED_WINTERS = 3;

const Z90 = jStat.normal.inv(0.9, 0, 1);

/**
 * Standard deviation of the normal error to add to the progress that a projection brings, so that few winters do not
 * promise too much. The traces are normal with a spread estimated from n winters, the error of their mean
 * (√(1 + 1/n)) within them; that the spread is itself an estimate makes the 80 % interval
 *
 *     t(0.9; v) / z(0.9) times as wide, v = n - 1 + 3 degrees of freedom:
 *
 * 1.28 for one winter, 1.12 for four, 1.05 for twelve.
 *
 * @param projected progress that the projected days bring, one value a trace
 * @param offset the offset each trace carries, taken out first: it is no difference between winters
 * @param winters independent past winters behind the traces; with none (a stated curve) nothing is added
 */
export function dressing(projected: Float64Array, offset: Float64Array, winters: number): number {
  if (winters < 1 || projected.length === 0) return 0;
  const rest = withoutOffset(projected, offset).sort();
  const shown = (sortedQuantile(rest, 0.9) - sortedQuantile(rest, 0.1)) / 2;
  const wider = jStat.studentt.inv(0.9, winters - 1 + POOLED_WINTERS) / Z90;
  return (shown * Math.sqrt(wider ** 2 - 1)) / Z90;
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
