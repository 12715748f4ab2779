import { type ConditionalErrors, conditionalErrors } from '../residual/conditional.js';
import { type FadingModel, fadingSmoother } from '../residual/fading.js';
import { readBins } from '../residual/season-kernel.js';
import type { SeasonAxis } from '../season-axis.js';
import type { StackEstimate } from './estimate.js';
import type { Stack } from './stack.js';

/** How the error of the stacked estimate lives on from day to day (see `fading`; tried 45-200 d, 4-15 d). */
export const FILL: FadingModel = { slowDays: 75, fastDays: 6, slowShare: 0.45, fastShare: 0.45 };

/**
 * The stacked estimate with the errors that the target's own days show, carried into the gap from both of its ends.
 *
 * @param target the station's own days on the axis
 * @param sightings variance of a sighting's error by day of the estimate, NaN where none; and its value
 */
export function fillErrors(
  axis: SeasonAxis,
  stack: Stack,
  estimate: StackEstimate,
  target: Float64Array,
  seen: Sightings,
  wider: number,
  normals: Float64Array,
): ConditionalErrors {
  const { sd, noise, errors } = observedErrors(axis, stack, estimate, target, seen);
  return conditionalErrors(FILL, sd, noise, errors, wider, normals);
}

/** What people saw, on the days of a window: a value and the variance of its error; NaN where nothing. */
export interface Sightings {
  readonly celsius: Float64Array;
  readonly variance: Float64Array;
}

function observedErrors(
  axis: SeasonAxis,
  stack: Stack,
  estimate: StackEstimate,
  target: Float64Array,
  seen: Sightings | null,
): { sd: Float64Array; noise: Float64Array; errors: Float64Array } {
  const length = estimate.mean.length;
  const sd = new Float64Array(length);
  const noise = new Float64Array(length).fill(Number.NaN);
  const errors = new Float64Array(length);
  for (let d = 0; d < length; d++) {
    const i = estimate.from + d;
    const known = !Number.isNaN(estimate.mean[d]);
    sd[d] = known ? estimate.sd[d] : readBins(stack.sd, axis.seasonDay[i]);
    if (!known) continue;
    if (!Number.isNaN(target[i])) {
      noise[d] = 0;
      errors[d] = target[i] - estimate.mean[d];
    } else if (seen !== null && !Number.isNaN(seen.variance[d])) {
      noise[d] = seen.variance[d];
      errors[d] = seen.celsius[d] - estimate.mean[d];
    }
  }
  return { sd, noise, errors };
}

/** The target's days with the gaps of an estimate's span filled by its best value. */
export function filledRecord(
  axis: SeasonAxis,
  stack: Stack,
  estimate: StackEstimate,
  target: Float64Array,
): Float64Array {
  const record = target.slice();
  const { sd, noise, errors } = observedErrors(axis, stack, estimate, target, null);
  const bridged = new Float64Array(sd.length);
  fadingSmoother(FILL, sd, noise).smooth(errors, bridged);
  for (let d = 0; d < sd.length; d++) {
    const i = estimate.from + d;
    if (!Number.isNaN(record[i]) || Number.isNaN(estimate.mean[d])) continue;
    record[i] = Math.max(0, estimate.mean[d] + bridged[d]);
  }
  return record;
}
