import type { Remark } from '../../adapters/remark.js';
import { Refusal } from '../refusal.js';

/** What is refused of spells. */
export interface SpellRefusedWords {
  'unknown-spell': { readonly spell: string };
  /** Only a possible exposure is settled by a person; what was measured is not. */
  'spell-not-an-exposure': { readonly spell: string };
  'spell-note-too-long': { readonly most: number };
}

export class SpellRefused extends Refusal {
  readonly exit = 2;
  constructor(readonly remark: Remark<SpellRefusedWords>) {
    super(remark.code);
    this.name = 'SpellRefused';
  }
}
