import type { NeighbourRecord } from '../gaps/candidate.js';
import type { Sightings } from '../gaps/fill.js';
import type { PairSums } from '../gaps/pair-sums.js';
import { neighbourRecord } from '../gaps/records.js';
import { type Place, placeOf } from '../place.js';
import { type PossibleWaters, possibleWaters } from '../possible-waters.js';
import { neverFreezes, seenWater } from '../water-parts/sightings.js';
import type { HindcastCase, HindcastOptions } from './contract.js';
import { simulatedVisits } from './simulated-visits.js';
import type { HindcastRecord, HindcastStation, Winter } from './winter.js';

/** A winter of one station with its days hidden, ready to be forecast from any lead day. */
export interface HiddenWinter {
  /** The water as it would have been forecast; `lead` in days from fertilisation. */
  forecast(of: HindcastCase, lead: number): PossibleWaters;
  /** The same with own days hidden from..to−1 only (days from fertilisation), neighbours whole. */
  withGap(from: number, to: number): PossibleWaters;
  winters(of: HindcastCase): number;
}

export function hiddenWinter(
  record: HindcastRecord,
  target: HindcastStation,
  winter: Winter,
  pairsWith: (neighbour: NeighbourRecord) => PairSums,
  options: HindcastOptions,
): HiddenWinter {
  const { axis } = record;
  const { window, season } = winter;
  const pastOnly = options.winters === 'past-only';
  const end = window.to;
  const cut = (mean: Float64Array, from: number, to: number) => {
    const kept = mean.slice();
    kept.fill(Number.NaN, from, to);
    if (pastOnly) kept.fill(Number.NaN, end);
    return kept;
  };
  // the whole season out: what is seen of it comes back with each lead day
  const elsewhere = cut(target.mean, window.start, end);
  const others = record.stations.filter((other) => other !== target);
  const pairs = pastOnly ? (n: NeighbourRecord) => before(pairsWith(n), season) : pairsWith;
  const places = new Map<string, Place>();
  const placeFor = (alone: boolean, visible: Float64Array): Place => {
    const key = alone ? 'alone' : 'among';
    const known = places.get(key);
    if (known !== undefined && !known.asksSeason) return known;
    const neighbours = alone ? [] : others.map(({ asNeighbour }) => asNeighbour);
    const seen = pastOnly ? neighbours.map((n) => ({ ...n, mean: cut(n.mean, end, end) })) : neighbours;
    const place = placeOf(axis, known === undefined ? elsewhere : visible, seen, season, window, pairs);
    places.set(key, place);
    return place.asksSeason && known === undefined ? placeFor(alone, visible) : place;
  };
  const byName = new Map(others.map((other) => [other.station.station, other]));
  const seenOf = (place: Place, last: number): Float64Array[] =>
    place.stack.candidates.map(({ neighbour }) => {
      const other = byName.get(neighbour.station);
      if (other === undefined) throw new RangeError(`no station ${neighbour.station}`);
      return last >= end
        ? other.asNeighbour.mean
        : neighbourRecord(axis, other.station, cut(other.mean, last, end)).mean;
    });
  const nothing = new Float64Array(window.to - window.start).fill(Number.NaN);
  const unseen = { celsius: nothing, variance: nothing };
  const seenBy = (place: Place, lead: number): Sightings => {
    if (options.visits !== true) return unseen;
    const name = target.station.station;
    const visits = simulatedVisits(name, axis, target.mean, window, lead, options.seed);
    return seenWater(visits, name, axis, window, axis.first + lead - 1, neverFreezes(place));
  };
  const waters = (
    place: Place,
    visible: Float64Array,
    last: number,
    seen: Sightings,
    traces = options.traces,
  ) =>
    possibleWaters(place, { target: visible, neighbours: seenOf(place, last), seen }, options.seed, traces);
  return {
    forecast(of, lead) {
      const own = window.from + (of === 'under-ice' ? 0 : lead);
      const visible = cut(target.mean, own, end);
      const place = placeFor(of === 'history', visible);
      const last = of === 'late-download' ? end : window.from + lead;
      return waters(place, visible, last, seenBy(place, window.from + lead));
    },
    withGap(from, to) {
      const visible = cut(target.mean, window.from + from, window.from + to);
      return waters(placeFor(false, visible), visible, end, unseen, 2);
    },
    winters: (of) => places.get(of === 'history' ? 'alone' : 'among')?.members.length ?? 0,
  };
}

function before(pairs: PairSums, season: number): PairSums {
  return new Map([...pairs].filter(([other]) => other < season));
}
