import type { DayNumber } from '../../forecasting/units.js';
import type { Group } from '../group/index.js';
import { nameIn, type Season, standardOffset } from '../season/index.js';

const DAY = 86_400_000;
/** An older reading says nothing of the water now (ours). */
const RECENT_DAYS = 2;

/** The stated limit beside what the gauge last read; `value` null where nothing recent is known. */
export interface GaugeNow {
  readonly station: string;
  readonly quantity: 'level' | 'discharge';
  readonly most: number;
  readonly value: number | null;
  readonly above: boolean;
}

/** The water at the gauge the group named, by the end of a day; null where it named none. */
export async function gaugeNow(group: Group, season: Season, asOf: DayNumber): Promise<GaugeNow | null> {
  const stated = season.lifting?.gauge ?? null;
  if (stated === null) return null;
  const { station, quantity, most } = stated;
  const name = nameIn(season.stations, station);
  const end = (asOf + 1) * DAY - standardOffset(season.group.zone) * 60_000;
  const rows = (await group.stations()).find((row) => row.station === station);
  const recorded = rows?.records.some((record) => record.quantity === quantity) === true;
  const from = end - RECENT_DAYS * DAY;
  const series = recorded
    ? await group.series({ station, quantity, from, to: end - 1, points: RECENT_DAYS * 24 })
    : null;
  const value = series === null ? null : (Array.from(series.max).findLast(Number.isFinite) ?? null);
  return { station: name, quantity, most, value, above: value !== null && value > most };
}
