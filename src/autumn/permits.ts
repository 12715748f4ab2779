import type { Blocked, Season } from '../season/index.js';
import { dayAfter, dayBefore } from './days.js';

/**
 * Days on which no box may be opened or lifted, from `from` to `to`: those a person blocked, and, where the season
 * lists permits, those that no permit covers. A permit for one site covers that site only; `reason` of a day outside
 * is the permit numbers.
 */
export function blockedDays(season: Season, from: string, to: string): readonly Blocked[] {
  if (season.permits.length === 0) return season.blocked;
  const general = season.permits.filter(({ site }) => site === null);
  const perSite = season.permits.some(({ site }) => site !== null);
  const sites = perSite ? season.sites.map(({ id }) => id) : [null];
  const outside = sites.flatMap((site) => {
    const covering = [...general, ...season.permits.filter((one) => one.site !== null && one.site === site)];
    const reason = (covering.length > 0 ? covering : season.permits).map(({ number }) => number).join(', ');
    return gaps(covering, from, to).map((gap) => ({ ...gap, site, reason }));
  });
  return [...season.blocked, ...outside];
}

/** Stretches of days from `from` to `to` that none of the spans covers. */
function gaps(
  spans: readonly { readonly from: string; readonly to: string }[],
  from: string,
  to: string,
): { from: string; to: string }[] {
  const found: { from: string; to: string }[] = [];
  let next = from;
  for (const span of spans.toSorted((a, b) => (a.from < b.from ? -1 : 1))) {
    if (span.to < next) continue;
    if (span.from > to) break;
    if (span.from > next) found.push({ from: next, to: dayBefore(span.from) });
    next = dayAfter(span.to);
  }
  if (next <= to) found.push({ from: next, to });
  return found;
}
