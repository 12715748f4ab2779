import { nearby, waterAtHour } from '../expected.js';
import type { Finding } from '../finding.js';
import { extremes, HOUR, hourAt, median, startOfHour } from '../hours.js';
import type { Judged } from '../record.js';

/** Water that flows is not colder than this; a lower reading that also swings is air (Osterkamp et al. 1983: −0.04). */
const NO_WATER = -0.7;
/** A day's swing from which a reading below 0 follows the air and not ice, °C (ours). */
const COLD_SWING = 1.5;
/** A day's swing that a stream shows only in the open and in summer, °C, and how many times the usual one (ours). */
const WIDE_SWING = 4;
const TIMES_USUAL = 2.5;
/** Days on which the neighbours swing less say nothing of how much more the station does, °C (ours). */
const TELLING_SWING = 0.7;
/** How far from the neighbours' water, and how near the air, a day has to be, °C (ours). */
const OFF_WATER = 4;
/** Air swings more than water also on a dull day: by this many times at least (ours). */
const ELSEWHERE_SWING = 1.6;
const NEAR_AIR = 3.5;
/** Days inside a stretch in air that look like water all the same (a mild and cloudy day), at most (ours). */
const BRIDGED = 4;

/**
 * Lying in air: days whose swing no water has (several times that of the neighbours, or that of the weeks around), or
 * that go below freezing and swing, or that stand at the air's temperature while the neighbours' water is elsewhere.
 */
export function inAir(record: Judged): Finding[] {
  const { days } = record;
  const around = nearby(record);
  const length = days.mean.length;
  const like = new Uint8Array(length);
  const usual = usualSwings(days.swing);
  // A shallow arm swings more than its neighbours every day: what counts is beyond its own habit.
  const shares = days.swing.map((swing, d) => {
    const { waterSwing } = around(days.firstDay + d);
    return waterSwing >= TELLING_SWING ? swing / waterSwing : Number.NaN;
  });
  const ratio = Math.max(0.5, Math.min(3, median(shares) || 1));
  for (let d = 0; d < length; d++) {
    const [mean, swing, min] = [days.mean[d], days.swing[d], days.min[d]];
    if (Number.isNaN(mean)) continue;
    const { water, waterSwing, air, airSwing } = around(days.firstDay + d);
    const expected = Math.max(0.5, Number.isNaN(waterSwing) ? usual[d] : ratio * waterSwing);
    const airSaysNo = Math.abs(mean - air) > NEAR_AIR + Math.abs(swing) / 4;
    const muted = swing < 0.4 * airSwing;
    const cold = min <= NO_WATER && swing >= COLD_SWING;
    const wide =
      swing >= WIDE_SWING && swing >= TIMES_USUAL * expected && !airSaysNo && !(swing < 0.4 * airSwing);
    const elsewhere =
      !muted &&
      swing >= ELSEWHERE_SWING * expected &&
      Math.abs(mean - water) >= OFF_WATER &&
      Math.abs(mean - air) <= NEAR_AIR &&
      Math.abs(air - water) >= OFF_WATER;
    if (cold || wide || elsewhere) like[d] = 1;
  }
  return runs(like, BRIDGED).flatMap(({ first, last, days: held }) =>
    held * 2 < last - first + 1 ? [] : [finding(record, first, last, usual)],
  );
}

/** Middle of the swings of the thirty days around, without the day itself. */
function usualSwings(swing: Float64Array): Float64Array {
  return swing.map((_, d) => {
    const value = median([...swing.subarray(Math.max(0, d - 30), d), ...swing.subarray(d + 1, d + 31)]);
    return Number.isNaN(value) ? 0.5 : value;
  });
}

/** Runs of marked days; gaps of up to `bridged` unmarked days lie inside. */
export function runs(
  marked: Uint8Array,
  bridged: number,
): { readonly first: number; readonly last: number; readonly days: number }[] {
  const found: { first: number; last: number; days: number }[] = [];
  for (let d = 0; d < marked.length; d++) {
    if (marked[d] === 0) continue;
    const open = found.at(-1);
    if (open !== undefined && d - open.last - 1 <= bridged) {
      open.last = d;
      open.days++;
    } else found.push({ first: d, last: d, days: 1 });
  }
  return found;
}

/** From the first to the last hour that departs from the water of the day before, or after. */
function finding(record: Judged, first: number, last: number, usual: Float64Array): Finding {
  const { days, hours, offsetMinutes } = record;
  const shift = Math.round(offsetMinutes / 60);
  const water = waterAtHour(record);
  const before = days.mean[first - 1];
  const after = days.mean[last + 1];
  // A record may begin or end in the middle of a day.
  const start = Math.max(hours.first, (days.firstDay + first) * 24 - shift);
  const end = Math.min(hours.first + hours.mean.length, (days.firstDay + last + 1) * 24 - shift) - 1;
  const departs = (hour: number, level: number | undefined) => {
    const there = water(hour);
    const expected = Number.isNaN(there) ? (level ?? Number.NaN) : there;
    return Math.abs(hourAt(hours, hour) - expected) > Math.max(1, usual[first]);
  };
  let from = start;
  if (before !== undefined && departs(start, before))
    while (from > start - 24 && departs(from - 1, before)) from--;
  else while (from < start + 23 && !departs(from, before)) from++;
  let to = end;
  if (after !== undefined && departs(end, after)) while (to < end + 24 && departs(to + 1, after)) to++;
  else while (to > end - 23 && !departs(to, after)) to--;
  if (to < from) [from, to] = [start, end];
  // Nothing is said of hours before the record began or after it ended.
  from = Math.max(from, hours.first);
  to = Math.min(to, hours.first + hours.mean.length - 1);
  const told = extremes(hours.mean.subarray(from - hours.first, to - hours.first + 1));
  const whole = extremes(hours.mean.subarray(start - hours.first, end - hours.first + 1));
  const { low, high } = Number.isFinite(told.low) ? told : whole;
  return {
    kind: 'in-air',
    from: startOfHour(from),
    to: startOfHour(to) + HOUR - 1,
    flag: 4,
    figures: {
      swing: median(days.swing.subarray(first, last + 1)),
      usual: usual[first],
      low,
      high,
      hours: to - from + 1,
    },
    offer: null,
  };
}
