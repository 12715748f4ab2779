import { cautions } from '../../group/forecast-answer.js';
import type { LiftingState } from '../../lifting/index.js';
import { nameIn } from '../../season/index.js';
import { type Language, words } from '../../words/index.js';
import type { Entry } from './events.js';

/** The days on which boxes are to be lifted: one entry a day, and one a site where the days move apart. */
export function liftingEntries(
  { plan, approved, season }: LiftingState,
  box: string | null,
  language: Language,
): Entry[] {
  const draft = approved === null;
  const name = (site: string) => nameIn(season.sites, site);
  return plan.recommended
    .filter(({ boxes }) => box === null || boxes.includes(box))
    .map(({ day, boxes, sites }) => ({
      // The same trip keeps its entry when its day moves.
      uid: `lifting ${box ?? boxes.join(' ')}`,
      from: day,
      to: day,
      title: words(language, 'http-calendar-lifting', { sites: sites.map(name), draft }),
      about: [
        words(language, 'http-calendar-lifting-about', { boxes, chance: plan.chance, draft }),
        ...cautions(language),
      ].join('\n'),
    }));
}
