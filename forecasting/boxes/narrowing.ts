import { Origin } from '../day-series.js';
import { stageRow } from '../needs.js';
import { chances } from '../observations/evidence.js';
import { canBeEvidence, type StageObservation } from '../observations/likelihood.js';
import { keptDraws, weightsOf } from '../observations/reweight.js';
import type { StageName } from '../table.js';
import type { DayTime } from '../units.js';
import { eggPaths, settledPaths } from '../windows/eggs.js';
import { pathsOf } from '../windows/ensemble.js';
import { intervalOf } from '../windows/interval.js';
import { shareArrived } from '../windows/mixture.js';
import { type StageDraws, stageCourse } from '../windows/stage-draws.js';
import type { SharpenQuestion } from './sharpen.js';

/** Days by which the 80 % interval of a stage's median narrows if the water up to today were known, but for `left`. */
export function narrowerByWater(
  { input, shared, eggs, lot }: SharpenQuestion,
  stage: StageName,
  left = 0,
): number {
  const row = stageRow(eggs.table, stage);
  if (row === undefined) return 0;
  const moment: DayTime = input.asOf + 1;
  const { all } = shared;
  const count = all.winters.traces.length;
  const after = stageCourse(all, eggs, row, (law) =>
    settledPaths(eggPaths(eggs, law, pathsOf(all, law)), count, moment, left),
  );
  const before = stageCourse(all, eggs, row);
  return difference(width(keptDraws(before.draws, lot.kept)), width(keptDraws(after.draws, lot.kept)));
}

/** Two streams of one neighbourhood differ by so much where nobody has said (°C; see `gaps/stand-in`). */
const UNKNOWN_STATION = 1.5;

/**
 * What one more station would leave of the doubt: two witnesses of the same worth, 1/√(1 + (now/station)²), its error
 * that of the best station that speaks for this water now.
 */
export function leftByStation({ input, place, eggs }: SharpenQuestion): number {
  const { days, stretches } = place.water;
  let sum = 0;
  let count = 0;
  for (let day = Math.floor(eggs.planted); day <= input.asOf; day++) {
    const at = day - days.firstDay;
    if (at < 0 || at >= days.mean.length || days.origin[at] === Origin.measured) continue;
    sum += days.spread[at];
    count++;
  }
  if (count === 0) return 1;
  const errors = stretches.flatMap(({ sources }) => sources.map(({ error }) => error));
  const station = errors.length > 0 ? Math.max(0.1, Math.min(...errors)) : UNKNOWN_STATION;
  return 1 / Math.hypot(1, sum / count / station);
}

/** Outcomes tried of an observation, one out of each of so many equal slices of what may be. */
const OUTCOMES = 9;

const known = new WeakMap<StageDraws, Map<string, number>>();

/**
 * Days by which the interval of `next` narrows on average when `eggs` of the lot are looked at today for `seen`: what
 * may be seen is taken from the draws themselves, and each outcome weighs them (preposterior analysis; Raiffa &
 * Schlaifer 1961, Applied Statistical Decision Theory: memory).
 */
export function narrowerByLooking(
  { input, lot }: SharpenQuestion,
  next: StageName,
  seen: StageName,
  eggs: number,
): number {
  const draws = lot.draws.get(seen);
  const window = lot.draws.get(next);
  if (draws === undefined || window === undefined) return 0;
  const answers = known.get(window) ?? new Map<string, number>();
  known.set(window, answers);
  const key = `${seen} ${eggs} ${input.asOf}`;
  let answer = answers.get(key);
  if (answer === undefined) {
    answer = onAverage(input.asOf, lot.forecast.lot, draws, window, seen, eggs);
    answers.set(key, answer);
  }
  return answer;
}

function onAverage(
  day: number,
  lot: string,
  draws: StageDraws,
  window: StageDraws,
  stage: StageName,
  of: number,
): number {
  const shares = Float64Array.from(draws.median, (_, k) => shareArrived(draws, k, day + 0.5)).sort();
  const spread = shares[Math.floor(0.9 * shares.length)] - shares[Math.floor(0.1 * shares.length)];
  // what every draw agrees about is not worth a look
  if (spread < 0.05) return 0;
  const order = Array.from(window.median.keys()).sort((a, b) => window.median[a] - window.median[b]);
  let after = 0;
  for (let i = 0; i < OUTCOMES; i++) {
    const share = shares[Math.floor(((i + 0.5) / OUTCOMES) * shares.length)];
    const found = Math.round(share * of);
    const one: StageObservation = { lot, box: null, stage, day, seen: found, upTo: found, of };
    if (!canBeEvidence(one)) return 0;
    after += weightedWidth(window.median, order, weightsOf(chances(one, draws), 1)) / OUTCOMES;
  }
  return difference(width(window), after);
}

function weightedWidth(moments: Float64Array, order: readonly number[], weights: Float64Array): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const at = (q: number) => {
    let sum = 0;
    for (const k of order) {
      sum += weights[k];
      if (sum >= q * total) return moments[k];
    }
    return moments[order[order.length - 1]];
  };
  return at(0.9) - at(0.1);
}

function width({ median }: StageDraws): number {
  const { p10, p90 } = intervalOf(median);
  return p10 === null || p90 === null ? Number.NaN : p90 - p10;
}

function difference(before: number, after: number): number {
  return Number.isFinite(before - after) ? Math.max(0, before - after) : 0;
}
