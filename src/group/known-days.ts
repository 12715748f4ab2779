import { type DaySeries, Origin } from '../../forecasting/day-series.js';
import type { DayNumber } from '../../forecasting/units.js';
import { epochMillis, type Moment, type Season } from '../season/index.js';

/**
 * A day series without what could not yet be known: days after the as-of day, and days that `known` denies.
 * Later days are cut off; a day denied inside becomes a gap. Where all could be known, the series itself.
 */
export function knownDays(
  days: DaySeries,
  asOf: DayNumber,
  known: (day: DayNumber) => boolean = () => true,
): DaySeries {
  const length = Math.max(0, Math.min(days.mean.length, asOf - days.firstDay + 1));
  if (length === days.mean.length && allKnown(days, known)) return days;
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

function allKnown({ firstDay, mean }: DaySeries, known: (day: DayNumber) => boolean): boolean {
  for (let day = firstDay; day < firstDay + mean.length; day++) if (!known(day)) return false;
  return true;
}

/**
 * Whether a day of a station could be known on the as-of day. A logger under the ice tells nothing until it is
 * read: its days are known from the first visit on which it was read or taken out. Where the season does not say
 * when that was, and at stations that report, every day to the as-of day counts as known.
 */
export function knownOn(season: Season, station: string, asOf: DayNumber): (day: DayNumber) => boolean {
  const { reports, dayOffset } = season.stations.find(({ id }) => id === station) ?? {
    reports: true,
    dayOffset: 0,
  };
  if (reports) return () => true;
  const dayOf = (moment: Moment) => Math.floor((epochMillis(moment) + dayOffset * 60_000) / 86_400_000);
  const spans = season.deployments
    .filter((deployment) => deployment.station === station)
    .map(({ from, to, lost, read }) => {
      const reads = [...read, ...(to === null || lost ? [] : [to])].map(dayOf);
      return {
        from: dayOf(from),
        to: to === null ? Number.POSITIVE_INFINITY : dayOf(to),
        knownThrough:
          reads.length === 0 ? Number.POSITIVE_INFINITY : Math.max(...reads.filter((day) => day <= asOf)),
      };
    });
  return (day) => {
    const lying = spans.filter((span) => span.from <= day && day <= span.to);
    return lying.length === 0 || lying.some((span) => day <= span.knownThrough);
  };
}
