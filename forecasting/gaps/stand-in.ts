import { BINS } from '../residual/season-kernel.js';
import type { Candidate, NeighbourRecord } from './candidate.js';
import { MOST_CANDIDATES } from './stack.js';

/** Two streams of one neighbourhood differ by so much, °C (ours: the middle half of open-data's pairs lies below). */
export const AS_IT_STANDS_ERROR = 1.5;

/**
 * Neighbours of a place that has no days in common with anyone: each as it stands. The nearest one where places are
 * known, else all of them alike.
 */
export function standIns(neighbours: readonly NeighbourRecord[], length: number): Candidate[] {
  const streams = neighbours.filter(({ air, mean }) => !air && mean.some((value) => !Number.isNaN(value)));
  const nearest = streams
    .filter(({ kilometres }) => kilometres !== null)
    .sort((a, b) => (a.kilometres ?? 0) - (b.kilometres ?? 0));
  const chosen = nearest.length > 0 ? nearest.slice(0, 1) : streams.slice(0, MOST_CANDIDATES);
  return chosen.map((neighbour) => ({
    neighbour,
    relation: {
      intercept: new Float64Array(BINS),
      slope: new Float64Array(BINS).fill(1),
      overall: { slope: 1, intercept: 0, n: 0, r2: 0, error: AS_IT_STANDS_ERROR },
    },
    error: AS_IT_STANDS_ERROR,
    n: 0,
    residuals: new Float32Array(length).fill(Number.NaN),
    asksSeason: false,
  }));
}
