import type { StationKind } from '../day-series.js';
import type { LotDraws } from '../lifting/lot-draws.js';
import type { Finding } from '../quality/finding.js';
import type { DevelopmentTable } from '../table.js';
import type { Celsius, EpochMillis } from '../units.js';
import type { Water } from '../water.js';
import type { UsualSwing } from './swing.js';

/** Where a logger lay, as the season says it. */
export type Lay = 'in-box' | 'tied-to-box' | 'gravel' | 'stream' | 'bank' | 'tank' | 'air';

/** One logger at one station for a stretch of time. */
export interface Lying {
  readonly lay: Lay;
  /** The box it lay in or was tied to, where the season names one. */
  readonly box: string | null;
  readonly from: EpochMillis;
  readonly to: EpochMillis;
}

/** What a station recorded, as known: corrected, trimmed and flagged. */
export interface WaterRecord {
  readonly station: string;
  readonly kind: StationKind;
  readonly accuracy: Celsius;
  readonly at: Float64Array;
  readonly value: Float64Array;
  /** QARTOD flag of each; 4 and 9 are not used, 3 still feeds spells. */
  readonly flag: Uint8Array;
  readonly findings: readonly Finding[];
  readonly lying: readonly Lying[];
}

/** Level (m) or discharge (m³/s) at a gauge. */
export interface GaugeRecord {
  readonly station: string;
  readonly quantity: 'level' | 'discharge';
  readonly at: Float64Array;
  readonly value: Float64Array;
}

export interface LotAtRisk {
  readonly lot: string;
  readonly eggs: number;
  readonly table: DevelopmentTable;
  readonly fertilised: EpochMillis;
  readonly planted: EpochMillis;
  /** The hatchery station that held it before planting; null where there was none. */
  readonly hatchery: string | null;
  /** Its possible winters; null where nothing is known of its water. */
  readonly draws: LotDraws | null;
}

export interface BoxAtRisk {
  readonly box: string;
  /** In order of trust. */
  readonly stations: readonly string[];
  readonly lots: readonly LotAtRisk[];
  readonly lifted: EpochMillis | null;
  /** The water its forecast is made of. */
  readonly water: Water | null;
  /** How far the hours of a day lie from its mean there; left out where nobody knows. */
  readonly swing?: UsualSwing;
}

/** A season's eggs and everything that is known of their water. */
export interface SpellInput {
  readonly now: EpochMillis;
  /** Milliseconds to add to UTC for the group's standard days. */
  readonly dayOffset: number;
  readonly boxes: readonly BoxAtRisk[];
  readonly records: readonly WaterRecord[];
  readonly gauges: readonly GaugeRecord[];
}
