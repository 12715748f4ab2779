/** How good the forecast would have been in past winters, for a file of daily means or a group's own stations. */
export { allIcy } from './all-icy.js';
export { dailyFile } from './daily-file.js';
export { askHindcast, type HindcastRun } from './desk.js';
export { groupStations } from './group-stations.js';
export { CASES, type HindcastAsked, hindcastOptions } from './question.js';
export { HindcastRefused } from './refused.js';
export { hindcastLines } from './rows-csv.js';
export { runHindcast } from './run.js';
export { stageAsked } from './stage-asked.js';
export type { HindcastWords } from './words.js';
