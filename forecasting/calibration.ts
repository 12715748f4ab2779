/** Factors on what is drawn of the water, so that 80 % intervals hold 80 % of the time. */
export interface Calibration {
  /** On the error of days that other stations fill. */
  readonly filled: number;
  /** On the departures of days to come. */
  readonly projected: number;
}

/**
 * Pooled figures that ship with the project, by how many days of this winter the station itself has read: from the
 * hindcast on open-data at 1 November, 15 December, 1 March and 1 April (docs/forecast-method.md). The more of a
 * winter is read, the better its own errors tell of the rest of it, beyond what the fading model allows for.
 */
const POOLED = [
  { ownDays: 0, filled: 0.95, projected: 1.1 },
  { ownDays: 44, filled: 0.82, projected: 1 },
  { ownDays: 120, filled: 0.78, projected: 0.95 },
  { ownDays: 151, filled: 0.85, projected: 0.9 },
];

/**
 * On the spread shown of single filled days, whose errors have longer tails than a normal error: 80 % of them lie within
 * 1.28 times this share of their standard deviation (hindcast of gaps; what sums over days is drawn, and is not in it).
 */
export const OF_A_FILLED_DAY = 0.92;

/** Straight between the listed days, held beyond the last. */
export function calibration(ownDays: number): Calibration {
  const i = POOLED.findIndex((point) => point.ownDays >= ownDays);
  if (i < 0) return POOLED[POOLED.length - 1];
  if (i === 0) return POOLED[0];
  const [before, after] = [POOLED[i - 1], POOLED[i]];
  const share = (ownDays - before.ownDays) / (after.ownDays - before.ownDays);
  const between = (of: keyof Calibration) => before[of] + share * (after[of] - before[of]);
  return { filled: between('filled'), projected: between('projected') };
}
