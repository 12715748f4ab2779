import type { DaySeries, StationDays } from '../day-series.js';
import type { DayNumber } from '../units.js';
import { same } from './same.js';

/** Stations with days that differ from those before, and the first such day of each. */
export type Changes = ReadonlyMap<string, DayNumber>;

/** @returns null where stations came, went, or are described otherwise: nothing known of before can be leant on. */
export function changesOf(before: readonly StationDays[], now: readonly StationDays[]): Changes | null {
  if (!same(before.map(described), now.map(described))) return null;
  const changes = new Map<string, DayNumber>();
  now.forEach(({ station, days }, i) => {
    const first = firstChange(before[i].days, days);
    if (first !== null) changes.set(station, first);
  });
  return changes;
}

const described = ({ days: _, ...rest }: StationDays) => rest;

const COLUMNS = ['mean', 'min', 'max', 'coverage', 'spread', 'origin'] as const;

/** The first day of which two series do not say the same; null where there is none. */
function firstChange(a: DaySeries, b: DaySeries): DayNumber | null {
  if (a === b) return null;
  if (a.mean.length === 0 || b.mean.length === 0)
    return a.mean.length === b.mean.length
      ? null
      : Math.min(...[a, b].filter(hasDays).map(({ firstDay }) => firstDay));
  if (a.firstDay !== b.firstDay) return Math.min(a.firstDay, b.firstDay);
  const shared = Math.min(a.mean.length, b.mean.length);
  for (let d = 0; d < shared; d++)
    if (COLUMNS.some((column) => !Object.is(a[column][d], b[column][d]))) return a.firstDay + d;
  return a.mean.length === b.mean.length ? null : a.firstDay + shared;
}

const hasDays = ({ mean }: DaySeries) => mean.length > 0;
