import type { Remark } from '../../adapters/remark.js';
import type { HttpWords } from '../http/words.js';
import { Refusal } from '../refusal.js';
import type { SeasonWords } from '../season/index.js';
import type { StoreWords } from '../store/index.js';
import type { NameWords } from './unknown-name.js';

/** What a group may refuse, wherever it is. */
export type GroupRemark = Remark<NameWords> | Remark<StoreWords> | Remark<SeasonWords> | Remark<HttpWords>;

/** The service refused what a command asked of it, for the same reason as the group itself would have. */
export class RemoteRefused extends Refusal {
  constructor(
    readonly remark: GroupRemark,
    readonly exit: 1 | 2,
  ) {
    super(remark.code);
    this.name = 'RemoteRefused';
  }
}
