import type { Document } from '../document.js';
import type { Given } from '../given.js';

/** What surrounds an entry when it becomes part of the season. */
export interface Around {
  readonly id: string;
  readonly who: string;
  /** When it was written down, as the season file writes a moment in the group's zone. */
  readonly at: string;
  /** The moment a person typed (or none) as the season file writes it. @throws EntryWaits where it lies ahead */
  when(typed: string): string;
}

/** A kind of entry: how it becomes part of the season document, and what it is called there. */
export interface EntryKind {
  readonly kind: string;
  /** @throws EntryWaits where it cannot be taken as it is */
  apply(
    document: Document,
    given: Given,
    around: Around,
  ): { readonly document: Document; readonly became: string };
}
