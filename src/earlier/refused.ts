import type { Remark } from '../../adapters/remark.js';
import { Refusal } from '../refusal.js';
import type { EarlierWords } from './words.js';

/** A table of past seasons that cannot be taken as it is; nothing of it was kept. */
export class EarlierRefused extends Refusal {
  readonly exit = 2;
  constructor(readonly remark: Remark<EarlierWords>) {
    super(remark.code);
    this.name = 'EarlierRefused';
  }
}
