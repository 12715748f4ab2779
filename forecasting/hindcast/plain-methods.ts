import type { NeighbourRecord } from '../gaps/candidate.js';
import type { PairSums } from '../gaps/pair-sums.js';
import { sumsWithout } from '../gaps/pair-sums.js';
import { type Line, overallLine } from '../gaps/relation.js';
import { DAYS_BEFORE } from '../place.js';
import { BIN_DAYS } from '../residual/season-kernel.js';
import { type HindcastStation, straightOver, type Winter } from './winter.js';

/** The regression of the plain method sees the days from fertilisation to the end of June, as a biologist's would. */
const FIRST_BIN = Math.floor(DAYS_BEFORE / BIN_DAYS);
const LAST_BIN = Math.ceil((DAYS_BEFORE + 242) / BIN_DAYS);
const LEAST_DAYS = 60;
/** A neighbour must have this share of the days it is asked for. */
const LEAST_SHARE = 0.9;
export const NEAR_KM = 25;

export interface BestNeighbour {
  readonly neighbour: HindcastStation;
  readonly line: Line;
}

/**
 * The best single neighbour by ordinary regression: the one whose line over the other seasons' winter days leaves the
 * least error, among those that have the days `from`..`to` of the axis.
 */
export function bestNeighbour(
  target: HindcastStation,
  others: readonly HindcastStation[],
  season: number,
  pairsWith: (neighbour: NeighbourRecord) => PairSums,
  allowed: (km: number | null) => boolean,
  from: number,
  to: number,
): BestNeighbour | null {
  let best: BestNeighbour | null = null;
  for (const other of others) {
    if (other === target || other.station.kind === 'air') continue;
    if (!allowed(kilometres(target, other)) || shareKnown(other.mean, from, to) < LEAST_SHARE) continue;
    const line = overallLine(
      sumsWithout(pairsWith(other.asNeighbour), [season]),
      LEAST_DAYS,
      FIRST_BIN,
      LAST_BIN,
    );
    if (line !== null && (best === null || line.error < best.line.error)) best = { neighbour: other, line };
  }
  return best;
}

function shareKnown(mean: Float64Array, from: number, to: number): number {
  let known = 0;
  for (let i = from; i < to; i++) if (!Number.isNaN(mean[i])) known++;
  return to > from ? known / (to - from) : 1;
}

/** Great-circle distance, km; null where a station has no coordinates. */
export function kilometres(a: HindcastStation, b: HindcastStation): number | null {
  const { latitude: aLat, longitude: aLon } = a.station;
  const { latitude: bLat, longitude: bLon } = b.station;
  if (aLat === null || aLon === null || bLat === null || bLon === null) return null;
  const turn = Math.PI / 180;
  const h =
    Math.sin(((bLat - aLat) * turn) / 2) ** 2 +
    Math.cos(aLat * turn) * Math.cos(bLat * turn) * Math.sin(((bLon - aLon) * turn) / 2) ** 2;
  return 2 * 6371 * Math.asin(Math.sqrt(h));
}

/** Own days to the lead day, each other winter spliced on there; the days of those winters are `pasts`. */
export function spliced(
  own: ArrayLike<number>,
  pasts: readonly Float64Array[],
  lead: number,
): Float64Array[] {
  return pasts.map((past) => {
    const course = past.slice();
    for (let d = 0; d < lead && d < course.length; d++) course[d] = own[d];
    return course;
  });
}

/** The last week before the lead day, on and on; null without a day in it. */
export function persisted(
  own: ArrayLike<number>,
  before: ArrayLike<number>,
  lead: number,
  length: number,
): Float64Array | null {
  let sum = 0;
  let n = 0;
  for (let d = lead - 7; d < lead; d++) {
    const value = d >= 0 ? own[d] : before[before.length + d];
    if (Number.isNaN(value)) continue;
    sum += value;
    n++;
  }
  if (n === 0) return null;
  return Float64Array.from({ length }, (_, d) => (d < lead ? own[d] : sum / n));
}

/** A neighbour's days of the window through the line, holes straight; ends where its record ends. */
export function mapped(best: BestNeighbour, from: number, to: number): Float64Array {
  const { slope, intercept } = best.line;
  return straightOver(best.neighbour.mean, from, to).map((x) => intercept + slope * x);
}

/** Whole other winters of a station, from the fertilisation day on. */
export function pastWinters(
  winters: readonly Winter[],
  hidden: number,
  only: (year: number) => boolean,
): Float64Array[] {
  return winters.filter(({ year }) => year !== hidden && only(year)).map(({ measured }) => measured);
}

export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  if (sorted.length === 0) return Number.NaN;
  return sorted.length % 2 === 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
}
