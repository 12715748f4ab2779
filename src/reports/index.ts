/** The season's reports: figures, printed pages, open data; closing a season, and the next one from it. */
export { closeSeason, type LateChanges, lateChanges, NOBODY } from './close.js';
export { type Documents, printed, type ReportKind, reportFiles, reportKinds, within } from './documents.js';
export type { ReportFigures } from './figures.js';
export { type FrozenSeason, frozenSeason } from './frozen.js';
export { type MapWay, mapWays } from './map.js';
export { beginNext, type NextSeason, nextSeason } from './next.js';
export { ReportRefused } from './refused.js';
export { closedWinters, type SeasonReported, seasonReport, seasonsThere } from './season.js';
export { survivalSentences } from './sentences.js';
export { SurvivalAnswer } from './survival-answer.js';
