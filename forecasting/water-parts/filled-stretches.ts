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
  const sources = sourcesOf(place, waters);
  const stretches: FilledStretch[] = [];
  let begun: number | null = null;
  for (let d = window.from - window.start; d <= waters.origin.length; d++) {
    const filled = d < waters.origin.length && waters.origin[d] === Origin.filled;
    if (filled && begun === null) begun = d;
    if (filled || begun === null) continue;
    const first = axis.first + window.start;
    stretches.push({ from: first + begun, to: first + d - 1, sources });
    begun = null;
  }
  return stretches;
}

function sourcesOf(place: Place, waters: PossibleWaters): FilledStretch['sources'] {
  if (!waters.origin.includes(Origin.filled)) return [];
  const { share } = waters.estimate;
  const total = share.reduce((sum, of) => sum + of, 0);
  return place.stack.candidates
    .map((candidate, k) => ({ candidate, weight: total > 0 ? share[k] / total : 0 }))
    .filter(({ weight }) => weight >= LEAST_WEIGHT)
    .sort((a, b) => b.weight - a.weight)
    .map(({ candidate, weight }) => ({
      station: candidate.neighbour.station,
      weight,
      error: candidate.error,
      ...lineOf(place, candidate),
    }));
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
