import { nearby } from './expected.js';
import type { Finding } from './finding.js';
import { firstHourOf, median, startOfHour } from './hours.js';
import type { Judged } from './record.js';
import { runs } from './winter/in-air.js';

/** How far the middle of a week has to stand off what the neighbours say: °C, and usual errors (ours). */
const OFF = 1.25;
const USUAL_ERRORS = 5;
const HALF_WEEK = 3;
/** A flood or a warm spring lasts days; a fault stays (ours). */
const LEAST_DAYS = 8;
/** Days of both records without which neighbours say nothing (ours). */
const LEAST_TOGETHER = 60;

/**
 * QARTOD's suggested neighbour test: weeks in which the daily mean departs from what the neighbours' water says,
 * each season by its own usual difference. A sensor that drifts or slips shows here; a bank that warms does too, so
 * it suspects only.
 */
export function departsFromNeighbours(record: Judged): Finding[] {
  if (record.kind === 'air' || record.kind === 'tank' || record.neighbours.length === 0) return [];
  const { days } = record;
  const around = nearby(record);
  const water = days.mean.map((_, d) => around(days.firstDay + d).water);
  const together = days.mean.map((mean, d) => (Number.isFinite(mean - water[d]) ? 1 : 0));
  if (together.reduce((sum, one) => sum + one, 0) < LEAST_TOGETHER) return [];
  const { slope, intercept } = robustLine(water, days.mean);
  const off = days.mean.map((mean, d) => mean - slope * water[d] - intercept);
  const usual = 1.4826 * median(off.map(Math.abs));
  const limit = Math.max(OFF, USUAL_ERRORS * usual);
  const weeks = off.map((_, d) => median(off.subarray(Math.max(0, d - HALF_WEEK), d + HALF_WEEK + 1)));
  const marked = Uint8Array.from(weeks, (one, d) => (Math.abs(one) > limit && together[d] === 1 ? 1 : 0));
  return runs(marked, 2).flatMap(({ first, last, days: held }): Finding[] =>
    held < LEAST_DAYS
      ? []
      : [
          {
            kind: 'neighbour',
            from: startOfHour(firstHourOf(days.firstDay + first, record.offsetMinutes)),
            to: startOfHour(firstHourOf(days.firstDay + last + 1, record.offsetMinutes)) - 1,
            flag: 3,
            figures: {
              off: median(off.subarray(first, last + 1)),
              limit,
              days: last - first + 1,
              neighbours: record.neighbours.length,
            },
            offer: null,
          },
        ],
  );
}

/** Least squares, then once more without the tenth that fits worst. */
function robustLine(x: Float64Array, y: Float64Array): { slope: number; intercept: number } {
  const all = [...x.keys()].filter((i) => Number.isFinite(x[i]) && Number.isFinite(y[i]));
  let line = leastSquares(all, x, y);
  for (let round = 0; round < 3; round++) {
    const { slope, intercept } = line;
    const kept = [...all]
      .sort((a, b) => Math.abs(y[a] - slope * x[a] - intercept) - Math.abs(y[b] - slope * x[b] - intercept))
      .slice(0, Math.ceil(all.length * 0.75));
    line = leastSquares(kept, x, y);
  }
  return line;
}

function leastSquares(
  at: readonly number[],
  x: Float64Array,
  y: Float64Array,
): { slope: number; intercept: number } {
  const [mx, my] = [x, y].map((column) => at.reduce((sum, i) => sum + column[i], 0) / at.length);
  const sxx = at.reduce((sum, i) => sum + (x[i] - mx) ** 2, 0);
  const slope = sxx < 1e-6 ? 0 : at.reduce((sum, i) => sum + (x[i] - mx) * (y[i] - my), 0) / sxx;
  return { slope, intercept: my - slope * mx };
}
