import type { Remark } from '../../adapters/remark.js';
import { Refusal } from '../refusal.js';

/** Why a finding cannot be ruled on, or a correction not accepted. */
export interface QualityRefusalWords {
  'quality-no-finding': { readonly station: string; readonly finding: string };
  'quality-nothing-offered': { readonly finding: string };
  'quality-no-deployment': { readonly station: string };
  'quality-no-reason': Record<never, never>;
  'quality-no-ruling': { readonly station: string; readonly finding: string };
}

export class QualityRefused extends Refusal {
  readonly exit = 2;
  constructor(readonly remark: Remark<QualityRefusalWords>) {
    super(remark.code);
    this.name = 'QualityRefused';
  }
}
