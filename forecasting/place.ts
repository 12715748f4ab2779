import type { NeighbourRecord } from './gaps/candidate.js';
import { rankedCandidates } from './gaps/candidates.js';
import { stackEstimate } from './gaps/estimate.js';
import { filledRecord } from './gaps/fill.js';
import type { PairSums } from './gaps/pair-sums.js';
import { type Stack, stackOf } from './gaps/stack.js';
import { standIns } from './gaps/stand-in.js';
import { type Member, membersOf } from './projection/members.js';
import { type Normals, normalsOf } from './projection/normals.js';
import type { SeasonAxis } from './season-axis.js';

/** Days before the eggs in which the station's own days still tell of the error at planting. */
export const DAYS_BEFORE = 60;

/** The days a forecast is made for, with those before that lead up to it; indexes on the axis, `to` excluded. */
export interface Window {
  readonly start: number;
  readonly from: number;
  readonly to: number;
}

/**
 * What the other seasons teach of one station: how its neighbours speak for it, its normal water, its past winters.
 * Nothing in it comes from the season at hand, unless the other seasons share too little with a neighbour: then
 * its days so far are asked as well.
 */
export interface Place {
  readonly axis: SeasonAxis;
  readonly season: number;
  readonly window: Window;
  readonly stack: Stack;
  readonly normals: Normals;
  readonly members: readonly Member[];
  /** The season at hand had to be asked: the place changes with every day that is read. */
  readonly asksSeason: boolean;
  /** The station's own days the place was made from. */
  readonly target: Float64Array;
  /** The normals are a curve somebody stated. */
  readonly curve: boolean;
}

export function placeOf(
  axis: SeasonAxis,
  target: Float64Array,
  neighbours: readonly NeighbourRecord[],
  season: number,
  window: Window,
  pairsWith?: (neighbour: NeighbourRecord) => PairSums,
): Place {
  const ranked = rankedCandidates(axis, target, neighbours, season, pairsWith);
  const unknown = ranked.length === 0 && target.every((value) => Number.isNaN(value));
  const stack = stackOf(axis, unknown ? standIns(neighbours, axis.length) : ranked);
  const record = stack.candidates.length > 0 ? recordFilled(axis, stack, target, season) : target;
  const normals = normalsOf(axis, record, target, season, stack.sd);
  const members = membersOf(
    axis,
    record,
    target,
    normals,
    season,
    window.start,
    window.to - window.start,
    stack.sd,
  );
  const asksSeason = stack.candidates.some((candidate) => candidate.asksSeason);
  return { axis, season, window, stack, normals, members, asksSeason, target, curve: false };
}

function recordFilled(axis: SeasonAxis, stack: Stack, target: Float64Array, season: number): Float64Array {
  const values = stack.candidates.map(({ neighbour }) => withoutSeason(axis, neighbour.mean, season));
  const estimate = stackEstimate(axis, stack, values, target, 0, axis.length);
  return filledRecord(axis, stack, estimate, target);
}

/** A copy without the days of a season. */
export function withoutSeason(axis: SeasonAxis, mean: Float64Array, season: number): Float64Array {
  const kept = mean.slice();
  for (let i = 0; i < axis.length; i++) if (axis.season[i] === season) kept[i] = Number.NaN;
  return kept;
}
