import type { StageWindow } from '../forecast.js';
import type { StageName } from '../table.js';
import type { DayTime } from '../units.js';
import { mixture, type Part } from '../windows/mixture.js';
import type { LotCourse } from './lot-forecast.js';
import { stageWindow } from './stage-windows.js';
import type { StationEnsemble, StationWater } from './station-waters.js';

/** Windows of the box as a whole: its lots mixed by their eggs, for each stage that one of their tables names. */
export function boxWindows(
  place: StationWater,
  { all }: StationEnsemble,
  lots: readonly LotCourse[],
  moment: DayTime,
): StageWindow[] {
  const [only] = lots;
  if (only !== undefined && lots.length === 1) return [...only.forecast.windows];
  const canProject = place.water.projection.kind !== 'none';
  return stagesOf(lots).map((stage) => {
    const parts: Part[] = lots.flatMap(({ draws, forecast }) => {
      const of = draws.get(stage);
      return of === undefined ? [] : [{ draws: of, eggs: forecast.eggs }];
    });
    const outside = lots.some(({ forecast }) =>
      forecast.windows.some((window) => window.stage === stage && window.outsideValidity),
    );
    return stageWindow(stage, mixture(parts), all, moment, canProject, outside);
  });
}

/** Every stage of every lot, in the order of the first table and then of the others. */
export function stagesOf(lots: readonly LotCourse[]): StageName[] {
  return [...new Set(lots.flatMap(({ forecast }) => forecast.windows.map(({ stage }) => stage)))];
}
