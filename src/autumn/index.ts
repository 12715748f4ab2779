export { type Handling, handling, type PlantingTime, plantingCautions } from './cautions.js';
export { type CountedSample, type EggCount, eggsBySamples } from './egg-count.js';
export {
  type LotBalance,
  lotBalances,
  openEnds,
  type PlannedFill,
  type PlannedFills,
  planFills,
  type Room,
  roomFor,
} from './fills.js';
export { blockedDays } from './permits.js';
export { type ClosedWinter, type SiteCard, type SitePast, siteCards } from './site-card.js';
export type { AutumnCaution, AutumnCautionWords } from './words.js';
