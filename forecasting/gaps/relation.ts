import { BINS, readBins, seasonKernel, spreadOverSeason } from '../residual/season-kernel.js';
import { SUMS } from './pair-sums.js';

/**
 * A station's water from another's, by season: y = a(s) + b(s) x. One line for the whole year misleads: in winter
 * both lie on the ice plateau, at the melt one leads the other.
 */
export interface Relation {
  readonly intercept: Float64Array;
  readonly slope: Float64Array;
  /** The one line through all days. */
  readonly overall: Line;
}

/** Ordinary least squares through all days. */
export interface Line {
  readonly slope: number;
  readonly intercept: number;
  readonly n: number;
  readonly r2: number;
  /** Root mean square of what the line leaves, °C. */
  readonly error: number;
}

/** Standard deviation of the bell that says which days of other seasons speak for a day (tried 10, 15, 20, 30 d). */
const KERNEL = seasonKernel(15);
/** Pull of the local slope to the overall one, °C²·day (tried 3-300). */
const SLOPE_PULL = 8;
/** Pull of the local level to the overall line, days (tried 1-90: the level of the season is worth trusting). */
const LEVEL_PULL = 5;

/**
 * Local regression with a bell over the day of the season (Cleveland & Devlin 1988, J. Am. Stat. Assoc.
 * 83:596-610, without its robust steps: memory), its slope shrunk to the slope of all days as a ridge does:
 *
 *     b(s) = (Sxy(s) + λ B) / (Sxx(s) + λ)
 *     a(s) = A + B x̄(s) + n/(n + κ) · (ȳ(s) − A − B x̄(s)) − b(s) x̄(s)
 *
 * @returns null when x does not vary or fewer than `least` days are shared
 */
export function fitRelation(sums: Float64Array, least: number): Relation | null {
  const overall = overallLine(sums, least);
  if (overall === null) return null;
  const local = spreadOverSeason(sums, SUMS, KERNEL);
  const slope = new Float64Array(BINS).fill(overall.slope);
  const intercept = new Float64Array(BINS).fill(overall.intercept);
  for (let bin = 0; bin < BINS; bin++) {
    const at = bin * SUMS;
    const n = local[at];
    if (!(n > 0.01)) continue;
    const x = local[at + 1] / n;
    const y = local[at + 2] / n;
    const b =
      (local[at + 4] - n * x * y + SLOPE_PULL * overall.slope) / (local[at + 3] - n * x * x + SLOPE_PULL);
    const line = overall.intercept + overall.slope * x;
    slope[bin] = b;
    intercept[bin] = line + (n / (n + LEVEL_PULL)) * (y - line) - b * x;
  }
  return { intercept, slope, overall };
}

/** The line through the days of the bins from..to−1; null with fewer than `least` days or an x that does not vary. */
export function overallLine(sums: Float64Array, least: number, from = 0, to = BINS): Line | null {
  const all = new Float64Array(SUMS);
  for (let at = from * SUMS; at < to * SUMS; at += SUMS) {
    for (let c = 0; c < SUMS; c++) all[c] += sums[at + c];
  }
  const [n, sx, sy, xx, xy, yy] = all;
  if (n < least) return null;
  const varX = xx - (sx * sx) / n;
  const varY = yy - (sy * sy) / n;
  const cov = xy - (sx * sy) / n;
  if (!(varX > 1e-6 * n)) return null;
  const slope = cov / varX;
  const r2 = varY > 1e-6 * n ? (cov * cov) / (varX * varY) : 0;
  const error = Math.sqrt(Math.max(0, varY - slope * cov) / n);
  return { slope, intercept: (sy - slope * sx) / n, n, r2, error };
}

/** The station's water on a day of the season on which the other has x, floored at freezing. */
export function relate(relation: Relation, seasonDay: number, x: number): number {
  const y = readBins(relation.intercept, seasonDay) + readBins(relation.slope, seasonDay) * x;
  return Math.max(0, y);
}
