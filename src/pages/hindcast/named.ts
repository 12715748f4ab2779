import { stageAsked } from '../../hindcast/index.js';
import type { View } from '../view.js';

/** What the season calls a station. */
export type StationName = (station: string) => string;

const MS_DAY = 86_400_000;

/** A stage as the page calls it: `last-hatch` is the hatch of the last eggs. */
export function stageIn(view: View, name: string): string {
  return stageAsked(name, view.language);
}

/** A day of the year as a day number: 2001 has no 29 February, and neither have the leads. */
export function leadDay(lead: string): number {
  return Date.parse(`2001-${lead}T00:00Z`) / MS_DAY;
}
