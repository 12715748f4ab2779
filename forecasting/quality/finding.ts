import type { EpochMillis } from '../units.js';

/**
 * What a quality check looks for in one station's record. The first six are tests of the QARTOD manual for in-situ
 * temperature (IOOS); the others are what a stream logger meets in winter.
 */
export const checkKinds = [
  'gross-range',
  'climatology',
  'spike',
  'rate-of-change',
  'flat-line',
  'neighbour',
  'in-air',
  'in-snow',
  'frozen-in',
  'sheltered',
  'battery',
  'clock',
  'outside-deployment',
  'ice-bath-bias',
  'plateau-bias',
  'memory',
] as const;
export type CheckKind = (typeof checkKinds)[number];

/** QARTOD: 1 pass, 2 not evaluated, 3 suspect, 4 fail, 9 missing. */
export type QualityFlag = 1 | 2 | 3 | 4 | 9;

/** A correction offered: °C or ms to add between `from` and `to` of its finding. */
export interface Offer {
  readonly quantity: 'temperature' | 'clock';
  readonly add: number;
  /**
   * `check`: what a check against something better says at that time, drifting in a straight line from and to other
   * checks; `step`: from the beginning of the finding on; `rising`: from nothing at the beginning of the finding in a
   * straight line to `add` at its end, and the same from then on.
   */
  readonly course: 'check' | 'step' | 'rising';
}

/**
 * One stretch of a record that a check speaks about. A reading is never deleted for it: the flag is a dated interval,
 * and a person may overrule it. Flag 1 and 2: something to know or to correct, no doubt about the readings.
 */
export interface Finding {
  readonly kind: CheckKind;
  readonly from: EpochMillis;
  /** Last instant it holds for. */
  readonly to: EpochMillis;
  readonly flag: QualityFlag;
  /** What it rests on (limits, values, hours, °C), by name, for the sentence that explains it. */
  readonly figures: Readonly<Record<string, number>>;
  /** A correction that would mend it, offered and applied only when a person accepts it. */
  readonly offer: Offer | null;
}
