import type { PublishedMortality } from '../table.js';
import type { Celsius, EpochMillis } from '../units.js';
import type { Certainty, ExposureSign, JudgedSpell, PassedLimit, Severity, SpellKind } from './spell.js';
import type { StageChance } from './stage-clock.js';

/** What one run means for the eggs of one lot in one box; a spell is made of those that belong together. */
export interface Candidate {
  readonly kind: SpellKind;
  readonly station: string;
  readonly box: string;
  readonly lot: string | null;
  readonly eggs: number;
  readonly severity: Severity;
  readonly certainty: Certainty;
  readonly origin: JudgedSpell['origin'];
  readonly from: EpochMillis;
  readonly to: EpochMillis;
  readonly hours: number;
  readonly degreeHours: number | null;
  readonly peak: Celsius | null;
  readonly chance: number | null;
  readonly limit: PassedLimit | null;
  readonly stages: readonly StageChance[];
  readonly mortality: readonly PublishedMortality[];
  readonly sign: ExposureSign | null;
}

const GRAVITY: Record<Severity, number> = { lethal: 3, 'lowers-survival': 2, watch: 1, event: 0 };

export const graver = (a: Severity, b: Severity): boolean => GRAVITY[a] > GRAVITY[b];
export const gravest = (all: readonly Severity[]): Severity =>
  all.reduce((worst, next) => (graver(next, worst) ? next : worst), 'event');
