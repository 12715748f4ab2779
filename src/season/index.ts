export type { Box, Fill } from './boxes.js';
export { plantedIn } from './checks/counts.js';
export { compareSeasons, type SeasonChange, type SeasonChangeWords } from './compare.js';
export {
  type DeadKind,
  deadKinds,
  diedBefore,
  type Found,
  foundWays,
  type PutBack,
  type TalliedStage,
  type Tally,
  talliedStages,
} from './counts.js';
export type { Earlier } from './earlier.js';
export {
  addStations,
  emptySeason,
  keepLayout,
  type NewStation,
  removeLayout,
} from './edit.js';
export type { FieldEntry } from './field-entries.js';
export type { FieldKey } from './field-keys.js';
export type { Group, OldRule, SeasonalCurve } from './group.js';
export type { Lifting } from './lifting.js';
export type { Deployment, Logger } from './loggers.js';
export type { Before, Broodstock, Cross, Lot } from './lots.js';
export { epochMillis, type LocalDate, type Moment, momentAt, type When, writtenMoment } from './moments.js';
export { nameIn } from './named.js';
export type { Permit } from './permits.js';
export {
  type EntryRefused,
  type SeasonPath,
  type SeasonProblem,
  type SeasonProblemWords,
  SeasonRefused,
  type ThingName,
  type ThingNamed,
} from './problem.js';
export { readSeason, seasonFrom } from './read.js';
export { renderSeason } from './render.js';
export { type Correction, type Ruling, type Verdict, verdicts } from './rulings.js';
export type { Season } from './season.js';
export type { Site } from './sites.js';
export type { Quantity, Station } from './stations.js';
export { typedFigure } from './typed-figure.js';
export type { Blocked, Observed, Visit } from './visits.js';
export type { SeasonWords } from './words.js';
export { seasonDocument } from './written.js';
export { standardOffset, zoneNamed } from './zones.js';
