import type { Interval } from './forecast.js';
import { stageRow } from './needs.js';
import type { DevelopmentTable, StageName } from './table.js';
import type { DayNumber, DayTime } from './units.js';
import type { Water } from './water.js';
import { ensemble } from './windows/ensemble.js';
import { intervalOf } from './windows/interval.js';
import { stageCourse } from './windows/stage-draws.js';

/** When the median egg comes to a stage, as far as the water alone leaves that open. */
export interface WaterWindow extends Interval {
  /** One moment a draw, Infinity where it never comes. */
  readonly moments: Float64Array;
}

/**
 * The window that the water alone leaves open: the table taken as exact, the loggers as right. This is what a full
 * record can be held against; what eggs, lots, tables and loggers add lies in the windows of a box.
 *
 * @param fertilised the eggs lie in this water from then on
 * @param asOf last day known: what comes after it in `water` is projected
 * @throws RangeError for a stage the table does not name
 */
export function waterWindow(
  water: Water,
  table: DevelopmentTable,
  stage: StageName,
  fertilised: DayTime,
  asOf: DayNumber,
  seed: number,
): WaterWindow {
  const exact = { ...table, lotSpread: 0, ownSpread: 0 };
  const row = stageRow(exact, stage);
  if (row === undefined) throw new RangeError(`stage ${stage} is not in table ${table.id}`);
  if (water.traces.length === 0) return { p10: null, p50: null, p90: null, moments: new Float64Array() };
  const winters = {
    firstDay: water.days.firstDay,
    traces: water.traces,
    offset: new Float64Array(water.traces.length),
  };
  const knownTo = Math.min(asOf, water.lastFilled ?? water.lastMeasured ?? winters.firstDay - 1) + 1;
  const all = ensemble(water.station, winters, water.winters, knownTo, seed);
  const eggs = { lot: '', table: exact, count: 1, fertilised, planted: fertilised, before: null };
  const { median } = stageCourse(all, eggs, row).draws;
  return { ...intervalOf(median), moments: median };
}
