import type { SeasonChangeWords } from './compare.js';
import type { SeasonProblem, SeasonProblemWords } from './problem.js';

/** Every sentence about the season file, with the figures it needs. */
export interface SeasonWords extends SeasonProblemWords, SeasonChangeWords {
  'season.refused': { readonly file: string; readonly problems: readonly SeasonProblem[] };
}
