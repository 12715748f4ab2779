import { type DaySeries, Origin } from '../../forecasting/day-series.js';
import type { DayNumber } from '../../forecasting/units.js';

/**
 * A day series without what could not yet be known: days after the as-of day, and days that `known` denies.
 * Later days are cut off; a day denied inside becomes a gap.
 */
export function knownDays(
  days: DaySeries,
  asOf: DayNumber,
  known: (day: DayNumber) => boolean = () => true,
): DaySeries {
  const length = Math.max(0, Math.min(days.mean.length, asOf - days.firstDay + 1));
  const cut = {
    firstDay: days.firstDay,
    mean: days.mean.slice(0, length),
    min: days.min.slice(0, length),
    max: days.max.slice(0, length),
    coverage: days.coverage.slice(0, length),
    spread: days.spread.slice(0, length),
    origin: days.origin.slice(0, length),
  };
  for (let day = 0; day < length; day++) {
    if (known(days.firstDay + day)) continue;
    cut.mean[day] = cut.min[day] = cut.max[day] = Number.NaN;
    cut.coverage[day] = 0;
    cut.origin[day] = Origin.none;
  }
  return cut;
}
