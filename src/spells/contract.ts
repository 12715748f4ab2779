import type { SpellChange } from '../../forecasting/spells/history.js';
import type { JudgedSpell } from '../../forecasting/spells/spell.js';

export type { SpellChange };

/** Who saw a spell, and what they wrote beside it. */
export interface Acknowledged {
  readonly by: string;
  /** Epoch milliseconds. */
  readonly at: number;
  readonly note: string;
}

/** What a person found out about a possible exposure. */
export interface Settled extends Acknowledged {
  readonly how: 'happened' | 'did-not-happen';
}

/** A spell as the group keeps it, for ever. */
export interface SpellRow extends JudgedSpell {
  /** When it was first judged, and when it last changed (epoch milliseconds). */
  readonly found: number;
  readonly changed: number;
  readonly acknowledged: Acknowledged | null;
  readonly settled: Settled | null;
}

/**
 * One change of one spell. Numbers rise and are never given twice; all changes of one `judging` were seen at once and
 * go into one message.
 */
export interface SpellEvent {
  readonly number: number;
  readonly judging: number;
  readonly change: SpellChange;
  /** When it was judged, epoch milliseconds. */
  readonly at: number;
  /** As it stood after that change. */
  readonly spell: JudgedSpell;
}

export interface SpellsRequest {
  readonly box: string | null;
  /** Only spells that lasted until then or later, epoch milliseconds. */
  readonly since: number | null;
}

/** The part of the `Group` door that is about spells. */
export interface SpellsDoor {
  /** Judges first where anything was written, or the day has changed, since the last judging. Open ones first. */
  spells(request: SpellsRequest): Promise<readonly SpellRow[]>;
  /** Judges first as above, and resolves once the judging is kept. Changes with a number above `after`, rising. */
  spellEvents(after: number): Promise<readonly SpellEvent[]>;
  /** @throws SpellRefused where there is no such spell. */
  acknowledgeSpell(id: string, note: string, who: string): Promise<SpellRow>;
  /** Says what a possible exposure was: it is then confirmed or withdrawn. @throws SpellRefused */
  settleExposure(id: string, how: Settled['how'], note: string, who: string): Promise<SpellRow>;
}
