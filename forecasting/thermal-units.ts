import { type DailyMeans, daysBetween } from './accumulate.js';
import type { DevelopmentTable } from './table.js';
import type { Celsius, DayTime, ThermalUnits } from './units.js';

/**
 * Degree-days between two moments: the sum of max(0, T - base) over the local days, a day broken off counting by
 * its share, °C·day. Null where a day between has no value.
 *
 * @example thermalUnits({ firstDay: 0, mean: Array(10).fill(10) }, 0, 10, 0) // 100
 */
export function thermalUnits(
  days: DailyMeans,
  from: DayTime,
  to: DayTime,
  base: Celsius,
): ThermalUnits | null {
  let units = 0;
  for (const { celsius, share } of daysBetween(days, from, to)) {
    if (!Number.isFinite(celsius)) return null;
    units += share * Math.max(0, celsius - base);
  }
  return units;
}

/** The moment at which degree-days from `from` on reach `units`; null where the days end before they do. */
export function whenUnitsReached(
  days: DailyMeans,
  from: DayTime,
  units: ThermalUnits,
  base: Celsius,
): DayTime | null {
  let gathered = 0;
  for (const { begins, celsius, share } of daysBetween(days, from, days.firstDay + days.mean.length)) {
    if (!Number.isFinite(celsius)) return null;
    const warmth = Math.max(0, celsius - base);
    if (gathered + share * warmth >= units)
      return warmth === 0 ? begins : begins + (units - gathered) / warmth;
    gathered += share * warmth;
  }
  return null;
}

/** The base a table counts thermal units from: its own where it has one, else 0 °C. */
export function tableBase(table: DevelopmentTable): Celsius {
  for (const { needs } of table.stages) {
    if ('law' in needs && needs.law.form === 'thermal-units') return needs.law.base;
  }
  return 0;
}
