/** What survived, beside the winter it had, and how right the windows were. */
export { type BoxCount, boxCounts } from './counts.js';
export {
  type BoxSurvival,
  byBox,
  controlOf,
  type Grouping,
  type GroupSurvival,
  groupings,
  type Measure,
  measures,
  type Survival,
  survivalOf,
  type YearBoxes,
} from './groups.js';
export {
  type LeadScore,
  type Rightness,
  rightness,
  type SeasonDoor,
  type StageStood,
  type Stood,
} from './rightness.js';
export { earlierYears, seasonId } from './seasons.js';
export { type SeasonWinters, type SiteWinter, siteWinters } from './site-winters.js';
export { stockAdjustments, type TableAdjustment } from './stock.js';
export { AT_FREEZING, type BoxWinter, boxWinters } from './winter.js';
