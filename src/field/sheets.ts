import type { Group } from '../group/index.js';
import { liftingState, stopRule } from '../lifting/index.js';
import { nameIn } from '../season/index.js';
import { isoDay, languages, words } from '../words/index.js';

/** Sheets of lifting days no further ahead than this go along, days. */
const AHEAD = 30;

type Both = Readonly<Record<'en' | 'fr', string>>;

/** The field sheet of a day and a site as a phone carries it. */
export interface Sheet {
  readonly date: string;
  readonly site: string;
  readonly boxes: readonly string[];
  readonly draft: boolean;
  /** The stop rule, and what else comes before anything is opened. */
  readonly stop: Both;
  readonly title: Both;
}

/** The sheets of the plan as it stands: those a person approved, else a draft's. */
export async function sheetsAhead(group: Group): Promise<Sheet[]> {
  const state = await liftingState(group, null);
  const { plan, season } = state;
  return plan.recommended
    .filter(({ day }) => day <= plan.asOf + AHEAD)
    .flatMap(({ day, sites, boxes }) =>
      sites.flatMap((site): Sheet[] => {
        const here = plan.boxes.filter((one) => one.site === site && boxes.includes(one.box));
        const rule = stopRule(state, here, day);
        if (rule === null) return [];
        const date = isoDay(day);
        const approved = state.approved?.days.find((one) => one.date === date)?.boxes ?? [];
        const name = nameIn(season.sites, site);
        const code = rule.boxes > 1 ? 'page-sheet-stop-rule' : 'page-sheet-stop-alone';
        return [
          {
            date,
            site,
            boxes: here.map(({ box }) => box),
            draft: !here.every(({ box }) => approved.includes(box)),
            stop: both((language) =>
              [words(language, code, rule), words(language, 'page-sheet-stop-enter', {})].join(' '),
            ),
            title: both((language) => words(language, 'page-sheet-title', { site: name, day })),
          },
        ];
      }),
    );
}

function both(say: (language: 'en' | 'fr') => string): Both {
  const [en, fr] = languages.map(say);
  return { en, fr };
}
