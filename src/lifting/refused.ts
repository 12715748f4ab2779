import type { Remark } from '../../adapters/remark.js';
import { Refusal } from '../refusal.js';
import type { LiftingPlanWords } from './words.js';

type Refused = Pick<LiftingPlanWords, 'lifting-nothing-to-approve' | 'lifting-plan-changed'>;

/** A plan that cannot be approved as asked. */
export class LiftingRefused extends Refusal {
  readonly exit = 2;
  constructor(readonly remark: Remark<Refused>) {
    super(remark.code);
    this.name = 'LiftingRefused';
  }
}
