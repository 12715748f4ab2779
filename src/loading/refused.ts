import type { AdapterRemark } from '../../adapters/index.js';
import { Refusal } from '../refusal.js';
import type { LoadingRemark } from './outcome.js';

/** A download that cannot be loaded as asked, or waits for an answer; nothing of it is stored. */
export class LoadingRefused extends Refusal {
  constructor(
    readonly remark: AdapterRemark | LoadingRemark,
    readonly question: AdapterRemark | null = null,
    readonly exit: 1 | 2 = 2,
  ) {
    super(remark.code);
    this.name = 'LoadingRefused';
  }
}
