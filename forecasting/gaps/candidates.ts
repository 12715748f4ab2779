import type { SeasonAxis } from '../season-axis.js';
import { type Candidate, judge, type NeighbourRecord } from './candidate.js';
import { type PairSums, pairSums, sumsWithout } from './pair-sums.js';
import { overallLine } from './relation.js';

/** Stations cross-validated at most: those whose one line over the other seasons leaves least. */
const MOST_JUDGED = 20;

/** Water stations from which on the air has nothing to add (it cost up to 0.1 of the error in Montana's spring). */
const ENOUGH_WATER = 4;

/**
 * The stations that can speak for the target in one season, best first. Equal errors are ordered by name, so that
 * the order in which stations are given does not matter.
 */
export function rankedCandidates(
  axis: SeasonAxis,
  target: Float64Array,
  neighbours: readonly NeighbourRecord[],
  season: number,
  pairsWith: (neighbour: NeighbourRecord) => PairSums = (n) => pairSums(axis, n.mean, target),
): Candidate[] {
  const candidates: Candidate[] = [];
  const ask = (asked: readonly NeighbourRecord[]) => {
    for (const { neighbour, pairs } of screened(asked, season, pairsWith)) {
      const candidate = judge(axis, target, neighbour, season, pairs);
      if (candidate !== null) candidates.push(candidate);
    }
  };
  ask(neighbours.filter(({ air }) => !air));
  if (candidates.length < ENOUGH_WATER) ask(neighbours.filter(({ air }) => air));
  return candidates.sort((a, b) => a.error - b.error || (a.neighbour.station < b.neighbour.station ? -1 : 1));
}

interface Screened {
  readonly neighbour: NeighbourRecord;
  readonly pairs: PairSums;
  readonly left: number;
}

function screened(
  neighbours: readonly NeighbourRecord[],
  season: number,
  pairsWith: (neighbour: NeighbourRecord) => PairSums,
): Screened[] {
  const all = neighbours.map((neighbour) => {
    const pairs = pairsWith(neighbour);
    if (neighbours.length <= MOST_JUDGED) return { neighbour, pairs, left: 0 };
    const line = overallLine(sumsWithout(pairs, [season]), 1);
    return { neighbour, pairs, left: line === null ? Number.POSITIVE_INFINITY : line.error };
  });
  if (all.length <= MOST_JUDGED) return all;
  all.sort((a, b) => a.left - b.left || (a.neighbour.station < b.neighbour.station ? -1 : 1));
  return all.slice(0, MOST_JUDGED);
}
