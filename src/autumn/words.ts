import type { Remark } from '../../adapters/remark.js';

/** What is to be heard before eggs are moved; words in src/words/<lang>/autumn. */
export interface AutumnCautionWords {
  'autumn-handle-soon': { readonly lot: string; readonly hours: number; readonly hoursLeft: number };
  'autumn-must-not-handle': { readonly lot: string; readonly hours: number };
  'autumn-temper': { readonly transportC: number; readonly siteC: number; readonly limit: number };
  /** A logger put in that is full before its box is lifted; moments in epoch milliseconds. */
  'autumn-logger-full': {
    readonly logger: string;
    readonly full: number;
    readonly lifted: number;
    readonly memory: number;
    readonly interval: number;
  };
  'autumn-cold-start': { readonly siteC: number; readonly limit: number };
}
export type AutumnCaution = Remark<AutumnCautionWords>;
