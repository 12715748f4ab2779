export type { Box, Fill } from './boxes.js';
export type { Group, OldRule, SeasonalCurve } from './group.js';
export type { Deployment, Logger } from './loggers.js';
export type { Before, Broodstock, Lot } from './lots.js';
export { epochMillis, type LocalDate, type Moment, type When } from './moments.js';
export {
  type SeasonPath,
  type SeasonProblem,
  type SeasonProblemWords,
  SeasonRefused,
  type ThingName,
} from './problem.js';
export type { Season } from './season.js';
export type { Site } from './sites.js';
export type { Quantity, Station } from './stations.js';
export type { Blocked, Observed, Visit } from './visits.js';
export { standardOffset, zoneNamed } from './zones.js';
