/** What people do with what the quality checks say; everything works through the group's own door. */
export { explained, type FindingAnswer, findingAnswer } from './answer.js';
export { acceptCorrection, findingNamed, overrule, verdictNamed, withdrawRuling } from './enter.js';
export { QualityRefused } from './refused.js';
export type { QualityWords } from './words.js';
