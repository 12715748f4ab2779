import type { SeasonPath, Trouble } from '../problem.js';
import type { Season } from '../season.js';
import { counts } from './counts.js';
import { duplicates } from './duplicates.js';
import { eggs } from './eggs.js';
import { loops } from './loops.js';
import { references } from './references.js';
import { tables } from './tables.js';
import { times } from './times.js';

/** Something wrong between the things of a season, and where. */
export interface Found {
  readonly path: SeasonPath;
  readonly trouble: Trouble;
}

/** All that is wrong between the things of a season: names, references, times, eggs, loops, tables. */
export function checkSeason(season: Season): Found[] {
  return [duplicates, references, loops, times, eggs, counts, tables].flatMap((check) => check(season));
}
