import type { StationDays } from '../day-series.js';
import type { NeighbourRecord } from '../gaps/candidate.js';
import { type PairSums, pairSums } from '../gaps/pair-sums.js';
import { neighbourRecord, onAxis } from '../gaps/records.js';
import { DAYS_BEFORE, type Window } from '../place.js';
import { type SeasonAxis, seasonAxis } from '../season-axis.js';
import type { MonthDay } from './contract.js';
import { networks } from './networks.js';

const MS_DAY = 86_400_000;
/** A winter counts when so many of its 242 days from the fertilisation day are measured. */
const WINTER_DAYS = 242;
const LEAST_MEASURED = 235;
/** Icy: 60 or more days at or below 0.5 °C in the first 182. */
const ICE_CELSIUS = 0.5;
const ICE_SPAN = 182;
const ICE_DAYS = 60;
/** Days after fertilisation that a forecast looks ahead: to the end of the season it began in. */
export const HORIZON = 305;
/** The record of a winter ends at the first hole longer than this. */
const LONGEST_HOLE = 7;

/** Stations on one axis, each as itself and as a neighbour. */
export interface HindcastRecord {
  readonly axis: SeasonAxis;
  readonly stations: readonly HindcastStation[];
  readonly fertilised: MonthDay;
}

export interface HindcastStation {
  readonly station: StationDays;
  readonly mean: Float64Array;
  readonly asNeighbour: NeighbourRecord;
  readonly network: number;
}

export interface Winter {
  /** Year of fertilisation. */
  readonly year: number;
  readonly season: number;
  readonly window: Window;
  readonly icy: boolean;
  /** Measured days from fertilisation on, holes straight, to where the record ends. */
  readonly measured: Float64Array;
}

export function hindcastRecord(stations: readonly StationDays[], fertilised: MonthDay): HindcastRecord {
  let first = Number.POSITIVE_INFINITY;
  let last = Number.NEGATIVE_INFINITY;
  for (const { days } of stations) {
    first = Math.min(first, days.firstDay);
    last = Math.max(last, days.firstDay + days.mean.length - 1);
  }
  if (!(last >= first)) return { axis: seasonAxis(0, -1, 0), stations: [], fertilised };
  const begins = Date.UTC(2001, fertilised.month - 1, fertilised.day) / MS_DAY - DAYS_BEFORE;
  const axis = seasonAxis(first - DAYS_BEFORE - 1, last + HORIZON, begins);
  const sorted = [...stations].sort((a, b) => (a.station < b.station ? -1 : 1));
  const network = networks(sorted);
  return {
    axis,
    fertilised,
    stations: sorted.map((station, i) => {
      const mean = onAxis(axis, station.days, axis.length);
      return { station, mean, asNeighbour: neighbourRecord(axis, station, mean), network: network[i] };
    }),
  };
}

/** The winters of a station that count, oldest first. */
export function wholeWinters({ axis, fertilised }: HindcastRecord, { mean }: HindcastStation): Winter[] {
  const winters: Winter[] = [];
  const firstYear = new Date(axis.first * MS_DAY).getUTCFullYear();
  for (let year = firstYear; ; year++) {
    const from = Date.UTC(year, fertilised.month - 1, fertilised.day) / MS_DAY - axis.first;
    if (from + HORIZON > axis.length) break;
    if (from < DAYS_BEFORE) continue;
    let days = 0;
    let ice = 0;
    for (let d = 0; d < WINTER_DAYS; d++) {
      if (Number.isNaN(mean[from + d])) continue;
      days++;
      if (d < ICE_SPAN && mean[from + d] <= ICE_CELSIUS) ice++;
    }
    if (days < LEAST_MEASURED) continue;
    const start = from - DAYS_BEFORE;
    winters.push({
      year,
      season: axis.season[from],
      window: { start, from, to: from + HORIZON },
      icy: ice >= ICE_DAYS,
      measured: straightOver(mean, from, from + HORIZON),
    });
  }
  return winters;
}

/** The days from..to−1 with holes straight, cut where the record ends or a hole is too long. */
export function straightOver(mean: Float64Array, from: number, to: number): Float64Array {
  const out = mean.slice(from, to);
  let last = -1;
  for (let d = 0; d < out.length; d++) {
    if (Number.isNaN(out[d])) continue;
    if (d - last - 1 > LONGEST_HOLE) break;
    for (let k = last + 1; k < d; k++) {
      out[k] = last < 0 ? out[d] : out[last] + ((out[d] - out[last]) * (k - last)) / (d - last);
    }
    last = d;
  }
  return out.subarray(0, last + 1);
}

/** Pair sums of a target with its neighbours, worked out when first asked for. */
export function sharedPairs(
  axis: SeasonAxis,
  target: Float64Array,
): (neighbour: NeighbourRecord) => PairSums {
  const known = new Map<string, PairSums>();
  return (neighbour) => {
    let pairs = known.get(neighbour.station);
    if (pairs === undefined) {
      pairs = pairSums(axis, neighbour.mean, target);
      known.set(neighbour.station, pairs);
    }
    return pairs;
  };
}
