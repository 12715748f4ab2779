import { z } from 'zod';
import type { Documents } from './documents.js';
import type { ReportFigures } from './figures.js';

/** Another shape of what is kept gets the next number; every shape there ever was is read. */
export const FROZEN_FORMAT = 1;

/** All that is kept of a closed season: its document, its figures with the tables used, and its reports to the byte. */
export interface FrozenSeason {
  readonly format: number;
  /** The program that made it. */
  readonly program: string;
  /** The season document. */
  readonly text: string;
  readonly figures: ReportFigures;
  readonly documents: Documents;
}

const holds =
  (...keys: readonly string[]) =>
  (value: unknown): boolean =>
    typeof value === 'object' && value !== null && keys.every((key) => key in value);

const frozenSchema = z.object({
  format: z.literal(FROZEN_FORMAT),
  program: z.string(),
  text: z.string(),
  figures: z.custom<ReportFigures>(holds('method', 'season', 'survival', 'winters', 'rightness', 'tables')),
  documents: z.custom<Documents>(holds('texts', 'style')),
});

/** Reads what `closeSeason` kept. */
export function frozenSeason(content: string): FrozenSeason {
  return frozenSchema.parse(JSON.parse(content));
}
