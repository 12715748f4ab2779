import type { Remark } from '../../adapters/remark.js';
import { Refusal } from '../refusal.js';
import type { EntryWaitsRemark, FieldRefusedWords } from './words.js';

/** An entry cannot become part of the season as it is: it is kept, and waits for a person. */
export class EntryWaits extends Refusal {
  readonly exit = 2;
  constructor(readonly remark: EntryWaitsRemark) {
    super(remark.code);
    this.name = 'EntryWaits';
  }
}

/** What was sent is no batch of entries or no photograph, or names an entry that is not there. */
export class FieldRefused extends Refusal {
  constructor(
    readonly remark: Remark<FieldRefusedWords>,
    readonly exit: 1 | 2 = 2,
  ) {
    super(remark.code);
    this.name = 'FieldRefused';
  }
}
