import type { Law } from '../table.js';
import type { DayTime } from '../units.js';
import { normalDraws, seedFor } from './draws.js';
import { type RatePaths, ratePaths, type Winters } from './rate-paths.js';

/** Draws of the lots' and tables' spread for each trace. */
export const DRAWS_PER_TRACE = 3;

/**
 * The possible winters at one station with everything that is drawn once a winter, shared by every box there: the
 * offset of logger and gravel. Draw k goes with trace k mod (number of traces).
 */
export interface Ensemble {
  readonly station: string;
  readonly winters: Winters;
  /** Independent past winters behind the traces. */
  readonly winterCount: number;
  /** Up to here the water is measured or filled; later days are projected. */
  readonly knownTo: DayTime;
  readonly draws: number;
  readonly seed: number;
  readonly paths: Map<Law, RatePaths>;
  readonly normals: Map<string, Float64Array>;
}

export function ensemble(
  station: string,
  winters: Winters,
  winterCount: number,
  knownTo: DayTime,
  seed: number,
): Ensemble {
  const count = winters.traces.length;
  return {
    station,
    winters,
    winterCount,
    knownTo,
    draws: count * DRAWS_PER_TRACE,
    seed,
    paths: new Map(),
    normals: new Map(),
  };
}

/** The running sums of a law over the ensemble, worked out once. */
export function pathsOf(all: Ensemble, law: Law): RatePaths {
  let paths = all.paths.get(law);
  if (paths === undefined) {
    paths = ratePaths(all.winters, law);
    all.paths.set(law, paths);
  }
  return paths;
}

/** Standard normal draws for a named lot or table, the same wherever that name turns up. */
export function normalsFor(all: Ensemble, ...names: readonly string[]): Float64Array {
  const key = names.join('\u001f');
  let drawn = all.normals.get(key);
  if (drawn === undefined) {
    drawn = normalDraws(all.draws, seedFor(all.seed, ...names));
    all.normals.set(key, drawn);
  }
  return drawn;
}
