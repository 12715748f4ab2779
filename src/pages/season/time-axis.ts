import type { BoxForecast, Interval } from '../../../forecasting/forecast.js';

/** The axis every box of the season shares: day numbers, and where a day lies on it in percent of its width. */
export interface TimeAxis {
  readonly from: number;
  readonly to: number;
  /** 0 to 100; days beyond the ends lie on them. */
  readonly at: (day: number) => number;
  /** First days of months inside it. */
  readonly months: readonly number[];
}

/** Room at the ends, days. */
const MARGIN = 4;

/**
 * From the earliest moment any window (or today) needs to the latest. Windows that were passed long ago keep their
 * place: what has passed is part of the answer.
 */
export function timeAxis(boxes: readonly BoxForecast[], today: number): TimeAxis {
  const days = boxes
    .flatMap(({ windows }) =>
      windows.flatMap(({ first, median, last }) => [first, median, last].flatMap(ends)),
    )
    .concat(today);
  const from = Math.floor(Math.min(...days)) - MARGIN;
  const to = Math.ceil(Math.max(...days)) + MARGIN;
  const at = (day: number) =>
    Math.round(Math.min(1, Math.max(0, (day - from) / Math.max(1, to - from))) * 10_000) / 100;
  return { from, to, at, months: monthsBetween(from, to) };
}

function ends({ p10, p50, p90 }: Interval): number[] {
  return [p10, p50, p90].flatMap((day) => day ?? []);
}

function monthsBetween(from: number, to: number): number[] {
  const months: number[] = [];
  const first = new Date(from * 86_400_000);
  for (let month = first.getUTCMonth() + 1; months.length < 60; month++) {
    const day = Date.UTC(first.getUTCFullYear(), month, 1) / 86_400_000;
    if (day > to) break;
    months.push(day);
  }
  return months;
}
