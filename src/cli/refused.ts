import type { Remark } from '../../adapters/remark.js';
import { Refusal } from '../refusal.js';
import type { LayoutsWords } from './layouts-words.js';
import type { CliWords } from './words.js';

/** The command line itself is refused: an unknown option, a bad value, a name that does not exist. */
export class CommandRefused extends Refusal {
  readonly exit = 2;
  constructor(readonly remark: Remark<CliWords & LayoutsWords>) {
    super(remark.code);
    this.name = 'CommandRefused';
  }
}
