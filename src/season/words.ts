import type { SeasonChangeWords } from './compare.js';
import type { SeasonProblemWords, SeasonRefusal } from './problem.js';

/** Every sentence about the season file, with the figures it needs. */
export interface SeasonWords extends SeasonProblemWords, SeasonChangeWords {
  'season.refused': SeasonRefusal;
}
