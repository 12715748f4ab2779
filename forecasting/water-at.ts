import { Origin, type StationDays } from './day-series.js';
import type { NeighbourRecord } from './gaps/candidate.js';
import type { StackEstimate } from './gaps/estimate.js';
import { neighbourRecord, onAxis } from './gaps/records.js';
import type { Changes } from './memory/changes.js';
import { placeAgain } from './memory/place-again.js';
import { same } from './memory/same.js';
import { DAYS_BEFORE, type Place, placeOf, type Window } from './place.js';
import { estimateOf, fillsAny, type PossibleWaters, possibleWaters } from './possible-waters.js';
import { type SeasonAxis, seasonAxis } from './season-axis.js';
import type { Water, WaterInput } from './water.js';
import { filledStretches } from './water-parts/filled-stretches.js';
import { kilometresBetween } from './water-parts/kilometres.js';
import { projectionSource, waterRemarks } from './water-parts/remarks.js';
import { neverFreezes, type SeenWater, seenWater } from './water-parts/sightings.js';
import { curveNormals } from './water-parts/stated-curve.js';

/** Days after the window kept on the axis, so that a past winter laid over it has room. */
const MARGIN = 2;

/**
 * The water at one station, from what its own record, the other stations and past winters say: see `Water`.
 * Same input, same answer; the order of `neighbours` does not matter; nothing later than `asOf` is used.
 *
 * Measured days stand as they are. Days that other stations have are filled by the stack of their seasonal relations,
 * with the error seen on the target's own days fading into the gap. Other days are projected: normal for the season,
 * today's departure from it fading, past winters' departures around it. Where the station has no past winter, its
 * neighbours' are mapped through their relations; where they have none, the stated curve speaks; else nothing does.
 */
export function waterAt(input: WaterInput): Water {
  return waterFrom(input, null, NOTHING).water;
}

const NOTHING: Changes = new Map();

/** A station's water with what it was worked out from, for the next forecast to lean on. */
export interface WaterMade {
  readonly water: Water;
  readonly place: Place;
  /** What the neighbours said of the window, its origins and what was seen in it. */
  readonly estimate: StackEstimate;
  readonly origin: Uint8Array;
  readonly seen: SeenWater;
}

/**
 * The same, with what it was worked out from. Of what was made before, for the same question but for the days of
 * stations, stands what says the same now: the place, and the water where the neighbours say the same of its window, or
 * fill no day of it.
 */
export function waterFrom(input: WaterInput, before: WaterMade | null, changes: Changes): WaterMade {
  const { axis, window } = axisOf(input);
  const last = input.asOf - axis.first;
  const at = { axis, window, station: input.target.station };
  const again =
    before === null
      ? null
      : placeAgain(
          before.place,
          at,
          changes,
          (station) => neighboursOf(input, axis, last, (name) => name === station)[0] ?? null,
        );
  if (before !== null && again !== null) {
    const stands = waterAgain(input, before, again);
    if (stands !== null) return stands;
  }
  const target = onAxis(axis, input.target.days, last);
  const place =
    again ??
    withCurve(
      placeOf(axis, target, neighboursOf(input, axis, last), axis.season[window.start], window),
      input,
    );
  const seen = seenWater(
    input.sightings,
    input.target.station,
    axis,
    window,
    input.asOf,
    neverFreezes(place),
  );
  const view = { ...viewOf(place, target), seen };
  const waters = possibleWaters(place, view, input.seed, input.traces);
  const { estimate, origin } = waters;
  return { water: waterOf(input, place, waters, seen), place, estimate, origin, seen };
}

const viewOf = (place: Place, target: Float64Array) => ({
  target,
  neighbours: place.stack.candidates.map(({ neighbour }) => neighbour.mean),
});

/** The water of before in a place of before, as far as what neighbours have read since leaves it; else null. */
function waterAgain(input: WaterInput, before: WaterMade, place: Place): WaterMade | null {
  const { seen, origin, water } = before;
  if (place.stack === before.place.stack) return { ...before, place };
  const view = { ...viewOf(place, place.target), seen };
  const estimate = estimateOf(place, view);
  if (same(estimate, before.estimate)) return { ...before, place };
  if (origin.includes(Origin.filled) || fillsAny(place, view, estimate)) return null;
  // No day rests on the neighbours: they bear only on what is told of them.
  const told = { origin, estimate, spread: water.days.spread };
  return {
    ...before,
    place,
    estimate,
    water: {
      ...water,
      projection: projectionSource(input, place, told),
      remarks: waterRemarks(input, place, told, water.stretches, seen),
    },
  };
}

function axisOf(input: WaterInput): { axis: SeasonAxis; window: Window } {
  const begins = input.from - DAYS_BEFORE;
  const records = [input.target, ...input.neighbours].filter(({ days }) => days.mean.length > 0);
  const first = Math.min(begins, ...records.map(({ days }) => days.firstDay));
  const axis = seasonAxis(first, input.to + MARGIN, begins);
  const from = input.from - first;
  return { axis, window: { start: from - DAYS_BEFORE, from, to: input.to - first + 1 } };
}

/** Every other station once, by name, so that the order they are given in does not matter. */
function neighboursOf(
  input: WaterInput,
  axis: SeasonAxis,
  last: number,
  asked: (station: string) => boolean = () => true,
): NeighbourRecord[] {
  const byName = new Map<string, StationDays>();
  for (const other of input.neighbours) {
    if (!asked(other.station)) continue;
    const known = byName.get(other.station);
    const longer = known === undefined || other.days.mean.length > known.days.mean.length;
    if (other.station !== input.target.station && other.kind !== 'tank' && longer)
      byName.set(other.station, other);
  }
  return [...byName.values()]
    .sort((a, b) => (a.station < b.station ? -1 : 1))
    .map((other) =>
      neighbourRecord(axis, other, onAxis(axis, other.days, last), kilometresBetween(input.target, other)),
    );
}

/**
 * The stated curve takes over where no season says what is normal on some day of the window; where past winters say
 * it for other days, it speaks for those they lack alone.
 */
function withCurve(place: Place, { curve }: WaterInput): Place {
  if (curve === null || !lacksNormals(place)) return place;
  const stated = curveNormals(place.axis, curve);
  if (place.members.length === 0) return { ...place, normals: stated, curve: true };
  const { mean, sd } = place.normals;
  return {
    ...place,
    normals: {
      mean: mean.map((usual, day) => (Number.isNaN(usual) ? stated.mean[day] : usual)),
      sd: sd.map((strays, day) => (Number.isNaN(mean[day]) ? stated.sd[day] : strays)),
    },
  };
}

function lacksNormals({ axis, window, normals }: Place): boolean {
  for (let i = window.from; i < window.to; i++)
    if (Number.isNaN(normals.mean[axis.seasonDay[i]])) return true;
  return false;
}

function waterOf(input: WaterInput, place: Place, waters: PossibleWaters, seen: SeenWater): Water {
  const { window, axis } = place;
  const skip = window.from - window.start;
  const origin = waters.origin.slice(skip);
  const measured = origin.map((of) => (of === Origin.measured ? 1 : 0));
  const own = ownDays(input, axis.first + window.from, measured);
  const lastOf = (wanted: (of: number) => boolean) => {
    const at = origin.findLastIndex(wanted);
    return at < 0 ? null : input.from + at;
  };
  const known = origin.some((of) => of !== Origin.none);
  const stretches = filledStretches(place, waters);
  return {
    station: input.target.station,
    days: {
      firstDay: input.from,
      mean: waters.mean.slice(skip),
      spread: waters.spread.slice(skip),
      origin,
      ...own,
    },
    traces: known ? waters.traces.map((trace) => trace.slice(skip)) : [],
    winters: place.members.length,
    stretches,
    projection: projectionSource(input, place, waters),
    lastMeasured: lastOf((of) => of === Origin.measured),
    lastFilled: lastOf((of) => of === Origin.measured || of === Origin.filled),
    remarks: waterRemarks(input, place, waters, stretches, seen),
  };
}

/** Least, greatest and coverage of the measured days; others have none. */
function ownDays(input: WaterInput, from: number, measured: Uint8Array) {
  const { days } = input.target;
  const read = (column: Float64Array, missing: number) =>
    Float64Array.from(measured, (of, d) => (of === 1 ? column[from + d - days.firstDay] : missing));
  return {
    min: read(days.min, Number.NaN),
    max: read(days.max, Number.NaN),
    coverage: read(days.coverage, 0),
  };
}
