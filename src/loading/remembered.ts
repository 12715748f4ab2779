import { z } from 'zod';
import type { Understood } from '../../adapters/index.js';
import type { FileOutcome } from './outcome.js';

const understoodSchema = z.object({
  encoding: z.enum(['utf-8', 'utf-16le', 'utf-16be', 'windows-1252', 'cp850']),
  delimiter: z.enum([',', ';', '\t', '|']).nullable(),
  decimal: z.enum(['.', ',']),
  unit: z.enum(['C', 'F', 'K']).nullable(),
  zone: z.string().nullable(),
  dateOrder: z.enum(['ymd', 'dmy', 'mdy']).nullable(),
  timeColumns: z.array(z.string()),
  valueColumn: z.string().nullable(),
  daily: z.boolean(),
});

/** What the catalogue remembers of how a file was understood, as JSON. */
export function rememberedText(
  outcome: Pick<FileOutcome, 'understood' | 'assumed' | 'unusable' | 'serial' | 'battery'>,
): string {
  return JSON.stringify(outcome);
}

/** How the file of a standing load was understood; null where an earlier version wrote it in another form. */
export function understoodIn(remembered: string): Understood | null {
  const { success, data } = z.object({ understood: understoodSchema }).safeParse(JSON.parse(remembered));
  return success ? data.understood : null;
}
