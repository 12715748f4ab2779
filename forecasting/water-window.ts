import type { Interval } from './forecast.js';
import { stageRow } from './needs.js';
import type { DevelopmentTable, StageName } from './table.js';
import type { DayNumber, DayTime } from './units.js';
import type { Water } from './water.js';
import { ensemble } from './windows/ensemble.js';
import { intervalOf } from './windows/interval.js';
import type { Winters } from './windows/rate-paths.js';
import { type StageDraws, stageCourse } from './windows/stage-draws.js';

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
  if (stageRow(table, stage) === undefined)
    throw new RangeError(`stage ${stage} is not in table ${table.id}`);
  if (water.traces.length === 0) return { p10: null, p50: null, p90: null, moments: new Float64Array() };
  const knownTo = Math.min(asOf, water.lastFilled ?? water.lastMeasured ?? water.days.firstDay - 1) + 1;
  const winters = { firstDay: water.days.firstDay, traces: water.traces };
  const moments = waterMoments(winters, table, fertilised, knownTo, seed)(stage);
  return { ...intervalOf(moments), moments };
}

/**
 * When the median egg (or the first, or the last) comes to each stage in courses of the water, one moment a course, as a box's window has it but
 * for what eggs, lots, tables and loggers add.
 */
export function waterMoments(
  { firstDay, traces }: Pick<Winters, 'firstDay' | 'traces'>,
  table: DevelopmentTable,
  fertilised: DayTime,
  knownTo: DayTime,
  seed: number,
): (stage: StageName, egg?: keyof StageDraws) => Float64Array {
  const exact = { ...table, lotSpread: 0, ownSpread: 0 };
  const winters = { firstDay, traces, offset: new Float64Array(traces.length) };
  const all = { ...ensemble('', winters, traces.length, knownTo, seed), draws: traces.length };
  const eggs = { lot: '', table: exact, count: 1, fertilised, planted: fertilised, before: null };
  return (stage, egg = 'median') => {
    const row = stageRow(exact, stage);
    return row === undefined || traces.length === 0
      ? new Float64Array()
      : stageCourse(all, eggs, row).draws[egg];
  };
}
