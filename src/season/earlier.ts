import type { z } from 'zod';
import { count, id, listOf, maybe, text, thing } from './fields.js';
import { localDate } from './moments.js';

/** One box of a past season, as far as somebody wrote it down; seasons without temperatures too. */
const earlierBoxSchema = thing({
  season: text,
  site: maybe(text),
  box: maybe(text),
  lot: maybe(text),
  planted: maybe(localDate),
  lifted: maybe(localDate),
  eggs: maybe(count(0, 10_000_000)),
  /** Compartments found empty: eggs that left, or are gone. */
  empty: maybe(count(0, 10_000_000)),
  dead: maybe(count(0, 10_000_000)),
  note: maybe(text),
});

/** What one file told of past seasons; it can be taken out again as one. */
export const earlierSchema = thing({ id, file: text, boxes: listOf(earlierBoxSchema) });
export type Earlier = z.infer<typeof earlierSchema>;
