import { nearby } from './expected.js';
import type { Finding } from './finding.js';
import { DAY, firstHourOf, HOUR, hourAt, median, startOfHour } from './hours.js';
import type { Comparison, Judged } from './record.js';
import { runs } from './winter/in-air.js';

/** How far the middle of a week has to stand off what the neighbours say, °C (ours). */
const OFF = 1.25;
/** Beyond what weeks of other years stood off, and of this year where there is no other (ours). */
const BEYOND_OTHERS = 1.2;
const USUAL_ERRORS = 6;
const HALF_WEEK = 3;
/** A flood or a warm spring lasts days; a fault stays (ours). */
const LEAST_DAYS = 8;
/** Days of both records without which neighbours say nothing (ours). */
const LEAST_TOGETHER = 60;
/** A step of the sensor comes between two readings: least size, °C, and share of it that has to stay (ours). */
const STEP = 1.2;
const STAYS = 0.6;
const STEP_DAYS = 5;

/**
 * QARTOD's suggested neighbour test. Weeks in which the daily mean departs from what the neighbours' water says by
 * more than it did in any other year, and steps between two readings that stay while the neighbours make none: a
 * sensor that drifts or slips. A bank that warms departs too, so it suspects only.
 */
export function departsFromNeighbours(record: Judged): Finding[] {
  if (record.kind === 'air' || record.kind === 'tank' || record.neighbours.length === 0) return [];
  const weeks = weeksOff(record);
  return [
    ...weeks,
    ...steps(record).filter(({ from }) => !weeks.some((one) => one.from <= from && one.to >= from)),
  ];
}

function weeksOff(record: Judged): Finding[] {
  const { days, history, offsetMinutes } = record;
  const last = days.firstDay + days.mean.length - 1;
  const inside = (day: number) => day >= days.firstDay && day <= last;
  const others =
    history === null
      ? null
      : fitted(
          history,
          record.neighbours,
          (place) => place.history,
          (day) => !inside(day),
        );
  const own =
    others ??
    fitted(
      days,
      record.neighbours,
      ({ days: there }) => there,
      () => true,
    );
  if (own === null) return [];
  const weekly = (off: Float64Array) =>
    off.map((_, d) => median(off.subarray(Math.max(0, d - HALF_WEEK), d + HALF_WEEK + 1)));
  const off = Float64Array.from(
    days.mean,
    (mean, d) => mean - own.expected(days.firstDay + d, ({ days: there }) => there),
  );
  const most =
    others === null || history === null
      ? () => USUAL_ERRORS * 1.4826 * median(off.map(Math.abs))
      : mostOff(weekly(others.off), history.firstDay);
  const limit = Float64Array.from(off, (_, d) => Math.max(OFF, BEYOND_OTHERS * most(days.firstDay + d)));
  const marked = Uint8Array.from(weekly(off), (one, d) =>
    Math.abs(one) > limit[d] && !Number.isNaN(off[d]) ? 1 : 0,
  );
  return runs(marked, 2).flatMap(({ first, last: end, days: held }): Finding[] =>
    held < LEAST_DAYS
      ? []
      : [
          {
            kind: 'neighbour',
            from: startOfHour(firstHourOf(days.firstDay + first, offsetMinutes)),
            to: startOfHour(firstHourOf(days.firstDay + end + 1, offsetMinutes)) - 1,
            flag: 3,
            figures: {
              off: median(off.subarray(first, end + 1)),
              limit: limit[first],
              days: end - first + 1,
              neighbours: record.neighbours.length,
            },
            offer: null,
          },
        ],
  );
}

/** Days of the year that count as the same season, to either side (ours). */
const HALF_SEASON = 30;
const YEAR = 365.2425;

/** By how much weeks of the same season stood off at most in other years. */
function mostOff(weekly: Float64Array, firstDay: number): (day: number) => number {
  const place = (day: number) => Math.floor((((day % YEAR) + YEAR) % YEAR) / 10);
  const most = new Float64Array(37);
  for (let d = 0; d < weekly.length; d++) {
    const size = Math.abs(weekly[d]);
    if (!Number.isNaN(size)) most[place(firstDay + d)] = Math.max(most[place(firstDay + d)], size);
  }
  const reach = HALF_SEASON / 10;
  return (day) => {
    const centre = place(day);
    return Math.max(
      ...Array.from(
        { length: 2 * reach + 1 },
        (_, i) => most[(centre - reach + i + most.length) % most.length],
      ),
    );
  };
}

interface Row {
  readonly firstDay: number;
  readonly mean: Float64Array;
}

/** What neighbours say of a record: the middle of a straight line through each; and what it was off on the days used. */
function fitted(
  own: Row,
  neighbours: readonly Comparison[],
  rowOf: (place: Comparison) => Row,
  used: (day: number) => boolean,
): {
  readonly off: Float64Array;
  readonly expected: (day: number, rowOf: (place: Comparison) => Row) => number;
} | null {
  const lines = neighbours.flatMap((place) => {
    const there = rowOf(place);
    const x = own.mean.map((_, d) =>
      used(own.firstDay + d) ? (there.mean[own.firstDay + d - there.firstDay] ?? Number.NaN) : Number.NaN,
    );
    const together = x.reduce((sum, one, d) => sum + (Number.isFinite(one + own.mean[d]) ? 1 : 0), 0);
    return together < LEAST_TOGETHER ? [] : [{ place, ...robustLine(x, own.mean) }];
  });
  if (lines.length === 0) return null;
  const expected = (day: number, row: (place: Comparison) => Row) =>
    median(
      lines.map(({ place, slope, intercept }) => {
        const there = row(place);
        return slope * (there.mean[day - there.firstDay] ?? Number.NaN) + intercept;
      }),
    );
  const off = own.mean.map((mean, d) =>
    used(own.firstDay + d) ? mean - expected(own.firstDay + d, rowOf) : Number.NaN,
  );
  return { off, expected };
}

/** Steps between two readings that stay for days, while the neighbours' water makes none. */
function steps(record: Judged): Finding[] {
  const { days, hours, offsetMinutes, at } = record;
  const around = nearby(record);
  const found: Finding[] = [];
  const level = (first: number) =>
    median(
      Array.from({ length: STEP_DAYS }, (_, d) => {
        const mean = days.mean[first + d - days.firstDay] ?? Number.NaN;
        return mean - around(first + d).water;
      }),
    );
  for (let i = 1; i < hours.mean.length; i++) {
    const size = hours.mean[i] - hours.mean[i - 1];
    if (!(Math.abs(size) >= STEP)) continue;
    const day = Math.floor((hours.first + i + offsetMinutes / 60) / 24);
    const stayed = level(day + 1) - level(day - STEP_DAYS);
    if (!(stayed / size >= STAYS && stayed / size <= 2 - STAYS)) continue;
    const [before, after] = [-3, 2].map((hour) => hourAt(hours, hours.first + i + hour));
    if (!((after - before) / size >= STAYS)) continue;
    found.push({
      kind: 'neighbour',
      from: startOfHour(hours.first + i),
      to: at[at.length - 1],
      flag: 3,
      figures: {
        step: size,
        off: stayed,
        days: (at[at.length - 1] - (hours.first + i) * HOUR) / DAY,
        limit: STEP,
      },
      offer: null,
    });
    i += 24;
  }
  // One that goes back where it came from ends there.
  return found.map((one, n) => (found[n + 1] === undefined ? one : { ...one, to: found[n + 1].from - 1 }));
}

/** Least squares, then again without the quarter that fits worst. */
function robustLine(x: Float64Array, y: Float64Array): { slope: number; intercept: number } {
  const all = [...x.keys()].filter((i) => Number.isFinite(x[i]) && Number.isFinite(y[i]));
  let line = leastSquares(all, x, y);
  for (let round = 0; round < 2; round++) {
    const { slope, intercept } = line;
    const kept = all
      .map((i) => ({ i, off: Math.abs(y[i] - slope * x[i] - intercept) }))
      .sort((a, b) => a.off - b.off)
      .slice(0, Math.ceil(all.length * 0.8));
    line = leastSquares(
      kept.map(({ i }) => i),
      x,
      y,
    );
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
