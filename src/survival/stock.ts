import {
  accumulate,
  type DevelopmentTable,
  type Forecast,
  type ObservedLot,
  type StockAdjustment,
  stockAdjustment,
  wayTo,
} from '../../forecasting/index.js';
import { epochMillis, type Season, standardOffset } from '../season/index.js';

const DAY = 86_400_000;
/** Loggers are held to state their water within this, °C: one error for the whole deployment (ours). */
const ACCURACY = 0.2;
/** Eggs are looked at by day. */
const NOON = 0.5;

export interface TableAdjustment extends StockAdjustment {
  readonly table: string;
  /** Observations it rests on. */
  readonly seen: number;
}

/** How the group's lots differ from the tables they are forecast with, by stages that were counted this season. */
export function stockAdjustments(
  season: Season,
  last: Forecast,
  tables: readonly DevelopmentTable[],
): TableAdjustment[] {
  const names = [...new Set(season.lots.map(({ table }) => table))];
  return names.flatMap((name) => {
    const table = tables.find(({ id }) => id === name);
    if (table === undefined) return [];
    const observed = season.observed.flatMap((one) => observedLot(season, last, table, one));
    const adjustment = stockAdjustment(table, observed);
    return adjustment === null ? [] : [{ table: name, seen: observed.length, ...adjustment }];
  });
}

/**
 * Where the median egg of a lot stood when it was looked at: what it had gathered by the day of the report, less what
 * came after. The water's own error is what a shared error of the logger would have made of those days.
 */
function observedLot(
  season: Season,
  { boxes, asOf }: Forecast,
  table: DevelopmentTable,
  { date, box, lot, stage, seen, of }: Season['observed'][number],
): ObservedLot[] {
  const holds = season.lots.find(({ id }) => id === lot);
  if (holds?.table !== table.id || seen === null || of === null || lot === null) return [];
  if (!table.stages.some((row) => row.stage === stage)) return [];
  const found = boxes.find((one) => (box === null || one.box === box) && one.lots.some((a) => a.lot === lot));
  const gathered = found?.lots.find((one) => one.lot === lot)?.progress[stage];
  const way = wayTo(table, stage);
  const days = found?.water?.days;
  if (found === undefined || days === undefined || gathered === undefined || way.after !== null) return [];
  const offset = standardOffset(season.group.zone) * 60_000;
  const lifted = season.boxes.find(({ id }) => id === found.box)?.lifted ?? null;
  const end = Math.min(
    asOf + 1,
    lifted === null ? Number.POSITIVE_INFINITY : (epochMillis(lifted) + offset) / DAY,
  );
  const at = Date.parse(`${date}T00:00Z`) / DAY + NOON;
  const after = accumulate(way.law, days, Math.min(at, end), end);
  if (after === null) return [];
  const start = (epochMillis(holds.fertilised) + offset) / DAY;
  const shifted = (by: number) =>
    accumulate(
      way.law,
      { firstDay: days.firstDay, mean: days.mean.map((t) => t + by) },
      Math.max(start, days.firstDay),
      at,
    );
  const [warmer, colder] = [shifted(ACCURACY), shifted(-ACCURACY)];
  const waterSpread = warmer === null || colder === null ? 0 : (warmer - colder) / (2 * way.factor);
  return [{ lot, stage, progress: gathered - after / way.factor, waterSpread, seen, of }];
}
