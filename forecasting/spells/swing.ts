import type { DaySeries } from '../day-series.js';
import { median } from '../quality/hours.js';
import type { Celsius, DayNumber } from '../units.js';

/** What is usual at a season: days of any year this close to it, so many of them at least (ours). */
const AROUND = 15;
const LEAST_DAYS = 10;
/** The newest so many days tell it: what a place was like twenty years ago does not matter. */
const MOST_DAYS = 93;
/** A day whose hours are known to this share shows its swing. */
const WHOLE = 0.9;
const YEAR = 365.2425;

/** How far a day's warmest and coldest hour usually lie from its mean at a season, °C. */
export interface Swing {
  readonly up: Celsius;
  readonly down: Celsius;
}

const NONE: Swing = { up: 0, down: 0 };

/** By record and season; null where it has too few days there. Records never change, and are asked again and again. */
const swings = new WeakMap<DaySeries, Map<number, Swing | null>>();

/**
 * The usual swing of a day, by the measured days of that season in any year: of the first of these records that has
 * enough of them. None where nobody has.
 */
export class UsualSwing {
  private readonly known = new Map<number, Swing>();

  constructor(private readonly records: readonly DaySeries[]) {}

  on(day: DayNumber): Swing {
    const season = Math.floor(((day % YEAR) + YEAR) % YEAR);
    const made = this.known.get(season) ?? this.at(season);
    this.known.set(season, made);
    return made;
  }

  private at(season: number): Swing {
    for (const days of this.records) {
      const swing = ofRecord(days, season);
      if (swing !== null) return swing;
    }
    return NONE;
  }
}

function ofRecord(days: DaySeries, season: number): Swing | null {
  const known = swings.get(days) ?? new Map<number, Swing | null>();
  swings.set(days, known);
  let swing = known.get(season);
  if (swing === undefined) {
    swing = measuredSwing(days, season);
    known.set(season, swing);
  }
  return swing;
}

function measuredSwing(days: DaySeries, season: number): Swing | null {
  const { mean, min, max, coverage } = days;
  const up: number[] = [];
  const down: number[] = [];
  for (const d of near(days, season)) {
    if (up.length === MOST_DAYS) break;
    if (!(coverage[d] >= WHOLE) || !Number.isFinite(max[d] - min[d])) continue;
    up.push(max[d] - mean[d]);
    down.push(mean[d] - min[d]);
  }
  return up.length < LEAST_DAYS ? null : { up: median(up), down: median(down) };
}

/** Places of the days that lie about a season, the newest year first. */
function* near({ firstDay, mean }: DaySeries, season: number): Generator<number> {
  const first = Math.floor((firstDay - season) / YEAR);
  const last = Math.ceil((firstDay + mean.length - season) / YEAR);
  for (let year = last; year >= first; year--) {
    const middle = Math.round(season + year * YEAR) - firstDay;
    for (let d = Math.max(0, middle - AROUND); d <= Math.min(mean.length - 1, middle + AROUND); d++) yield d;
  }
}

/**
 * Hours of a day beyond a limit, and degree-hours, where its temperature goes in a wave about its mean: up by the swing's
 * half above, down by its half below.
 */
export function hoursAbove(
  mean: Celsius,
  limit: Celsius,
  { up, down }: Swing,
): { hours: number; degreeHours: number } {
  if (mean <= limit) return wave(limit - mean, up);
  const below = wave(mean - limit, down);
  return { hours: 24 - below.hours, degreeHours: 24 * (mean - limit) + below.degreeHours };
}

/** Hours in which a wave of this height is farther out than `by`, and by how much in all. */
function wave(by: Celsius, height: Celsius): { hours: number; degreeHours: number } {
  if (by >= height) return { hours: 0, degreeHours: 0 };
  const angle = Math.acos(by / height);
  return {
    hours: (24 / Math.PI) * angle,
    degreeHours: (24 / Math.PI) * (height * Math.sin(angle) - by * angle),
  };
}
