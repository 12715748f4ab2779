/** Shares of eggs that came through, each with an interval that owns up to boxes differing more than chance. */
export { type BetaBinomial, betaBinomial } from './beta-binomial.js';
export { type Compared, compareGroups, type NamedGroup } from './compare.js';
export { countingError, worthFewer } from './counting-error.js';
export { FEW_BOXES, MANY_BOXES, type SharedBy, sharedBy } from './group-share.js';
export { holm } from './holm.js';
export { ofFertilised } from './of-fertilised.js';
export { type GroupShare, quasiBinomial } from './quasi-binomial.js';
export { type Counted, LEVEL, type ShareInterval, wilson } from './wilson.js';
