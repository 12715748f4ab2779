import { type DaySeries, emptyDays, Origin } from './day-series.js';
import type { DayNumber } from './units.js';

/** One station's readings of one quantity as columns, in order of time. */
export interface ReadingColumns {
  /** Milliseconds since 1970-01-01T00:00Z, never falling. */
  readonly at: Float64Array;
  /** °C (or m, m³/s); NaN is a missing reading. */
  readonly value: Float64Array;
  /** 1 where the reading is good or suspect but kept; null when all are. */
  readonly usable: Uint8Array | null;
  /** 'instant': values at moments; 'day': each value is the mean of the local day its instant falls in. */
  readonly span: 'instant' | 'day';
}

export interface DailyMeansOptions {
  /** The station's fixed standard-time offset, minutes east of UTC (−210 for UTC−03:30). */
  readonly offsetMinutes: number;
  /** Days wanted; the days the readings touch when left out. */
  readonly firstDay?: DayNumber;
  readonly lastDay?: DayNumber;
}

const MS_DAY = 86_400_000;
const MS_HOUR = 3_600_000;
/** A longer stretch without a usable reading is a hole: nothing is interpolated in it. */
export const LONGEST_HOLE_HOURS = 6;
/** A day with less of it covered is a gap day. */
export const LEAST_COVERAGE = 0.75;
/** A reading answers for as long as the day's usual step, and for an hour at least, so that a logger whose
 * step changes at noon is not counted as half missing. */
const LEAST_STEP_HOURS = 1;

/**
 * Daily means of one station: the time-weighted (trapezoid) mean over the local standard day, the least and
 * greatest reading, and the fraction covered.
 *
 * Between readings at most 6 h apart the water is taken as a straight line; midnight is interpolated. A day is
 * measured when at least 75 % of it is covered by usable readings and no hole in it exceeds 6 h; otherwise it
 * is a gap day: mean, min and max NaN, origin none, its coverage kept. Two readings further apart than the day's
 * usual step cover only that step, so that many short holes add up.
 *
 * `span: 'day'` passes daily means through with coverage 1; their least and greatest are not known and stay NaN.
 * Two values for one day: the later row stands.
 *
 * @returns days in a row, also those without a reading; no days at all when there is no usable reading and no
 *   range is asked for.
 * @throws RangeError where the columns differ in length or time falls.
 */
export function dailyMeans(readings: ReadingColumns, options: DailyMeansOptions): DaySeries {
  const kept = usableReadings(readings);
  const shift = options.offsetMinutes * 60_000;
  const count = kept.at.length;
  const firstDay = options.firstDay ?? (count > 0 ? Math.floor((kept.at[0] + shift) / MS_DAY) : 0);
  const lastDay = options.lastDay ?? (count > 0 ? Math.floor((kept.at[count - 1] + shift) / MS_DAY) : -1);
  const days = emptyDays(firstDay, Math.max(0, lastDay - firstDay + 1));
  if (readings.span === 'day') passThrough(kept, days, shift);
  else integrate(kept, days, shift);
  return days;
}

interface Kept {
  readonly at: Float64Array;
  readonly value: Float64Array;
}

function usableReadings({ at, value, usable }: ReadingColumns): Kept {
  if (value.length !== at.length || (usable !== null && usable.length !== at.length)) {
    throw new RangeError(`columns of ${at.length} instants and ${value.length} values do not agree`);
  }
  // Long records come whole and in order as a rule: then nothing is copied.
  let whole = usable === null;
  for (let i = 0; i < at.length; i++) {
    if (i > 0 && at[i] < at[i - 1]) throw new RangeError(`time falls at reading ${i}`);
    whole &&= Number.isFinite(value[i]);
  }
  if (whole) return { at, value };
  const kept = { at: new Float64Array(at.length), value: new Float64Array(at.length) };
  let count = 0;
  for (let i = 0; i < at.length; i++) {
    if ((usable !== null && usable[i] === 0) || !Number.isFinite(value[i])) continue;
    kept.at[count] = at[i];
    kept.value[count] = value[i];
    count++;
  }
  return { at: kept.at.subarray(0, count), value: kept.value.subarray(0, count) };
}

function passThrough(kept: Kept, days: DaySeries, shift: number): void {
  for (let i = 0; i < kept.at.length; i++) {
    const d = Math.floor((kept.at[i] + shift) / MS_DAY) - days.firstDay;
    if (d < 0 || d >= days.mean.length) continue;
    days.mean[d] = kept.value[i];
    days.coverage[d] = 1;
    days.spread[d] = 0;
    days.origin[d] = Origin.measured;
  }
}

function integrate(kept: Kept, days: DaySeries, shift: number): void {
  let next = 0;
  for (let d = 0; d < days.mean.length; d++) {
    const start = (days.firstDay + d) * MS_DAY - shift;
    const end = start + MS_DAY;
    while (next < kept.at.length && kept.at[next] < start) next++;
    let after = next;
    while (after < kept.at.length && kept.at[after] < end) after++;
    if (after === next) continue;
    integrateDay(kept, next, after, start, days, d);
    next = after;
  }
}

/** The day that starts at `start` and holds readings from..to−1. */
function integrateDay(kept: Kept, from: number, to: number, start: number, days: DaySeries, d: number): void {
  const { at, value } = kept;
  const end = start + MS_DAY;
  const longest = LONGEST_HOLE_HOURS * MS_HOUR;
  const first = Math.max(1, from);
  const last = Math.min(at.length - 1, to);
  const step = usualStep(at, first, last);
  let area = 0;
  let joined = 0;
  let covered = 0;
  let hole = Math.max(at[from] - start, 0);
  for (let i = first; i <= last; i++) {
    const length = at[i] - at[i - 1];
    if (length === 0) continue;
    const left = Math.max(at[i - 1], start);
    const right = Math.min(at[i], end);
    if (length > longest) {
      hole = Math.max(hole, right - left);
      continue;
    }
    const slope = (value[i] - value[i - 1]) / length;
    const middle = value[i - 1] + slope * ((left + right) / 2 - at[i - 1]);
    area += middle * (right - left);
    joined += right - left;
    covered += (right - left) * Math.min(1, step / length);
    if (i === from) hole = 0;
  }
  if (to === at.length) hole = Math.max(hole, end - at[to - 1]);
  days.coverage[d] = covered / MS_DAY;
  if (hole > longest || days.coverage[d] < LEAST_COVERAGE) return;
  days.mean[d] = area / joined;
  days.spread[d] = 0;
  days.origin[d] = Origin.measured;
  let least = value[from];
  let greatest = value[from];
  for (let i = from + 1; i < to; i++) {
    if (value[i] < least) least = value[i];
    if (value[i] > greatest) greatest = value[i];
  }
  days.min[d] = least;
  days.max[d] = greatest;
}

/** Median step between the readings of a day and the two beside it, an hour at least and six at most. */
function usualStep(at: Float64Array, first: number, last: number): number {
  const median = evenStep(at, first, last) ?? medianStep(at, first, last);
  return Math.min(LONGEST_HOLE_HOURS, Math.max(LEAST_STEP_HOURS, median / MS_HOUR)) * MS_HOUR;
}

function medianStep(at: Float64Array, first: number, last: number): number {
  const steps = at.slice(first, last + 1);
  for (let i = 0; i < steps.length; i++) steps[i] -= at[first + i - 1];
  steps.sort();
  return steps.length > 0 ? steps[steps.length >> 1] : 0;
}

/** The step of readings that are all equally far apart; null where they are not, or none was taken. */
function evenStep(at: Float64Array, first: number, last: number): number | null {
  if (last < first) return null;
  const step = at[first] - at[first - 1];
  for (let i = first + 1; i <= last; i++) if (at[i] - at[i - 1] !== step) return null;
  return step;
}
