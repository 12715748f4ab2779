/** Lifting the boxes and counting what came out: everything works through the group's own door. */
export { type DayAnswer, type LiftingAnswer, liftingAnswer, reasonOf } from './answer.js';
export { approvePlan, type Entered, enterPutBack, enterTally, type Kept, stateLifting } from './enter.js';
export { type Outcome, outcomes, outcomesAnswer } from './outcome.js';
export { boxesOver, dayOf, type LiftingState, liftingQuestion, liftingState } from './plan.js';
export { LiftingRefused } from './refused.js';
export {
  GOOD_ENOUGH,
  gaugeRemark,
  type LiftingRemark,
  standingRemarks,
  whyRemarks,
  wouldHelp,
} from './sentences.js';
export { type StopRule, stopRule } from './stop.js';
export { type TalliesAnswer, type TallyRow, talliesAnswer, tallyRows } from './tallies.js';
