import type { Sightings } from '../gaps/fill.js';
import type { Place, Window } from '../place.js';
import type { SeasonAxis } from '../season-axis.js';
import type { Celsius } from '../units.js';
import type { WaterSighting } from '../water.js';
import { sortedQuantile } from '../windows/draws.js';

/** A hand reading is one moment of a day: how far that lies from the day's mean, °C (ours). */
const WITHIN_DAY = 0.6;
/** Water under ice lies at 0.1 ± 0.2 °C; on the days ice comes or goes it may be a little warmer (ours). */
const UNDER_ICE = { celsius: 0.1, sd: 0.3 };
const ICE_EDGE = { celsius: 0.3, sd: 0.5 };
/** Days under ice in a row say much the same: one in so many is taken as evidence (5 left too narrow intervals). */
const ICE_STEP = 14;
/** A place whose own winter days, but for the coldest twentieth, stay above this does not freeze over (ours). */
const FREEZES_BELOW: Celsius = 1.5;
const COLDEST_SHARE = 0.05;
/** Days of December to March of its own that a record needs before it can say so. */
const LEAST_WINTER_DAYS = 60;
const FIRST_WINTER_DAY = 91;
const LAST_WINTER_DAY = 211;

/** Whether the site's own record shows that it does not freeze; what other stations say of it is no proof. */
export function neverFreezes({ axis, target }: Pick<Place, 'axis' | 'target'>): boolean {
  const winter = target.filter(
    (celsius, i) =>
      !Number.isNaN(celsius) && axis.seasonDay[i] >= FIRST_WINTER_DAY && axis.seasonDay[i] <= LAST_WINTER_DAY,
  );
  if (winter.length < LEAST_WINTER_DAYS) return false;
  return sortedQuantile(winter.sort(), COLDEST_SHARE) > FREEZES_BELOW;
}

export interface SeenWater extends Sightings {
  readonly used: number;
  /** Ice was reported where the record shows water that does not freeze; it is not believed. */
  readonly iceDoubted: boolean;
}

/**
 * Hand readings and ice seen at a station as values with an error on the days of the window. Ice-on to ice-out (or to
 * the last day under ice that was seen) is a stretch under ice.
 *
 * @param neverFreezes the site's own record shows that it does not freeze: ice seen there is not believed
 */
export function seenWater(
  sightings: readonly WaterSighting[],
  station: string,
  axis: SeasonAxis,
  window: Window,
  asOf: number,
  neverFreezes: boolean,
): SeenWater {
  const length = window.to - window.start;
  const celsius = new Float64Array(length).fill(Number.NaN);
  const variance = new Float64Array(length).fill(Number.NaN);
  const first = axis.first + window.start;
  const mine = sightings
    .filter(
      (seen) =>
        seen.station === station && seen.day <= asOf && seen.day >= first && seen.day < first + length,
    )
    .sort((a, b) => a.day - b.day || (a.kind < b.kind ? -1 : 1));
  const see = (day: number, value: number, sd: number) => {
    const d = day - first;
    const before = variance[d];
    const weight = 1 / (sd * sd);
    const known = Number.isNaN(before) ? 0 : 1 / before;
    celsius[d] = ((known > 0 ? celsius[d] * known : 0) + value * weight) / (known + weight);
    variance[d] = 1 / (known + weight);
  };
  let iceSince: number | null = null;
  let used = 0;
  for (const seen of mine) {
    if (seen.kind === 'hand') {
      see(seen.day, seen.celsius, Math.hypot(seen.accuracy, WITHIN_DAY));
      used++;
      continue;
    }
    if (neverFreezes) continue;
    used++;
    if (iceSince !== null)
      for (let day = iceSince + ICE_STEP; day < seen.day; day += ICE_STEP)
        see(day, UNDER_ICE.celsius, UNDER_ICE.sd);
    const edge = seen.kind === 'under-ice' ? UNDER_ICE : ICE_EDGE;
    see(seen.day, edge.celsius, edge.sd);
    iceSince = seen.kind === 'ice-out' ? null : seen.day;
  }
  return { celsius, variance, used, iceDoubted: neverFreezes && mine.some(({ kind }) => kind !== 'hand') };
}
