/** The door of the forecast: pure arithmetic on typed arrays; what day it is, is an argument. */
export { accumulate, type DailyMeans, whenReached } from './accumulate.js';
export { checkTable, daysAtConstant, refuseInvalid } from './check-table.js';
export * from './daily-means.js';
export * from './day-series.js';
export type * from './forecast.js';
export { COLDEST, dailyRate, daysToStage } from './law.js';
export * from './lifting/index.js';
export { ForecastMemory } from './memory/forecast-memory.js';
export { stageRow, type Way, wayTo } from './needs.js';
export {
  type LiftedCounts,
  observedAtLifting,
  type StageObservation,
} from './observations/likelihood.js';
export {
  adjustedTable,
  type ObservedLot,
  type StockAdjustment,
  stockAdjustment,
} from './observations/stock.js';
export { oldRule } from './old-rule.js';
export { ELSEWHERE, OTHER_HARM } from './other-harm.js';
export type { Remark } from './remark.js';
export { forecast } from './season-forecast.js';
export * from './table.js';
export { type TableProblem, TableRefused, type TableWords } from './table-problem.js';
export * from './tables/index.js';
export { tableBase, thermalUnits, whenUnitsReached } from './thermal-units.js';
export type * from './units.js';
export * from './water.js';
export { type WaterWindow, waterWindow } from './water-window.js';
