import type { SeasonAxis } from '../season-axis.js';
import { type Candidate, judge, type NeighbourRecord } from './candidate.js';
import { type PairSums, pairSums, sumsWithout } from './pair-sums.js';
import { overallLine } from './relation.js';

/** Stations cross-validated at most: those whose one line over the other seasons leaves least. */
const MOST_JUDGED = 20;

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
  for (const { neighbour, pairs } of screened(neighbours, season, pairsWith)) {
    const candidate = judge(axis, target, neighbour, season, pairs);
    if (candidate !== null) candidates.push(candidate);
  }
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
