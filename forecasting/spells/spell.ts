import type { PublishedMortality, Source } from '../table.js';
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

/**
 * `lethal`: a message at once (an exposure after hatch is of this class). `lowers-survival`: shown, and in the weekly
 * summary. `watch` (an exposure before hatch) and `event` (what a gauge tells): noted.
 */
export type Severity = 'lethal' | 'lowers-survival' | 'watch' | 'event';

/**
 * `measured`: readings of the box's own station. `estimated`: readings of a station that stands in for it.
 * `possible`: filled or projected water, or a thing nobody measured that may have happened.
 */
export type Certainty = 'measured' | 'estimated' | 'possible';

/** Where it stands: running, over, over before anybody could know, borne out, withdrawn by a later download. */
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
  /** Stages the eggs may have been in, likeliest first: the last stage passed, 'fertilised' before the first. */
  readonly stages: readonly string[];
  readonly from: EpochMillis;
  readonly to: EpochMillis;
  /**
   * The farthest it went, °C; for a sudden change the greatest change within the limit's hours; null where no
   * temperature is meant.
   */
  readonly peak: number | null;
  readonly hours: number;
  readonly degreeHours: number | null;
  /** 0 to 1 where it is not measured, else null. */
  readonly chance: number | null;
}

/** The limit a run passed: °C, °C per hour for a sudden change, at a gauge metres or times the usual flow. */
export interface PassedLimit {
  readonly value: number;
  readonly unit: 'celsius' | 'celsius-per-hour' | 'metres' | 'times-usual' | 'hours';
  /** Hours beyond it that make it a spell; 0 where any reading does. */
  readonly hours: number;
  readonly sources: readonly Source[];
}

/** The eggs of one lot in one box that a spell touches. */
export interface TouchedEggs {
  readonly box: string;
  readonly lot: string;
  readonly eggs: number;
  readonly severity: Severity;
  /** Stages they may have been in with the chance of each, likeliest first; below 10 % none is named. */
  readonly stages: readonly { readonly stage: string; readonly chance: number }[];
}

/** What an exposure or freezing was told from. */
export type ExposureSign = 'in-air' | 'in-snow' | 'frozen-in' | 'just-below-zero' | 'not-damped';

/** A spell with all it rests on. */
export interface JudgedSpell extends Spell {
  /** Whose record it was judged on. */
  readonly station: string;
  /** Which water: readings, filled from neighbours, still to come; `none` where no water was judged. */
  readonly origin: 'measured' | 'filled' | 'projected' | 'none';
  /** The gravest limit passed; null for an exposure before any dose. */
  readonly limit: PassedLimit | null;
  readonly touched: readonly TouchedEggs[];
  /** Published mortality with its conditions; empty where the literature gives none for this. */
  readonly mortality: readonly PublishedMortality[];
  /** Only exposures. */
  readonly sign: ExposureSign | null;
}
