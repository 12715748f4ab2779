import { z } from 'zod';
import type { SpellChange } from '../../../forecasting/spells/history.js';
import type { JudgedSpell } from '../../../forecasting/spells/spell.js';
import type { NewsSource } from '../news.js';

/** One thing that became of a spell, numbered in the order they were found. */
export interface SpellHappening {
  readonly number: number;
  readonly change: SpellChange;
  /** The spell as it stood then. */
  readonly spell: JudgedSpell;
}

/** Whoever judges spells: what happened after a number. */
export interface SpellTeller {
  spellEvents(after: number): Promise<readonly SpellHappening[]>;
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
        news: { kind: 'spell' as const, change, spell },
      }));
      return {
        news,
        mark: JSON.stringify({ after: Math.max(after, ...happened.map(({ number }) => number)) }),
      };
    },
  };
}
