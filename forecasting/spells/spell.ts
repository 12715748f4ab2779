import type { EpochMillis } from '../units.js';

/** What harms: limits on temperature, a box out of the water or frozen in, and what a gauge tells. */
export type SpellKind =
  | 'too-warm'
  | 'freezing'
  | 'sudden-change'
  | 'too-cold'
  | 'exposure'
  | 'freshet'
  | 'break-up'
  | 'low-water';

/** `lethal`: a message at once. `lowers-survival`: shown, and in the weekly summary. `watch` and `event`: noted. */
export type Severity = 'lethal' | 'lowers-survival' | 'watch' | 'event';

/** From measured water; from filled or projected water; or a thing nobody measured that may have happened. */
export type Certainty = 'measured' | 'estimated' | 'possible';

/** Where it stands: running, over, over before anybody could know, seen by a person, withdrawn by a later download. */
export type SpellState = 'open' | 'ended' | 'past' | 'confirmed' | 'withdrawn';

/** An unbroken run of harmful water, at every box it touches. */
export interface Spell {
  /** Stable over judgements: the same run at the same station keeps it. */
  readonly id: string;
  readonly kind: SpellKind;
  readonly severity: Severity;
  readonly certainty: Certainty;
  readonly state: SpellState;
  readonly boxes: readonly string[];
  readonly eggs: number;
  /** Stages the eggs may have been in, likeliest first. */
  readonly stages: readonly string[];
  readonly from: EpochMillis;
  readonly to: EpochMillis;
  /** °C, null where no temperature is meant. */
  readonly peak: number | null;
  readonly hours: number;
  readonly degreeHours: number | null;
  /** 0 to 1 where it is not measured, else null. */
  readonly chance: number | null;
}
