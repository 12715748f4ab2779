import { BIN_DAYS, BINS } from '../residual/season-kernel.js';
import type { SeasonAxis } from '../season-axis.js';
import { daysIn, type PairSums, pairSums, SUMS, sumsWithout } from './pair-sums.js';
import { fitRelation, type Relation, relate } from './relation.js';

/** Another station's days on the axis, NaN where it has none. An air station's are already smoothed. */
export interface NeighbourRecord {
  readonly station: string;
  readonly air: boolean;
  readonly mean: Float64Array;
  /** From the target, where both places are known. */
  readonly kilometres: number | null;
}

/** A station that can speak for the target, with the blocked cross-validation that says how well. */
export interface Candidate {
  readonly neighbour: NeighbourRecord;
  readonly relation: Relation;
  /** Blocked cross-validation root mean square error, °C. */
  readonly error: number;
  /** Days it was judged on. */
  readonly n: number;
  /** Cross-validation error of each day of the axis, measured minus predicted; NaN where none. */
  readonly residuals: Float32Array;
  /** The season at hand had to be asked. */
  readonly asksSeason: boolean;
}

/** Shared days below which a season tells nothing of a relation. */
const LEAST_SEASON = 40;
/** Shared days below which no relation is made. */
export const LEAST_DAYS = 20;
/** Shared days of other seasons below which the season at hand is asked too. */
export const ENOUGH_ELSEWHERE = 120;
/** Days left out at a time where there is but one season to judge on, and where that season is but a few weeks. */
const BLOCK_BINS = Math.round(30 / BIN_DAYS);
const SHORT_BLOCK_BINS = Math.round(10 / BIN_DAYS);
/** A season of fewer shared days is judged by the short blocks: without a month nothing would be left of it. */
const FEW_WEEKS = 60;
/** One season judged on itself looks better than the next will be (ours). */
const ONE_SEASON_PENALTY = 1.5;
/** Errors count on the days eggs lie in the gravel, about 1 November to 30 June: late summers do not hatch eggs. */
const FIRST_DAY_JUDGED = 55;
const LAST_DAY_JUDGED = 303;

/**
 * What a neighbour is worth for filling one season of the target: a relation fitted on the other seasons, judged by
 * leaving out one of them at a time (blocked cross-validation: days of one winter are not independent; Roberts et
 * al. 2017, Ecography 40:913-929: memory). Where the other seasons share too little, the season at hand is used as
 * well, judged by leaving out a month at a time.
 *
 * @param pairs sums of the days shared, all seasons; the season at hand is left out
 * @returns null where the two share too little, or the neighbour never changes
 */
export function judge(
  axis: SeasonAxis,
  target: Float64Array,
  neighbour: NeighbourRecord,
  season: number,
  pairs: PairSums,
): Candidate | null {
  const elsewhere = sumsWithout(pairs, [season]);
  if (daysIn(elsewhere) < ENOUGH_ELSEWHERE) return judgeWithSeason(axis, target, neighbour);
  const relation = fitRelation(elsewhere, LEAST_DAYS);
  if (relation === null) return null;
  const folds = [...pairs.keys()].filter((s) => s !== season && daysIn(sumsOf(pairs, s)) >= LEAST_SEASON);
  if (folds.length < 2) return judgeByMonths(axis, target, neighbour, elsewhere, relation, season);
  const residuals = new Float32Array(axis.length).fill(Number.NaN);
  for (const fold of folds) {
    const rest = elsewhere.slice();
    const out = sumsOf(pairs, fold);
    for (let i = 0; i < rest.length; i++) rest[i] -= out[i];
    const without = fitRelation(rest, LEAST_DAYS);
    if (without === null) continue;
    residualsOf(axis, target, neighbour, without, residuals, (i) => axis.season[i] === fold);
  }
  return candidate(neighbour, relation, residuals, 1, false);
}

function sumsOf(pairs: PairSums, season: number): Float64Array {
  return pairs.get(season) ?? new Float64Array(BINS * SUMS);
}

function judgeWithSeason(
  axis: SeasonAxis,
  target: Float64Array,
  neighbour: NeighbourRecord,
): Candidate | null {
  const all = sumsWithout(pairSums(axis, neighbour.mean, target), []);
  const relation = fitRelation(all, LEAST_DAYS);
  return relation === null ? null : judgeByMonths(axis, target, neighbour, all, relation, null);
}

function judgeByMonths(
  axis: SeasonAxis,
  target: Float64Array,
  neighbour: NeighbourRecord,
  sums: Float64Array,
  relation: Relation,
  leftOut: number | null,
): Candidate | null {
  const residuals = new Float32Array(axis.length).fill(Number.NaN);
  const block = daysIn(sums) < FEW_WEEKS ? SHORT_BLOCK_BINS : BLOCK_BINS;
  for (let from = 0; from < BINS; from += block) {
    const to = Math.min(BINS, from + block);
    const rest = sums.slice();
    rest.fill(0, from * SUMS, to * SUMS);
    const without = fitRelation(rest, LEAST_DAYS);
    if (without === null) continue;
    const first = from * BIN_DAYS;
    const last = to * BIN_DAYS;
    residualsOf(axis, target, neighbour, without, residuals, (i) => {
      return axis.season[i] !== leftOut && axis.seasonDay[i] >= first && axis.seasonDay[i] < last;
    });
  }
  return candidate(neighbour, relation, residuals, ONE_SEASON_PENALTY, leftOut === null);
}

function residualsOf(
  axis: SeasonAxis,
  target: Float64Array,
  neighbour: NeighbourRecord,
  relation: Relation,
  residuals: Float32Array,
  asked: (i: number) => boolean,
): void {
  for (let i = 0; i < axis.length; i++) {
    if (Number.isNaN(target[i]) || Number.isNaN(neighbour.mean[i]) || outside(axis.seasonDay[i])) continue;
    if (asked(i)) residuals[i] = target[i] - relate(relation, axis.seasonDay[i], neighbour.mean[i]);
  }
}

function candidate(
  neighbour: NeighbourRecord,
  relation: Relation,
  residuals: Float32Array,
  penalty: number,
  asksSeason: boolean,
): Candidate | null {
  let squares = 0;
  let n = 0;
  for (const e of residuals) {
    if (Number.isNaN(e)) continue;
    squares += e * e;
    n++;
  }
  if (n < LEAST_DAYS) return null;
  if (penalty !== 1) for (let i = 0; i < residuals.length; i++) residuals[i] *= penalty;
  return { neighbour, relation, error: penalty * Math.sqrt(squares / n), n, residuals, asksSeason };
}

function outside(seasonDay: number): boolean {
  return seasonDay < FIRST_DAY_JUDGED || seasonDay > LAST_DAY_JUDGED;
}
