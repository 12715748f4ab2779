import { z } from 'zod';
import { choice, field, figure, id, maybe, text, thing } from './fields.js';
import { momentIn } from './moments.js';

/** The longest entry kept word for word, in characters. */
const LONGEST_ENTRY = 20_000;

const wordForWord = field(z.string(), (given) =>
  given.length > LONGEST_ENTRY
    ? { code: 'season.text-too-long', with: { most: LONGEST_ENTRY } }
    : { value: given },
);

/**
 * What was written down away from the desk and sent in, told apart by the id its phone gave it: the same id twice is
 * the same entry. `fields` (JSON) is kept where the entry waits for a person; once taken, it lives on as what it became.
 */
export const fieldEntrySchema = (zone: string) =>
  thing({
    id,
    kind: id,
    state: choice('taken', 'waiting', 'left'),
    who: maybe(text),
    /** The phone's own name, so that two people's entries of the same thing are told apart. */
    phone: maybe(text),
    /** When it was written down, the phone's clock set right. */
    entered: momentIn(zone),
    received: momentIn(zone),
    /** How fast the phone's clock was, seconds. */
    fast: maybe(figure(-40_000_000, 40_000_000)),
    /** What it became: `visit upper-pool 2025-11-04`. */
    became: maybe(text),
    fields: maybe(wordForWord),
  });
export type FieldEntry = z.infer<ReturnType<typeof fieldEntrySchema>>;
