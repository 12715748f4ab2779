import jStat from 'jstat';
import type { StageName } from '../table.js';
import type { DayNumber } from '../units.js';

/** Eggs of a lot looked at on a day: how many had come to a stage. */
export interface StageObservation {
  readonly lot: string;
  /** The box that was opened; null where eggs of the lot were looked at elsewhere. */
  readonly box: string | null;
  readonly stage: StageName;
  readonly day: DayNumber;
  /** So many had come to it for certain, */
  readonly seen: number;
  /** and no more than so many: `seen` itself unless some could not be told (an empty compartment at lifting). */
  readonly upTo: number;
  readonly of: number;
}

/** Eggs taken for eyed that are not, and the other way round (ours). */
const MISREAD = 0.02;
/**
 * Eggs of one box are more alike than chance has it: correlation within a box (ours; 0.017 between plants of one batch
 * of seeds, Crowder 1978, computed in R).
 */
const ALIKE = 0.02;

/** Whether the figures can be evidence at all: 0 ≤ seen ≤ upTo ≤ of, of at least 1. */
export function canBeEvidence({ seen, upTo, of }: StageObservation): boolean {
  return of >= 1 && seen >= 0 && seen <= upTo && upTo <= of;
}

/**
 * ln of the chance of seeing from `seen` to `upTo` of n eggs at a stage that a share p of them has come to:
 *
 *     q = ε + (1 − 2ε) p,   J ~ N(n q, n q (1 − q) (1 + (n − 1) ρ)),   ln P(seen − ½ < J < upTo + ½)
 *
 * the binomial with misreading ε and the design effect of eggs that are alike (Kish 1965, Survey Sampling: memory).
 */
export function logChance(p: number, { seen, upTo, of }: StageObservation): number {
  const q = MISREAD + (1 - 2 * MISREAD) * p;
  const sd = Math.sqrt(of * q * (1 - q) * (1 + (of - 1) * ALIKE));
  const low = seen <= 0 ? Number.NEGATIVE_INFINITY : (seen - 0.5 - of * q) / sd;
  const high = upTo >= of ? Number.POSITIVE_INFINITY : (upTo + 0.5 - of * q) / sd;
  const chance = normalCdf(high) - normalCdf(low);
  if (chance > 1e-9) return Math.log(chance);
  // far in the tail: the density's own fall, so that less unlikely still beats more unlikely
  const beyond = low > 0 ? low : -high;
  return Math.log(1e-9) - Math.max(0, 0.5 * beyond * beyond - 18);
}

function normalCdf(z: number): number {
  if (z === Number.NEGATIVE_INFINITY) return 0;
  return z === Number.POSITIVE_INFINITY ? 1 : jStat.normal.cdf(z, 0, 1);
}

/** What was found in a lifted box, compartment by compartment. */
export interface LiftedCounts {
  /** Eggs alive and not hatched. */
  readonly eggs: number;
  readonly alevins: number;
  /** Hatched and left, or gone: it cannot be told. */
  readonly empty: number;
}

/**
 * A lifted box as bounds on hatch: alevins have hatched for certain, living eggs have not, an empty compartment may
 * have. Dead eggs tell nothing of when. Null for a box in which nothing can be told.
 */
export function observedAtLifting(
  lot: string,
  box: string,
  day: DayNumber,
  { eggs, alevins, empty }: LiftedCounts,
): StageObservation | null {
  const of = eggs + alevins + empty;
  if (of < 1 || eggs + alevins < 1) return null;
  return { lot, box, stage: 'hatch', day, seen: alevins, upTo: alevins + empty, of };
}
