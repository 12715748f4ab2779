import { stageRow } from '../needs.js';
import type { PossibleWaters } from '../possible-waters.js';
import type { StageName } from '../table.js';
import { type Ensemble, ensemble } from '../windows/ensemble.js';
import { stageCourse } from '../windows/stage-draws.js';
import type { HindcastOptions } from './contract.js';
import type { Winter } from './winter.js';

/**
 * When the eggs come to a stage, draw by draw, worked out as a window is: days from fertilisation, Infinity where
 * never. What a window holds beyond the water (the logger's offset, the spread between lots and of the table itself)
 * is left at nothing, because the date it is held against is the same law summed over what the logger read.
 */
export function shippedWindow(
  { table, seed }: HindcastOptions,
  station: string,
  { window }: Winter,
  { traces }: PossibleWaters,
  winters: number,
): (stage: StageName) => Float64Array {
  const { from, start } = window;
  const courses = traces.map((trace) => trace.subarray(from - start));
  const water = { firstDay: 0, traces: courses, offset: new Float64Array(courses.length) };
  const all: Ensemble = { ...ensemble(station, water, winters, 0, seed), draws: courses.length };
  const eggs = {
    lot: station,
    table: { ...table, lotSpread: 0, ownSpread: 0 },
    count: 1,
    fertilised: 0,
    planted: 0,
    before: null,
  };
  return (stage) => {
    const row = stageRow(table, stage);
    if (row === undefined || courses.length === 0) return new Float64Array(0);
    return stageCourse(all, eggs, row).draws.median;
  };
}
