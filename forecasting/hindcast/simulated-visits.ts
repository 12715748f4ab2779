import type { Window } from '../place.js';
import type { SeasonAxis } from '../season-axis.js';
import type { WaterSighting } from '../water.js';
import { normalDraws, seedFor } from '../windows/draws.js';

/** A crew that walks by every so many days reads its thermometer where the water is open. */
const BETWEEN_VISITS = 21;
/** The hand thermometer's stated accuracy, and how far one moment lies from its day's mean (°C, ours). */
const ACCURACY = 0.3;
const WITHIN_DAY = 0.4;
/** Ice covers the water on days no warmer than this; it came or went where so many days in a row are on one side. */
const UNDER_ICE = 0.3;
const LASTING = 7;

/**
 * What a crew would have seen of a hidden winter up to its lead day: a hand reading every three weeks while the water
 * is open, the day ice came, the day it went. The hand reading errs as `seenWater` takes it to, by what the seed and
 * the station's name draw.
 *
 * @param mean the station's own days on the axis
 * @param lead index on the axis of the first day not yet known
 */
export function simulatedVisits(
  station: string,
  axis: SeasonAxis,
  mean: Float64Array,
  window: Window,
  lead: number,
  seed: number,
): WaterSighting[] {
  const { from } = window;
  const iceOn = firstLasting(mean, from, lead, (celsius) => celsius <= UNDER_ICE);
  const iceOut = iceOn === null ? null : lastThaw(mean, iceOn, lead);
  const covered = (i: number) => iceOn !== null && i >= iceOn && (iceOut === null || i < iceOut);
  const slips = normalDraws(
    Math.max(1, Math.ceil((window.to - from) / BETWEEN_VISITS)),
    seedFor(seed, station),
  );
  const sightings: WaterSighting[] = [];
  const day = (i: number) => axis.first + i;
  for (let i = from, visit = 0; i < lead; i += BETWEEN_VISITS, visit++) {
    if (covered(i) || Number.isNaN(mean[i])) continue;
    const celsius = Math.max(0, mean[i] + slips[visit] * Math.hypot(ACCURACY, WITHIN_DAY));
    sightings.push({ kind: 'hand', station, day: day(i), celsius, accuracy: ACCURACY });
  }
  if (iceOn !== null) sightings.push({ kind: 'ice-on', station, day: day(iceOn) });
  if (iceOut !== null) sightings.push({ kind: 'ice-out', station, day: day(iceOut) });
  return sightings;
}

/** The first day from which `holds` is true for a week, all of it before `to`. */
function firstLasting(
  mean: Float64Array,
  from: number,
  to: number,
  holds: (celsius: number) => boolean,
): number | null {
  let run = 0;
  for (let i = from; i < to; i++) {
    run = holds(mean[i]) ? run + 1 : 0;
    if (run === LASTING) return i - LASTING + 1;
  }
  return null;
}

/** The day after the last week under ice, once a week of open water has followed it before `to`. */
function lastThaw(mean: Float64Array, iceOn: number, to: number): number | null {
  let thaw: number | null = null;
  for (let from = iceOn; ; ) {
    const open = firstLasting(mean, from, to, (celsius) => celsius > UNDER_ICE);
    if (open === null) return thaw;
    thaw = open;
    const again = firstLasting(mean, open, to, (celsius) => celsius <= UNDER_ICE);
    if (again === null) return thaw;
    thaw = null;
    from = again;
  }
}
