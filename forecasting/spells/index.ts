/** Pure judging: what harmed the eggs, by the limits of their tables and the stage they were in. */
export { EXPOSURE_DOSES, type ExposureDose } from './exposure-doses.js';
export { RAISED, type Rejudged, rejudge, type SpellChange, type StandingSpell } from './history.js';
export type * from './input.js';
export { type FoundSpell, judgeSpells, judgingSpells } from './judge.js';
export type * from './spell.js';
export { PLAUSIBLE, type StageChance, StageClock } from './stage-clock.js';
export { UsualSwing } from './swing.js';
