import type { Remark } from '../../adapters/remark.js';
import { Refusal } from '../refusal.js';
import type { HindcastWords } from './words.js';

/** A file or a question the hindcast cannot work with. */
export class HindcastRefused extends Refusal {
  readonly exit = 2;
  constructor(readonly remark: Remark<HindcastWords>) {
    super(remark.code);
    this.name = 'HindcastRefused';
  }
}
