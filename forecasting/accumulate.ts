import { dailyRate } from './law.js';
import type { Law } from './table.js';
import type { Celsius, DayNumber, DayTime, Progress } from './units.js';

/** Daily means in a row: `mean[i]` is day `firstDay + i`, °C; NaN is a day without a value. */
export interface DailyMeans {
  readonly firstDay: DayNumber;
  readonly mean: ArrayLike<Celsius>;
}

/**
 * Progress between two moments by rate summation: the sum of 1/D(T) over the local days, a day begun or broken
 * off counting by its share. Summed day by day and never on the season's mean: 120 days at 0 °C and 34.2 at 8 °C
 * bring salmon to hatch, where D at the mean of those days gives 178.8 days. Null where a day between has no value
 * or lies outside the days given.
 *
 * @example accumulate(crisp, { firstDay: 0, mean: Array(150).fill(0) }, 0, 150) // 0.564 of the way at 0 degree-days
 */
export function accumulate(law: Law, days: DailyMeans, from: DayTime, to: DayTime): Progress | null {
  let progress = 0;
  for (const { celsius, share } of daysBetween(days, from, to)) {
    if (!Number.isFinite(celsius)) return null;
    progress += share * dailyRate(law, celsius);
  }
  return progress;
}

/**
 * The moment at which the sum of 1/D from `from` on reaches `target`, interpolated within the day. Null where the
 * days end, or a day has no value, before it does.
 *
 * @example whenReached(crisp, cold120ThenEight, 0, 1) // 154.2: hatch after 120 d at 0 and 34.2 d at 8 °C
 */
export function whenReached(law: Law, days: DailyMeans, from: DayTime, target: Progress): DayTime | null {
  let progress = 0;
  if (target <= 0) return from;
  for (const { celsius, share, begins } of daysBetween(days, from, days.firstDay + days.mean.length)) {
    if (!Number.isFinite(celsius)) return null;
    const rate = dailyRate(law, celsius);
    if (progress + share * rate >= target) return begins + (target - progress) / rate;
    progress += share * rate;
  }
  return null;
}

interface DayShare {
  readonly begins: DayTime;
  readonly share: number;
  readonly celsius: Celsius;
}

/** The days between two moments with the share of each; a day not given comes with NaN. */
export function* daysBetween(days: DailyMeans, from: DayTime, to: DayTime): Generator<DayShare> {
  let begins = from;
  while (begins < to) {
    const day = Math.floor(begins);
    const ends = Math.min(day + 1, to);
    const i = day - days.firstDay;
    const celsius = i >= 0 && i < days.mean.length ? days.mean[i] : Number.NaN;
    yield { begins, share: ends - begins, celsius };
    begins = ends;
  }
}
