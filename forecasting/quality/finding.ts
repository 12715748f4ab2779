import type { EpochMillis } from '../units.js';

/**
 * What a quality check looks for in one station's record. The first five are the tests of the QARTOD manual for
 * in-situ temperature (IOOS); the others are what a stream logger meets in winter.
 */
export type CheckKind =
  | 'gross-range'
  | 'climatology'
  | 'spike'
  | 'rate-of-change'
  | 'flat-line'
  | 'in-air'
  | 'in-snow'
  | 'frozen-in'
  | 'sheltered'
  | 'battery'
  | 'clock'
  | 'outside-deployment'
  | 'ice-bath-bias'
  | 'plateau-bias';

/** QARTOD: 1 pass, 2 not evaluated, 3 suspect or of high interest, 4 fail, 9 missing. */
export type QualityFlag = 1 | 2 | 3 | 4 | 9;

/**
 * One stretch of a record that a check speaks about. A reading is never deleted for it: the flag is a dated interval,
 * and a person may overrule it.
 */
export interface Finding {
  readonly kind: CheckKind;
  readonly from: EpochMillis;
  /** Last instant it holds for. */
  readonly to: EpochMillis;
  readonly flag: QualityFlag;
  /** What it rests on (limits, values, hours, °C), by name, for the sentence that explains it. */
  readonly figures: Readonly<Record<string, number>>;
  /** A correction that would mend it, offered and applied only when a person accepts it: °C or ms to add. */
  readonly offer: { readonly quantity: 'temperature' | 'clock'; readonly add: number } | null;
}
