import type { FadingModel } from '../residual/fading.js';

/** Memory of the slow part while the water still cools, days. */
const COOLING_DAYS = 22;
/** The same from the winter's low on, days (tried 22-120: flat from 45 to 90). */
const AFTER_DAYS = 60;
/** The winter's low begins where the usual water is within so much of its lowest, °C (tried 0.5, 1, 2). */
const NEAR_LOWEST = 1;

/**
 * How a departure from normal lives on from day to day (see `fading`). Water that cools soon forgets how warm the
 * autumn was; what it strays by from the winter's low on, it keeps for longer.
 *
 * @param usual the normal water on the days of a window, °C; NaN where there is none
 */
export function departureFading(usual: Float64Array): FadingModel {
  let lowest = Number.POSITIVE_INFINITY;
  for (const celsius of usual) if (celsius < lowest) lowest = celsius;
  const low = usual.findIndex((celsius) => celsius <= lowest + NEAR_LOWEST);
  const slowDays = usual.map((_, d) => (low < 0 || d < low ? COOLING_DAYS : AFTER_DAYS));
  return { slowDays, fastDays: 8, slowShare: 0.4, fastShare: 0.55 };
}
