import { Origin } from '../day-series.js';
import type { Candidate } from '../gaps/candidate.js';
import type { Place } from '../place.js';
import type { PossibleWaters } from '../possible-waters.js';
import { fitLinear } from '../regression/linear.js';
import { NoRegression } from '../regression/no-regression.js';
import type { FilledStretch } from '../water.js';

/** A station whose weight is less says nothing worth a line. */
const LEAST_WEIGHT = 0.02;

/** The runs of filled days with the stations they came from and the regression through all days shared. */
export function filledStretches(place: Place, waters: PossibleWaters): FilledStretch[] {
  const { axis, window } = place;
  const lines = new Map<Candidate, Line>();
  const stretches: FilledStretch[] = [];
  let begun: number | null = null;
  for (let d = window.from - window.start; d <= waters.origin.length; d++) {
    const filled = d < waters.origin.length && waters.origin[d] === Origin.filled;
    if (filled && begun === null) begun = d;
    if (filled || begun === null) continue;
    const first = axis.first + window.start;
    stretches.push({
      from: first + begun,
      to: first + d - 1,
      sources: sourcesOf(place, waters, lines, begun, d),
    });
    begun = null;
  }
  return stretches;
}

/** The stations that spoke on the days from `begun` up to `end`, the weightiest first. */
function sourcesOf(
  place: Place,
  { estimate }: PossibleWaters,
  lines: Map<Candidate, Line>,
  begun: number,
  end: number,
): FilledStretch['sources'] {
  const { candidates } = place.stack;
  const share = new Float64Array(candidates.length);
  for (let d = begun; d < end; d++) {
    place.stack.weights(estimate.spoke[d]).of.forEach((weight, k) => {
      share[k] += weight / (end - begun);
    });
  }
  return candidates
    .map((candidate, k) => ({ candidate, weight: share[k] }))
    .filter(({ weight }) => weight >= LEAST_WEIGHT)
    .sort((a, b) => b.weight - a.weight)
    .map(({ candidate, weight }) => {
      const line = lines.get(candidate) ?? lineOf(place, candidate);
      lines.set(candidate, line);
      return { station: candidate.neighbour.station, weight, error: candidate.error, ...line };
    });
}

interface Line {
  readonly slope: number;
  readonly intercept: number;
  readonly n: number;
  readonly r2: number;
}

/** The one line through the days the candidate was judged on; its own where there are too few. */
function lineOf(place: Place, candidate: Candidate): Line {
  const x: number[] = [];
  const y: number[] = [];
  for (let i = 0; i < place.axis.length; i++) {
    const value = place.target[i];
    if (Number.isNaN(value) || Number.isNaN(candidate.residuals[i])) continue;
    x.push(candidate.neighbour.mean[i]);
    y.push(value);
  }
  try {
    const { slopes, intercept, n, r2 } = fitLinear([x], y);
    return { slope: slopes[0], intercept, n, r2 };
  } catch (error) {
    if (error instanceof NoRegression) return candidate.relation.overall;
    throw error;
  }
}
