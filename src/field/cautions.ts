import { DateTime } from 'luxon';
import { z } from 'zod';
import type { DevelopmentTable } from '../../forecasting/index.js';
import { fillsAt } from '../../forecasting/quality/index.js';
import { type AutumnCaution, plantingCautions } from '../autumn/index.js';
import { liftedAt } from '../group/judging/laid.js';
import type { Season } from '../season/index.js';

/**
 * What an entry that plants eggs, or puts a logger in, should make a person hear, before it is kept or with the answer;
 * none for other kinds.
 */
export function entryCautions(
  season: Season,
  tables: readonly DevelopmentTable[],
  entry: {
    readonly kind: string;
    readonly entered: string;
    readonly fields: Readonly<Record<string, unknown>>;
  },
): readonly AutumnCaution[] {
  const { lot, when, transportC, siteC } = entry.fields;
  const typed = typeof when === 'string' ? when.trim().replace(' ', 'T') : '';
  const at = DateTime.fromISO(typed, { zone: season.group.zone });
  if (entry.kind === 'visit')
    return loggersFull(season, entry.fields.loggers, at.isValid ? at.toMillis() : Date.parse(entry.entered));
  if (entry.kind !== 'plant') return [];
  return plantingCautions(season, tables, {
    lot: season.lots.find(({ id }) => id.toLowerCase() === String(lot ?? '').toLowerCase())?.id ?? '',
    at: at.isValid ? at.toMillis() : Date.parse(entry.entered),
    transportC: figure(transportC),
    siteC: figure(siteC),
  });
}

const putIn = z.object({
  did: z.literal('in'),
  logger: z.string(),
  lay: z.enum(['in-box', 'tied-to-box', 'gravel', 'stream', 'bank', 'tank', 'air']).catch('tied-to-box'),
  box: z.string().nullable().catch(null),
});

/** Loggers put in at a moment that their memory does not carry to the lifting of their box. */
function loggersFull(season: Season, rows: unknown, at: number): AutumnCaution[] {
  if (!Array.isArray(rows)) return [];
  return rows.flatMap((row): AutumnCaution[] => {
    const { success, data } = putIn.safeParse(row);
    if (!success) return [];
    const { box, lay } = data;
    const known = season.loggers.find(({ id }) => id.toLowerCase() === data.logger.toLowerCase());
    const memory = known?.memory ?? null;
    const interval = known?.interval ?? null;
    const from = new Date(at).toISOString();
    const full = fillsAt({ from: at, memory, intervalMinutes: interval });
    const lifted = liftedAt(season, { box: box === '' ? null : box, lay, from });
    if (full === null || lifted === null || full >= lifted) return [];
    return [
      {
        code: 'autumn-logger-full',
        with: { logger: data.logger, full, lifted, memory: memory ?? 0, interval: interval ?? 0 },
      },
    ];
  });
}

function figure(given: unknown): number | null {
  const value = typeof given === 'number' ? given : Number.parseFloat(String(given ?? '').replace(',', '.'));
  return Number.isFinite(value) ? value : null;
}
