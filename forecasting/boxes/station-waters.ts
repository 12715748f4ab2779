import type { DailyMeans } from '../accumulate.js';
import { emptyDays, type StationDays } from '../day-series.js';
import type { ForecastInput } from '../forecast.js';
import type { Changes } from '../memory/changes.js';
import type { Celsius, DayNumber } from '../units.js';
import type { Water } from '../water.js';
import { type WaterMade, waterFrom } from '../water-at.js';
import { normalDraws, seedFor } from '../windows/draws.js';
import { type Ensemble, ensemble } from '../windows/ensemble.js';
import type { PartCourse } from './part-course.js';

/** An odd number: the middle draw is then one draw, and a stage is passed exactly when progress reaches 1. */
const TRACES = 201;
/** From planting on; in the coldest rivers known half of the fry emerge 240 days after 1 November. */
const HORIZON = 330;

/** One station's water, with everything worked out from it that boxes can share. */
export interface StationWater {
  readonly water: Water;
  readonly central: DailyMeans;
  /** With offsets of this standard deviation; null where nothing is known of the water. */
  ensemble(offset: Celsius): StationEnsemble | null;
}

export interface StationEnsemble {
  readonly all: Ensemble;
  /** Courses of eggs already worked out, by what they are. */
  readonly parts: Map<string, PartCourse>;
}

export interface Span {
  readonly from: DayNumber;
  readonly to: DayNumber;
}

/** The days of a station that eggs planted between these moments may need. */
export function neededSpan(starts: readonly number[]): Span {
  return { from: Math.floor(Math.min(...starts)), to: Math.ceil(Math.max(...starts)) + HORIZON };
}

/** A station that has been named but of which nothing is known. */
export function unknownStation(station: string): StationDays {
  return {
    station,
    kind: 'stream',
    latitude: null,
    longitude: null,
    accuracy: 0,
    reports: false,
    days: emptyDays(0, 0),
  };
}

/** Works out a station's water over a span, once; with what it was made from, which may serve again. */
export function stationWater(
  input: ForecastInput,
  target: StationDays,
  span: Span,
  before: WaterMade | null,
  changes: Changes,
): { readonly span: Span; readonly from: WaterMade; readonly made: StationWater } {
  const asked = {
    asOf: input.asOf,
    ...span,
    target,
    neighbours: input.stations.filter(({ station }) => station !== target.station),
    sightings: input.sightings,
    curve: input.curve,
    seed: input.seed,
    traces: TRACES,
  };
  const from = waterFrom(asked, before, changes);
  return { span, from, made: shared(input, from.water) };
}

function shared(input: ForecastInput, water: Water): StationWater {
  const known = new Map<Celsius, StationEnsemble | null>();
  return {
    water,
    central: { firstDay: water.days.firstDay, mean: water.days.mean },
    ensemble(offset) {
      let made = known.get(offset);
      if (made === undefined) {
        made = makeEnsemble(input, water, offset);
        known.set(offset, made);
      }
      return made;
    },
  };
}

function makeEnsemble(input: ForecastInput, water: Water, offset: Celsius): StationEnsemble | null {
  const traces = water.traces.length > 0 ? water.traces : onlyTrace(water);
  if (traces.length === 0) return null;
  const knownTo = Math.min(input.asOf, water.lastFilled ?? water.lastMeasured ?? water.days.firstDay - 1) + 1;
  const drawn = normalDraws(traces.length, seedFor(input.seed, water.station, 'offset'));
  const winters = {
    firstDay: water.days.firstDay,
    traces,
    offset: drawn.map((z) => z * offset),
  };
  return {
    all: ensemble(water.station, winters, water.winters, knownTo, input.seed),
    parts: new Map(),
  };
}

/** Days that are known although nothing can be said of those to come: stages passed in them have dates. */
function onlyTrace({ days }: Water): Float64Array[] {
  return Number.isFinite(days.mean[0]) ? Array.from({ length: TRACES }, () => days.mean) : [];
}
