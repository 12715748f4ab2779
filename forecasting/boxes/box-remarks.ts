import type { BoxInput, ForecastInput, ForecastRemark } from '../forecast.js';
import type { ArrivedFill } from './before-planting.js';
import { stagesOf } from './box-windows.js';
import type { LotCourse } from './lot-forecast.js';
import type { StationWater } from './station-waters.js';

/** Where box and eggs stand at the as-of day, where that is not simply in the river. */
export function standing(
  input: ForecastInput,
  box: BoxInput,
  fills: readonly ArrivedFill[],
): ForecastRemark[] {
  const end = input.asOf + 1;
  const remarks: ForecastRemark[] = [];
  if (fills.length === 0) remarks.push({ code: 'no-fills', with: {} });
  for (const { lot } of fills) {
    if (end <= lot.fertilised)
      remarks.push({ code: 'not-fertilised', with: { lot: lot.lot, day: Math.floor(lot.fertilised) } });
  }
  const planting = Math.min(...fills.map(({ fill }) => fill.planted));
  if (fills.length > 0 && end <= planting)
    remarks.push({ code: 'not-planted', with: { day: Math.floor(planting) } });
  if (box.lifted !== null && box.lifted < end)
    remarks.push({ code: 'lifted-already', with: { day: Math.floor(box.lifted) } });
  return uniqueRemarks(remarks);
}

/** Below this many winters the intervals are widened beyond what the winters show, and the forecast says so. */
const FEW = 9;

export function fewWinters({ water }: StationWater): ForecastRemark[] {
  if (water.winters < 1 || water.winters >= FEW) return [];
  return [{ code: 'few-winters', with: { winters: water.winters } }];
}

export function outsideRemarks(fills: readonly ArrivedFill[], lots: readonly LotCourse[]): ForecastRemark[] {
  return uniqueRemarks(
    lots.flatMap(({ forecast }) => {
      const table = fills.find(({ lot }) => lot.lot === forecast.lot)?.lot.table;
      return forecast.windows.flatMap((window): ForecastRemark[] => {
        const row = table?.stages.find(({ stage }) => stage === window.stage);
        if (!window.outsideValidity || row === undefined) return [];
        const { min, max } = row.validity;
        return [{ code: 'outside-validity', with: { stage: row.stage, min, max } }];
      });
    }),
  );
}

export function missingStages(lots: readonly LotCourse[]): ForecastRemark[] {
  return stagesOf(lots).flatMap((stage): ForecastRemark[] => {
    const without = lots.filter(({ draws }) => !draws.has(stage)).map(({ forecast }) => forecast.lot);
    if (without.length === 0) return [];
    return [{ code: 'stage-not-in-every-table', with: { stage, lots: without.join(', ') } }];
  });
}

export function uniqueRemarks(remarks: readonly ForecastRemark[]): ForecastRemark[] {
  return [...new Map(remarks.map((remark) => [JSON.stringify(remark), remark])).values()];
}
