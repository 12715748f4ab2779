import type { EntryKind } from './kind.js';
import { find, plant } from './plant.js';
import { adult, cross, strip } from './strip.js';
import { check, tally } from './tally.js';
import { visit } from './visit.js';

export type { Around, EntryKind } from './kind.js';

/** Every kind of entry this program can take; one it does not know is kept and waits. */
export const entryKinds: readonly EntryKind[] = [adult, cross, strip, plant, find, visit, tally, check];
