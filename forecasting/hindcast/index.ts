import type { StationDays } from '../day-series.js';
import type { GapRow, HindcastNote, HindcastOptions, HindcastRow, HindcastRows } from './contract.js';
import { gapRows } from './gap-rows.js';
import { type HindcastReport, hindcastReport } from './report.js';
import { hindcastRecord, sharedPairs, wholeWinters } from './winter.js';
import { type Hidden, winterRows } from './winter-rows.js';

export type * from './contract.js';
export { type EggOfStage, eggOfStage } from './egg-of-stage.js';
export {
  type HindcastReport,
  type HindcastReportRow,
  hindcastReport,
  type StationResult,
} from './report.js';
export { type GapResult, type HindcastResult, monthDay, summarise, summariseGaps } from './summary.js';

/** Which part of the stations to work on: part 0 of 2 takes every other one. For workers and progress. */
export interface HindcastPart {
  readonly part: number;
  readonly of: number;
  /** Called after each station. */
  readonly done?: (stations: number, all: number) => void;
}

const WHOLE: HindcastPart = { part: 0, of: 1 };

/**
 * How good the forecast would have been: each whole past winter of every station is hidden in turn and forecast as it
 * would have been at each lead date.
 */
export function hindcastRows(
  stations: readonly StationDays[],
  options: HindcastOptions,
  part: HindcastPart = WHOLE,
): HindcastRows {
  const record = hindcastRecord(stations, options.fertilised);
  const rows: HindcastRow[] = [];
  const gaps: GapRow[] = [];
  const notes: HindcastNote[] = [];
  const targets = record.stations.filter(({ station }) => station.kind !== 'air');
  const mine = targets.filter((_, i) => i % part.of === part.part);
  for (const [i, target] of mine.entries()) {
    const winters = wholeWinters(record, target);
    const name = target.station.station;
    if (winters.length === 0) notes.push({ kind: 'no-whole-winter', station: name, winter: null });
    if (winters.length === 1) notes.push({ kind: 'one-winter', station: name, winter: winters[0].year });
    const pairsWith = sharedPairs(record.axis, target.mean);
    for (const winter of winters) {
      const hidden: Hidden = { record, target, winters, winter, pairsWith, options };
      rows.push(...winterRows(hidden));
      if (options.cases.includes('gaps')) gaps.push(...gapRows(hidden));
    }
    part.done?.(i + 1, mine.length);
  }
  return { rows, gaps, notes };
}

/**
 * The whole of it at once: leave one winter out, and beside it the forecast that knows only the winters before.
 *
 * @param stations every station of the group, air stations too; also days after each hidden winter
 */
export function hindcast(stations: readonly StationDays[], options: HindcastOptions): HindcastReport {
  const past: HindcastOptions = {
    ...options,
    cases: options.cases.filter((of) => of !== 'gaps'),
    winters: 'past-only',
  };
  return hindcastReport(options, [hindcastRows(stations, options)], [hindcastRows(stations, past)]);
}
