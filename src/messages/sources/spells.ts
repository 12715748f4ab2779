import { z } from 'zod';
import type { Spell } from '../../../forecasting/spells/spell.js';
import type { NewsSource, SpellChange } from '../news.js';

/** One thing that became of a spell, numbered in the order they were found. */
export interface SpellHappening {
  readonly number: number;
  readonly change: SpellChange;
  /** The spell as it stood then. */
  readonly spell: Spell;
}

/** Whoever judges spells: what happened after a number. */
export interface SpellTeller {
  spellEvents(after: number): Promise<readonly SpellHappening[]>;
}

/** Whether a group judges spells. */
export function tellsSpells(group: object): group is SpellTeller {
  return 'spellEvents' in group && typeof group.spellEvents === 'function';
}

const markSchema = z.object({ after: z.number() });

/** What became of spells since, each once. */
export function spellNews(teller: SpellTeller): NewsSource {
  return {
    name: 'spells',
    async news({ mark }) {
      const after = mark === null ? 0 : markSchema.parse(JSON.parse(mark)).after;
      const happened = await teller.spellEvents(after);
      const news = happened.map(({ number, change, spell }) => ({
        key: `spell ${number} ${spell.id} ${change}`,
        news: { kind: 'spell' as const, change, spell: plain(spell) },
      }));
      return {
        news,
        mark: JSON.stringify({ after: Math.max(after, ...happened.map(({ number }) => number)) }),
      };
    },
  };
}

/** Only what a message says of a spell is kept with it. */
function plain(spell: Spell): Spell {
  const { id, kind, severity, certainty, state, boxes, eggs, stages, from, to } = spell;
  const { peak, hours, degreeHours, chance } = spell;
  return {
    id,
    kind,
    severity,
    certainty,
    state,
    boxes,
    eggs,
    stages,
    from,
    to,
    peak,
    hours,
    degreeHours,
    chance,
  };
}
