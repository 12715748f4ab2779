/** When boxes may come out of the water. */
export { AT_THE_RIVER, type BoxCheck, withChecks } from './check.js';
export * from './contract.js';
export { blockedBy } from './joined-days.js';
export { type LotDraws, leavingDays } from './lot-draws.js';
export { liftingPlan } from './plan.js';
export { emerged, lotShares, stillInBox } from './shares.js';
