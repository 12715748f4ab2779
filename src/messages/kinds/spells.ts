import { z } from 'zod';
import type { SpellChange } from '../../../forecasting/spells/history.js';
import type { JudgedSpell } from '../../../forecasting/spells/spell.js';
import { spellSentences } from '../../spells/sentences.js';
import { decimal, type Language, list } from '../../words/index.js';
import type { NewsSource } from '../news.js';
import type { MessageKind, Passage, Telling } from './kind.js';

export interface SpellNews {
  readonly kind: 'spell';
  readonly change: SpellChange;
  readonly spell: JudgedSpell;
}

export const spellKind: MessageKind<SpellNews> = {
  subject: 'spells',
  /**
   * At once, also at night, only what was measured and kills (a spell opens, worsens or is confirmed): what is merely
   * possible, over or withdrawn can wait until morning (ours).
   */
  urgency({ spell, change }) {
    const lethal = spell.severity === 'lethal';
    const running = change === 'opened' || change === 'worsened' || change === 'confirmed';
    if (lethal && running && spell.certainty === 'measured') return 'now';
    return lethal || spell.kind === 'exposure' ? 'can-wait' : 'weekly';
  },
  boxes: ({ spell }) => spell.boxes,
  passage: spellPassage,
};

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

function spellPassage(
  { change, spell }: SpellNews,
  { language, speech, zone, stationName }: Telling,
): Passage {
  const { say, stage, whole } = speech;
  const { kind, severity, certainty, origin, boxes, eggs, stages, peak, hours, degreeHours, chance } = spell;
  const sentences = spellSentences(language, spell, zone, stationName);
  const station = stationName(spell.station);
  const figures = { kind, severity, certainty, change };
  // Nobody has read water that was filled or is still to come.
  const read = origin !== 'filled' && origin !== 'projected';
  const open = read && spell.state === 'open' && change !== 'ended' && change !== 'withdrawn';
  const still = open ? ` (${say('letter-spell-still', {})})` : '';
  const beyond = degreeHours === null ? '' : say('letter-spell-beyond-value', { degreeHours });
  const digits = kind === 'freezing' ? 2 : 1;
  const farthest =
    peak === null || kind === 'sudden-change' ? '' : `${decimal(language, peak, digits)}\u00a0°C`;
  const rows = [
    { name: say('letter-spell-boxes', {}), value: named(language, boxes) },
    { name: say('letter-spell-station', {}), value: station },
    { name: say('letter-spell-eggs', {}), value: eggs > 0 ? whole(eggs) : '' },
    { name: say('letter-spell-stages', {}), value: stages.map((one) => stage(one)).join(', ') },
    { name: say('letter-spell-from', {}), value: sentences.from },
    { name: say('letter-spell-to', {}), value: `${sentences.to}${still}` },
    { name: say('letter-spell-peak', {}), value: farthest },
    { name: say('letter-spell-hours', {}), value: decimal(language, hours, hours < 10 ? 1 : 0) },
    { name: say('letter-spell-beyond', {}), value: beyond },
    { name: say('letter-spell-known', {}), value: say('letter-spell-certainty', { certainty, chance }) },
  ];
  const sources = sentences.sources.map((source) => source.replace(/\.$/, ''));
  return {
    head: say('letter-spell-head', { ...figures, boxes, station }),
    says: [
      ...sentences.what.slice(0, 1),
      ...sentences.limit,
      ...(sources.length === 0 ? [] : [say('letter-spell-sources', { sources })]),
    ],
    figures: rows.filter(({ value }) => value !== ''),
    means: say('letter-spell-means', figures),
    might: change === 'withdrawn' ? null : sentences.toDo.join(' ') || say('letter-spell-might', figures),
  };
}

/** Most boxes that are named. */
const MOST_NAMED = 30;

function named(language: Language, boxes: readonly string[]): string {
  if (boxes.length <= MOST_NAMED) return list(language, boxes);
  return `${boxes.slice(0, MOST_NAMED).join(', ')} … (${boxes.length})`;
}
