import jStat from 'jstat';

/**
 * The winters that the spread of a day, pooled over days and stations, counts for in the traces beside the winters
 * at hand (ours; the same figure as in `projection/departures`).
 */
const POOLED_WINTERS = 3;

const Z90 = jStat.normal.inv(0.9, 0, 1);

/**
 * How much wider an 80 % interval must be because its spread is itself an estimate from n winters; the error of their
 * mean, √(1 + 1/n), comes beside it. It is drawn into the courses of the water, once (see `projection/departures` and
 * `gaps/stack`): nothing built on them widens again.
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
