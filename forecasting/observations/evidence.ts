import { type BoxQuestion, eggsOf, lastKnown, mostEggs } from '../boxes/box-forecast.js';
import { partCourse } from '../boxes/part-course.js';
import { sharedOffset } from '../boxes/shared-offset.js';
import type { StationWater } from '../boxes/station-waters.js';
import type { ForecastInput, ForecastRemark } from '../forecast.js';
import { sortedQuantile } from '../windows/draws.js';
import { shareArrived } from '../windows/mixture.js';
import type { StageDraws } from '../windows/stage-draws.js';
import { canBeEvidence, logChance, type StageObservation } from './likelihood.js';
import { keptDraws, reweighted } from './reweight.js';

/** What was seen of a lot, as the draws that are left of it. */
export interface LotEvidence {
  readonly kept: Int32Array;
  readonly remarks: readonly ForecastRemark[];
}

/**
 * Stages seen up to the as-of day as evidence on their lots. Draw k has the same lot, the same table and the same
 * course of the weather in every box, so what was seen in one box of a lot weighs the draws of all its boxes.
 */
export function evidenceByLot(
  input: ForecastInput,
  questions: readonly BoxQuestion[],
  waterFor: (question: BoxQuestion) => StationWater,
): Map<string, LotEvidence> {
  const found = new Map<string, LotEvidence>();
  for (const lot of new Set((input.observations ?? []).map((one) => one.lot))) {
    const seen = (input.observations ?? [])
      .filter((one) => one.lot === lot && one.day <= input.asOf && canBeEvidence(one))
      .sort((a, b) => a.day - b.day || (a.stage < b.stage ? -1 : 1));
    const weighed = seen.flatMap((one) => {
      const draws = drawsOf(input, one, questions, waterFor);
      return draws === null ? [] : [{ one, draws, chance: chances(one, draws) }];
    });
    if (weighed.length === 0) continue;
    const all = new Float64Array(weighed[0].chance.length);
    for (const { chance } of weighed) for (let k = 0; k < all.length; k++) all[k] += chance[k];
    const { kept, believed } = reweighted(all);
    const remarks = weighed.map(({ one, draws, chance }) =>
      evidenceRemark(one, draws, kept, believed === 1 && agrees(chance)),
    );
    found.set(lot, { kept, remarks });
  }
  return found;
}

function drawsOf(
  input: ForecastInput,
  { lot, box, stage }: StageObservation,
  questions: readonly BoxQuestion[],
  waterFor: (question: BoxQuestion) => StationWater,
): StageDraws | null {
  const holds = (question: BoxQuestion) => question.fills.some((fill) => fill.lot.lot === lot);
  const question = questions.find((one) => holds(one) && (box === null || one.box.box === box));
  if (question === undefined) return null;
  const place = waterFor(question);
  const shared = place.ensemble(sharedOffset(question.box, question.leading).spread);
  if (shared === null) return null;
  const fill = mostEggs(question.fills.filter((one) => one.lot.lot === lot));
  const moment = Math.min(input.asOf + 1, lastKnown(question.box));
  return partCourse(place, shared, eggsOf(fill), moment).stages.get(stage)?.draws ?? null;
}

/** What was seen had a chance of at least one in so many over all draws (ours). */
const ONE_IN = 10_000;

function agrees(chance: Float64Array): boolean {
  return chance.reduce((sum, value) => sum + Math.exp(value), 0) / chance.length > 1 / ONE_IN;
}

/** Eggs are looked at by day: the share that has come by noon. */
export function chances(seen: StageObservation, draws: StageDraws): Float64Array {
  return Float64Array.from(draws.median, (_, k) => logChance(shareArrived(draws, k, seen.day + 0.5), seen));
}

function evidenceRemark(
  { lot, stage, day, seen, of }: StageObservation,
  draws: StageDraws,
  kept: Int32Array,
  agreed: boolean,
): ForecastRemark {
  const middle = (of: StageDraws) => sortedQuantile(of.median.slice().sort(), 0.5);
  const moved = middle(keptDraws(draws, kept)) - middle(draws);
  const figures = { lot, stage, day, seen, of, moved: Number.isFinite(moved) ? moved : 0 };
  return { code: agreed ? 'observation-used' : 'observation-surprises', with: figures };
}
