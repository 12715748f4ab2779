import type { SeasonChangeWords } from './compare.js';
import type { SeasonProblem, SeasonProblemWords, SeasonRefusal } from './problem.js';

/** Every sentence about the season file, with the figures it needs. */
export interface SeasonWords extends SeasonProblemWords, SeasonChangeWords {
  'season.refused': SeasonRefusal;
  /** The same on a page, whose reader knows no keys of a file. */
  'season.refused-on-page': SeasonRefusal;
  /** The thing and its field, by the names people give them: "Box B1, lifted". */
  'season.place': { readonly problem: SeasonProblem };
  /** What is wrong there. */
  'season.on-page': { readonly problem: SeasonProblem };
  /** The tally or check of a box was refused. */
  'season.not-taken': { readonly kind: 'tally' | 'putBack'; readonly box: string };
  'season.and-more': { readonly more: number };
  /** Where in the text of a season file. */
  'season.line': { readonly line: number; readonly column: number | null };
}
