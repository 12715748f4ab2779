import { calibration, OF_A_FILLED_DAY } from './calibration.js';
import { Origin } from './day-series.js';
import { type StackEstimate, stackEstimate } from './gaps/estimate.js';
import { fillErrors, type Sightings } from './gaps/fill.js';
import type { Place } from './place.js';
import { departureFading } from './projection/departure-fading.js';
import { drawnDepartures } from './projection/departures.js';
import { normalPool } from './projection/normal-pool.js';
import { fadingSmoother, NORMALS_A_DAY } from './residual/fading.js';

/** What is known of the season at hand on the as-of day: nothing later is in it. */
export interface View {
  /** The station's own days on the axis. */
  readonly target: Float64Array;
  /** The days of each candidate of the place's stack, in its order. */
  readonly neighbours: readonly Float64Array[];
  /** What people saw, on the days of the window. */
  readonly seen: Sightings;
}

/** The water on the days of the window: possible courses of it and what they have in common. */
export interface PossibleWaters {
  readonly traces: readonly Float64Array[];
  readonly mean: Float64Array;
  readonly spread: Float64Array;
  readonly origin: Uint8Array;
  readonly estimate: StackEstimate;
}

/**
 * Courses the water may take: measured days as they are, days the neighbours speak for with the stack's fading
 * error, the rest as departures from normal that start from where the known days end. Each course is a whole
 * winter, floored at freezing in such a way that the mean stays what it was.
 */
export function possibleWaters(
  place: Place,
  view: View,
  seed: number,
  traces: number,
  estimate = estimateOf(place, view),
): PossibleWaters {
  const { window } = place;
  const { start, to } = window;
  const length = to - start;
  const origin = new Uint8Array(length);
  const known = new Float64Array(length).fill(Number.NaN);
  for (let d = 0; d < length; d++) {
    const own = view.target[start + d];
    if (!Number.isNaN(own)) {
      origin[d] = Origin.measured;
      known[d] = own;
    } else if (!Number.isNaN(estimate.mean[d])) origin[d] = Origin.filled;
  }
  let ownDays = 0;
  for (let d = window.from - start; d < length; d++) if (origin[d] === Origin.measured) ownDays++;
  const factor = calibration(ownDays);
  const courses = Array.from({ length: traces }, () => known.slice());
  const best = known.slice();
  const filled = drawFilled(place, view, estimate, origin, courses, best, seed, factor.filled);
  drawProjected(place, view.seen, origin, courses, best, seed, factor.projected);
  return { traces: courses, mean: best, spread: spreadOf(courses, best, origin, filled), origin, estimate };
}

/** What the neighbours say of the days of the window: all that possible waters take from them. */
export function estimateOf({ axis, stack, window }: Place, { neighbours, target }: View): StackEstimate {
  return stackEstimate(axis, stack, neighbours, target, window.start, window.to);
}

/** Whether an estimate fills any day of the window that the station itself does not have. */
export function fillsAny(
  { window }: Place,
  { target }: Pick<View, 'target'>,
  { mean }: StackEstimate,
): boolean {
  return mean.some((said, d) => !Number.isNaN(said) && Number.isNaN(target[window.start + d]));
}

function drawFilled(
  place: Place,
  view: View,
  estimate: StackEstimate,
  origin: Uint8Array,
  courses: readonly Float64Array[],
  best: Float64Array,
  seed: number,
  wider: number,
): Float64Array {
  if (!origin.includes(Origin.filled)) return new Float64Array(best.length);
  const length = best.length;
  const normals = normalPool(seed + 1, ((courses.length + 1) >> 1) * length * NORMALS_A_DAY);
  const { axis, stack } = place;
  const errors = fillErrors(axis, stack, estimate, view.target, view.seen, wider, normals);
  const error = new Float64Array(length);
  for (let d = 0; d < length; d++) {
    if (origin[d] === Origin.filled) best[d] = Math.max(0, estimate.mean[d] + errors.mean[d]);
  }
  for (let i = 0; i < courses.length; i++) {
    errors.write(pathOf(i, courses.length), error);
    for (let d = 0; d < length; d++)
      if (origin[d] === Origin.filled) courses[i][d] = estimate.mean[d] + error[d];
  }
  floorKeepingMean(courses, best, origin, Origin.filled);
  return errors.smoother.variance.map((variance) => OF_A_FILLED_DAY * wider * Math.sqrt(variance));
}

/** An odd number of courses has one in the middle, without a drawn error. */
function pathOf(course: number, count: number): number {
  return count % 2 === 1 && course === count - 1 ? -1 : course;
}

function drawProjected(
  place: Place,
  seen: Sightings,
  origin: Uint8Array,
  courses: readonly Float64Array[],
  best: Float64Array,
  seed: number,
  wider: number,
): void {
  const { axis, window, normals } = place;
  const length = best.length;
  const usual = new Float64Array(length);
  const sd = new Float64Array(length);
  const noise = new Float64Array(length);
  let missing = false;
  for (let d = 0; d < length; d++) {
    const day = axis.seasonDay[window.start + d];
    usual[d] = normals.mean[day];
    sd[d] = normals.sd[day];
    if (Number.isNaN(usual[d])) noise[d] = Number.NaN;
    else noise[d] = origin[d] === Origin.none ? seen.variance[d] : 0;
    if (origin[d] === Origin.none && !Number.isNaN(usual[d])) {
      origin[d] = Origin.projected;
      missing = true;
    }
  }
  if (!missing) return;
  const smoother = fadingSmoother(departureFading(usual), sd, noise);
  const carried = new Float64Array(length);
  const apart = new Float64Array(length);
  const drawn = new Float64Array(length);
  const sighted = new Float64Array(length);
  const slip = noise.some((variance) => variance > 0) ? normalPool(seed + 2, courses.length) : null;
  for (let d = 0; d < length; d++) {
    const projected = origin[d] === Origin.projected;
    sighted[d] = projected ? seen.celsius[d] - usual[d] : Number.NaN;
    apart[d] = projected ? sighted[d] : best[d] - usual[d];
  }
  smoother.smooth(apart, carried);
  for (let d = 0; d < length; d++) {
    if (origin[d] === Origin.projected) best[d] = Math.max(0, usual[d] + carried[d]);
  }
  const draw = drawnDepartures(place.members, sd, seed, courses.length, wider);
  for (let i = 0; i < courses.length; i++) {
    const course = courses[i];
    const path = pathOf(i, courses.length);
    if (path < 0) drawn.fill(0);
    else draw(path, drawn);
    for (let d = 0; d < length; d++) apart[d] = course[d] - usual[d] - drawn[d];
    if (slip !== null) {
      for (let d = 0; d < length; d++) {
        if (noise[d] > 0) apart[d] = sighted[d] - drawn[d] + slip[i] * Math.sqrt(noise[d]);
      }
    }
    smoother.smooth(apart, carried);
    for (let d = 0; d < length; d++) {
      if (origin[d] === Origin.projected) course[d] = usual[d] + drawn[d] + carried[d];
    }
  }
  floorKeepingMean(courses, best, origin, Origin.projected);
}

/**
 * Water is not colder than 0, and cutting off what lies below warms the mean: courses near freezing are scaled so
 * that their mean stays the best value. Over five months on the ice plateau the difference is a day or two of hatch.
 */
function floorKeepingMean(
  courses: readonly Float64Array[],
  best: Float64Array,
  origin: Uint8Array,
  which: Origin,
): void {
  for (let d = 0; d < best.length; d++) {
    if (origin[d] !== which) continue;
    let sum = 0;
    for (const course of courses) {
      if (course[d] < 0) course[d] = 0;
      sum += course[d];
    }
    const scale = sum > 0 ? (best[d] * courses.length) / sum : 1;
    for (const course of courses) course[d] *= scale;
  }
}

function spreadOf(
  courses: readonly Float64Array[],
  best: Float64Array,
  origin: Uint8Array,
  filled: Float64Array,
): Float64Array {
  return best.map((mean, d) => {
    if (origin[d] === Origin.measured) return 0;
    if (origin[d] === Origin.filled) return filled[d];
    if (origin[d] === Origin.none) return Number.NaN;
    let squares = 0;
    for (const course of courses) squares += (course[d] - mean) ** 2;
    return Math.sqrt(squares / courses.length);
  });
}
