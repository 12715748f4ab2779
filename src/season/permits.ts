import type { z } from 'zod';
import { id, maybe, text, thing } from './fields.js';
import { localDate } from './moments.js';

/** What an authority allows, and when; where permits are listed, days outside all of them are blocked. */
export const permitSchema = thing({
  number: text,
  authority: maybe(text),
  from: localDate,
  to: localDate,
  /** The day the report to the authority is due. */
  reportDue: maybe(localDate),
  /** Every site where none is named. */
  site: maybe(id),
  note: maybe(text),
});
export type Permit = z.infer<typeof permitSchema>;
