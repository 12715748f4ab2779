import { setImmediate as breathe } from 'node:timers/promises';
import { type DaySeries, Origin } from '../../forecasting/day-series.js';
import {
  adjustedTable,
  type DevelopmentTable,
  forecast,
  type ObservedLot,
  type StockAdjustment,
  stockAdjustment,
} from '../../forecasting/index.js';
import type { DayNumber } from '../../forecasting/units.js';
import { forecastInput, lotSeen } from '../group/forecast-input.js';
import type { Group } from '../group/index.js';
import type { Observed, Season } from '../season/index.js';

const DAY = 86_400_000;
/** One standard deviation of progress from the water: where most days were measured, and where most were filled (ours). */
const WATER_MEASURED = 0.01;
const WATER_FILLED = 0.03;

/** A published table beside what the group's own lots have shown of it. */
export interface StockBeside {
  readonly published: DevelopmentTable;
  readonly adjusted: DevelopmentTable;
  readonly stock: StockAdjustment;
  readonly observed: readonly ObservedLot[];
}

/**
 * The stock adjustment of every table whose lots were looked at and counted. Where a lot stood by the published table is
 * worked out from all the water known by now, and without what was seen: that is what is compared.
 */
export async function groupStock(group: Group): Promise<StockBeside[]> {
  const season = await group.season();
  const today = await group.today();
  const counted = season.observed.filter(
    ({ seen, of, date }) => seen !== null && of !== null && dayOf(date) <= today,
  );
  if (counted.length === 0) return [];
  const tables = new Map((await group.tables()).map((table) => [table.id, table]));
  const measured = await measuredByStation(group);
  const found = new Map<string, ObservedLot[]>();
  for (const one of counted) {
    const lot = season.lots.find(({ id }) => id === lotSeen(one, season));
    const seen = lot === undefined ? null : observedLot(one, lot.id, season, measured, tables);
    if (lot !== undefined && seen !== null) found.set(lot.table, [...(found.get(lot.table) ?? []), seen]);
    // Each takes some tens of milliseconds: others are served between.
    await breathe();
  }
  return [...found].flatMap(([id, observed]): StockBeside[] => {
    const published = tables.get(id);
    const stock = published === undefined ? null : stockAdjustment(published, observed);
    if (published === undefined || stock === null) return [];
    return [{ published, adjusted: adjustedTable(published, stock), stock, observed }];
  });
}

function observedLot(
  { date, box, stage, seen, of }: Observed,
  lot: string,
  season: Season,
  measured: ReadonlyMap<string, DaySeries>,
  tables: ReadonlyMap<string, DevelopmentTable>,
): ObservedLot | null {
  const day = dayOf(date);
  const where = box ?? season.boxes.find(({ fills }) => fills.some((fill) => fill.lot === lot))?.id;
  if (where === undefined || seen === null || of === null) return null;
  const known = new Map(
    [...measured].flatMap(([station, days]) => {
      const until = toDay(days, day);
      return until === null ? [] : [[station, until] as const];
    }),
  );
  const input = forecastInput(season, known, tables, day, where);
  const [at] = forecast({ ...input, observations: [], checks: [] }).boxes;
  const progress = at?.lots.find((one) => one.lot === lot)?.progress[stage];
  if (at === undefined || progress === undefined || !(progress > 0)) return null;
  const { measured: own, filled, projected } = at.days;
  const waterSpread = own >= filled + projected ? WATER_MEASURED : WATER_FILLED;
  return { lot, stage, progress, waterSpread, seen, of };
}

async function measuredByStation(group: Group): Promise<Map<string, DaySeries>> {
  const found = new Map<string, DaySeries>();
  for (const { station, inSeason } of await group.stations()) {
    if (!inSeason) continue;
    const all = await group.days({ station, from: null, to: null });
    const mean = all.mean.map((value, d) => (all.origin[d] === Origin.measured ? value : Number.NaN));
    const origin = all.origin.map((of) => (of === Origin.measured ? of : Origin.none));
    if (origin.includes(Origin.measured)) found.set(station, { ...all, mean, origin });
  }
  return found;
}

function toDay(days: DaySeries, last: DayNumber): DaySeries | null {
  const length = Math.min(days.mean.length, last - days.firstDay + 1);
  if (length <= 0) return null;
  const cut = (column: Float64Array) => column.subarray(0, length);
  return {
    firstDay: days.firstDay,
    mean: cut(days.mean),
    min: cut(days.min),
    max: cut(days.max),
    coverage: cut(days.coverage),
    spread: cut(days.spread),
    origin: days.origin.subarray(0, length),
  };
}

function dayOf(date: string): DayNumber {
  return Date.parse(`${date}T00:00Z`) / DAY;
}
