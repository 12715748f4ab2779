import { z } from 'zod';
import { FieldRefused } from './refused.js';

/** Entries of one sending at most; a phone with more sends several times. */
const MOST = 200;
/** Characters of one entry's fields at most. */
const LONGEST = 20_000;

const instant = z.iso.datetime({ offset: true }).max(40);
const name = z.string().max(200);

/**
 * One thing written down away from the desk. `id` was made where it was written and never changes: sent twice, it is
 * the same entry. `fields` is what its kind asks for; `entered` is the writing phone's own clock.
 */
export const sentEntrySchema = z.object({
  id: z.string().regex(/^[A-Za-z0-9][A-Za-z0-9-]{7,63}$/),
  kind: z.string().regex(/^[a-z][a-z-]{0,30}$/),
  entered: instant,
  who: name.optional(),
  fields: z
    .record(name, z.unknown())
    .refine((fields) => JSON.stringify(fields).length <= LONGEST, { error: 'too long' }),
});
export type SentEntry = z.infer<typeof sentEntrySchema>;

/** `now` is the phone's clock as it sends: what it is off by is taken off every `entered`. */
export const batchSchema = z.object({
  now: instant,
  phone: name.optional(),
  entries: z.array(sentEntrySchema).max(MOST),
});
export type Batch = z.infer<typeof batchSchema>;

/** @throws FieldRefused 'field-not-a-batch' naming the places that do not fit */
export function readBatch(given: unknown): Batch {
  const read = batchSchema.safeParse(given);
  if (read.success) return read.data;
  const places = read.error.issues.map(({ path }) => path.map(String).join('.') || '-');
  throw new FieldRefused({
    code: 'field-not-a-batch',
    with: { places: [...new Set(places)].slice(0, 5) },
  });
}
