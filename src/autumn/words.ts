import type { Remark } from '../../adapters/remark.js';

/** What is to be heard before eggs are moved; words in src/words/<lang>/autumn. */
export interface AutumnCautionWords {
  'autumn-handle-soon': { readonly lot: string; readonly hours: number; readonly hoursLeft: number };
  'autumn-must-not-handle': { readonly lot: string; readonly hours: number };
  'autumn-temper': { readonly transportC: number; readonly siteC: number; readonly limit: number };
  'autumn-cold-start': { readonly siteC: number; readonly limit: number };
}
export type AutumnCaution = Remark<AutumnCautionWords>;
