import type { Sightings } from '../gaps/fill.js';
import type { Window } from '../place.js';
import type { SeasonAxis } from '../season-axis.js';
import type { Celsius } from '../units.js';
import type { WaterSighting } from '../water.js';

/** A hand reading is one moment of a day: how far that lies from the day's mean, °C (ours). */
const WITHIN_DAY = 0.4;
/** Water under ice lies at 0.1 ± 0.2 °C; on the days ice comes or goes it may be a little warmer (ours). */
const UNDER_ICE = { celsius: 0.1, sd: 0.2 };
const ICE_EDGE = { celsius: 0.3, sd: 0.4 };
/** Days under ice in a row say much the same: one in so many is taken as evidence. */
const ICE_STEP = 5;
/** A place whose winters never come below this does not freeze over. */
const FREEZES_BELOW: Celsius = 1.5;

export interface SeenWater extends Sightings {
  readonly used: number;
  /** Ice was reported where the record shows water that does not freeze; it is not believed. */
  readonly iceDoubted: boolean;
}

/**
 * Hand readings and ice seen at a station as values with an error on the days of the window. Ice-on to ice-out (or to
 * the last day under ice that was seen) is a stretch under ice.
 *
 * @param coldest the lowest normal of the place's year, NaN where not known
 */
export function seenWater(
  sightings: readonly WaterSighting[],
  station: string,
  axis: SeasonAxis,
  window: Window,
  asOf: number,
  coldest: number,
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
  const neverFreezes = coldest > FREEZES_BELOW;
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
