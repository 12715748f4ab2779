import type { DaySeries } from '../../day-series.js';
import type { DayNumber } from '../../units.js';

const YEAR = 365.2425;
/** Days of the year that count as the same season, to either side (ours). */
const HALF_SEASON = 15;
/** Years without which a season's range says nothing (ours). */
export const LEAST_YEARS = 3;
/** What lies this far beyond everything seen at that season in other years is suspect, °C (ours). */
export const MARGIN = 4;

/** Lowest and highest daily mean of a season in other years, and how many years there were. */
export interface SeasonRange {
  readonly low: number;
  readonly high: number;
  readonly years: number;
}

/**
 * QARTOD test 5, climatology: the range of the days of the same season in the station's other years. Days within
 * half a year of the day judged are left out: a record does not vouch for itself.
 */
export function seasonRange(days: DaySeries, day: DayNumber): SeasonRange {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const years = new Set<number>();
  const last = days.firstDay + days.mean.length - 1;
  const first = Math.ceil((days.firstDay - day) / YEAR);
  for (let year = first; year <= Math.floor((last - day) / YEAR) + 1; year++) {
    if (year === 0) continue;
    const centre = day + Math.round(year * YEAR);
    for (let near = centre - HALF_SEASON; near <= centre + HALF_SEASON; near++) {
      const mean = days.mean[near - days.firstDay];
      if (mean === undefined || Number.isNaN(mean)) continue;
      low = Math.min(low, mean);
      high = Math.max(high, mean);
      years.add(year);
    }
  }
  return { low, high, years: years.size };
}

/**
 * 3 where a mean lies outside what its season showed in other years by more than `margin`, 2 where too few years are
 * known, else 1; the manual names no failure for this test.
 *
 * @example outsideSeason(21, { low: 10, high: 20, years: 3 }, 0) // 3
 */
export function outsideSeason(mean: number, { low, high, years }: SeasonRange, margin = MARGIN): 1 | 2 | 3 {
  if (years < LEAST_YEARS || Number.isNaN(mean)) return 2;
  return mean < low - margin || mean > high + margin ? 3 : 1;
}
