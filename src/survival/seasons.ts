import type { Counted } from '../../forecasting/survival/index.js';
import type { Season } from '../season/index.js';
import type { YearBoxes } from './groups.js';

/** Eggs fertilised from July on belong to the season that ends next summer. */
const JULY = 7;

/**
 * What a season is called: the year its eggs were fertilised and the next. Null before there are eggs.
 *
 * @example seasonId(season) // "2025-2026" for lots of November 2025
 */
export function seasonId(season: Season): string | null {
  const first = season.lots.map(({ fertilised }) => fertilised).sort()[0];
  if (first === undefined) return null;
  const year = Number(first.slice(0, 4)) - (Number(first.slice(5, 7)) < JULY ? 1 : 0);
  return `${year}-${year + 1}`;
}

/** Past seasons that somebody wrote into a table: boxes with eggs and empties. */
export function earlierYears({ earlier }: Season): YearBoxes[] {
  const years = new Map<string, Counted[]>();
  for (const { boxes } of earlier)
    for (const { season, eggs, empty } of boxes) {
      if (eggs === null || empty === null || eggs === 0) continue;
      years.set(season, [...(years.get(season) ?? []), { seen: Math.min(empty, eggs), of: eggs }]);
    }
  return [...years].map(([season, boxes]) => ({ season, source: 'table', boxes }));
}
