import { type DevelopmentTable, daysAtConstant, stageRow, wayTo } from '../../forecasting/index.js';
import { epochMillis, type Season } from '../season/index.js';
import type { AutumnCaution } from './words.js';

const HOUR = 3_600_000;

/** Warned of this many hours before the span in which handling kills begins (ours). */
const WARNED_BEFORE = 24;

export interface Handling {
  readonly hours: number;
  /** Hours until eggs at this temperature come into the span in which handling kills; 0 within it. */
  readonly hoursLeft: number;
  /** Hours until they have passed it. */
  readonly hoursToEnd: number;
  readonly state: 'may' | 'soon' | 'must-not' | 'past';
}

/**
 * How long eggs fertilised so many hours ago, in water of one temperature since, may still be handled: the table's
 * span is in progress to hatch, and progress gathers 1/D(T) a day.
 *
 * @example handling(atlanticSalmon, 6, 10).state // 'may'
 */
export function handling(table: DevelopmentTable, celsius: number, hours: number): Handling {
  const days = stageRow(table, 'hatch') ? daysAtConstant(wayTo(table, 'hatch'), celsius) : Infinity;
  const hoursTo = (progress: number) => progress * days * 24 - hours;
  const hoursLeft = Math.max(0, hoursTo(table.doNotHandle.from));
  const hoursToEnd = Math.max(0, hoursTo(table.doNotHandle.to));
  const state =
    hoursToEnd === 0 ? 'past' : hoursLeft === 0 ? 'must-not' : hoursLeft <= WARNED_BEFORE ? 'soon' : 'may';
  return { hours, hoursLeft, hoursToEnd, state };
}

export interface PlantingTime {
  readonly lot: string;
  /** Epoch milliseconds. */
  readonly at: number;
  readonly transportC: number | null;
  readonly siteC: number | null;
}

/** What a person should hear before eggs of a lot go into the water of a site. */
export function plantingCautions(
  season: Season,
  tables: readonly DevelopmentTable[],
  planting: PlantingTime,
): AutumnCaution[] {
  const lot = season.lots.find(({ id }) => id === planting.lot);
  const table = tables.find(({ id }) => id === lot?.table);
  if (lot === undefined || table === undefined) return [];
  const found: AutumnCaution[] = [];
  const { transportC, siteC } = planting;
  const hours = Math.max(0, (planting.at - epochMillis(lot.fertilised)) / HOUR);
  const kept = transportC ?? (lot.before.kind === 'stated' ? lot.before.celsius : siteC);
  if (kept !== null) {
    const { state, hoursLeft } = handling(table, kept, hours);
    if (state === 'must-not') found.push({ code: 'autumn-must-not-handle', with: { lot: lot.id, hours } });
    if (state === 'soon') found.push({ code: 'autumn-handle-soon', with: { lot: lot.id, hours, hoursLeft } });
  }
  const { limit } = table.temper;
  if (transportC !== null && siteC !== null && Math.abs(transportC - siteC) > limit)
    found.push({ code: 'autumn-temper', with: { transportC, siteC, limit } });
  const cold = table.harm.find(({ kind }) => kind === 'cold-start');
  if (siteC !== null && cold !== undefined && siteC < cold.limit)
    found.push({ code: 'autumn-cold-start', with: { siteC, limit: cold.limit } });
  return found;
}
