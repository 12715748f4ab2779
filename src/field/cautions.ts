import { DateTime } from 'luxon';
import type { DevelopmentTable } from '../../forecasting/index.js';
import { type AutumnCaution, plantingCautions } from '../autumn/index.js';
import type { Season } from '../season/index.js';

/** What an entry that plants eggs should make a person hear, before it is kept or with the answer; none for other kinds. */
export function entryCautions(
  season: Season,
  tables: readonly DevelopmentTable[],
  entry: {
    readonly kind: string;
    readonly entered: string;
    readonly fields: Readonly<Record<string, unknown>>;
  },
): readonly AutumnCaution[] {
  if (entry.kind !== 'plant') return [];
  const { lot, when, transportC, siteC } = entry.fields;
  const typed = typeof when === 'string' ? when.trim().replace(' ', 'T') : '';
  const at = DateTime.fromISO(typed, { zone: season.group.zone });
  return plantingCautions(season, tables, {
    lot: season.lots.find(({ id }) => id.toLowerCase() === String(lot ?? '').toLowerCase())?.id ?? '',
    at: at.isValid ? at.toMillis() : Date.parse(entry.entered),
    transportC: figure(transportC),
    siteC: figure(siteC),
  });
}

function figure(given: unknown): number | null {
  const value = typeof given === 'number' ? given : Number.parseFloat(String(given ?? '').replace(',', '.'));
  return Number.isFinite(value) ? value : null;
}
