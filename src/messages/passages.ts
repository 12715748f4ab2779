import { speech } from '../pages/speech.js';
import { dayAndTime, decimal, type Language, list } from '../words/index.js';
import type { News } from './news.js';

/** One thing in a message: its heading, what is said, the figures, what it means and what one might do. */
export interface Passage {
  readonly head: string;
  readonly says: readonly string[];
  readonly figures: readonly { readonly name: string; readonly value: string }[];
  readonly means: string | null;
  readonly might: string | null;
}

type SpellNews = Extract<News, { kind: 'spell' }>;
type WindowNews = Extract<News, { kind: 'window-moved' }>;

/** Most boxes that are named one by one where windows moved. */
const MOST_MOVES = 12;

/** One thing in one language; times are those of the group's zone. `weekly` says the week's own sentences. */
export function passageOf(
  language: Language,
  news: News,
  { zone, weekly }: { readonly zone: string; readonly weekly: readonly string[] },
): Passage {
  const { say, stage } = speech(language);
  const time = (at: number) => dayAndTime(language, at, zone);
  switch (news.kind) {
    case 'spell':
      return spellPassage(language, news, time);
    case 'window-moved':
      return windowPassage(language, news);
    case 'stage-reached': {
      const name = stage(news.stage);
      return {
        head: capital(say('letter-stage-head', { stage: name, boxes: news.boxes })),
        says: [say('letter-stage-when', news)],
        figures: [],
        means: say('letter-stage-means', { stage: name }),
        might: say('letter-stage-might', { stage: name }),
      };
    }
    case 'lifting-near':
      return {
        head: say('letter-lifting-head', news),
        says: [say('letter-lifting-chance', { chance: news.chance, boxes: news.boxes.length })],
        figures: [],
        means: say('letter-lifting-means', news),
        might: say('letter-lifting-might', {}),
      };
    case 'station-silent':
      return {
        head: say('letter-silent-head', { station: news.name, hours: news.hours }),
        says: [say('letter-silent-says', { last: time(news.last), usualHours: news.usualHours })],
        figures: [],
        means: say('letter-silent-means', {}),
        might: say('letter-silent-might', {}),
      };
    case 'feed-silent':
      return {
        head: say('letter-feed-head', news),
        says: [say('letter-feed-says', { since: time(news.since) })],
        figures: [],
        means: say('letter-feed-means', {}),
        might: say('letter-feed-might', {}),
      };
    case 'feed-gap':
      return {
        head: say('letter-gap-head', news),
        says: [say('letter-gap-says', { feed: news.feed, from: time(news.from), to: time(news.to) })],
        figures: [],
        means: say('letter-gap-means', {}),
        might: say('letter-gap-might', {}),
      };
    case 'weekly':
      return {
        head: say('letter-weekly-head', { day: news.day }),
        says: weekly,
        figures: [],
        means: say('letter-weekly-means', {}),
        might: say('letter-weekly-might', {}),
      };
    case 'test':
      return {
        head: say('letter-test-head', {}),
        says: [say('letter-test-says', {})],
        figures: [],
        means: null,
        might: null,
      };
  }
}

function spellPassage(
  language: Language,
  { change, spell }: SpellNews,
  time: (at: number) => string,
): Passage {
  const { say, stage, whole } = speech(language);
  const { kind, severity, certainty, boxes, eggs, stages, from, to, peak, hours, degreeHours, chance } =
    spell;
  const figures = { kind, severity, certainty, change };
  const open = spell.state === 'open' && change !== 'ended' && change !== 'withdrawn';
  const rows = [
    { name: say('letter-spell-boxes', {}), value: named(language, boxes) },
    { name: say('letter-spell-eggs', {}), value: whole(eggs) },
    { name: say('letter-spell-stages', {}), value: stages.map((one) => stage(one)).join(', ') },
    { name: say('letter-spell-from', {}), value: time(from) },
    {
      name: say('letter-spell-to', {}),
      value: open ? `${time(to)} (${say('letter-spell-still', {})})` : time(to),
    },
    ...(peak === null
      ? []
      : [{ name: say('letter-spell-peak', {}), value: `${decimal(language, peak, 1)}\u00a0°C` }]),
    { name: say('letter-spell-hours', {}), value: decimal(language, hours, hours < 10 ? 1 : 0) },
    ...(degreeHours === null
      ? []
      : [
          {
            name: say('letter-spell-beyond', {}),
            value: say('letter-spell-beyond-value', { degreeHours }),
          },
        ]),
    { name: say('letter-spell-known', {}), value: say('letter-spell-certainty', { certainty, chance }) },
  ];
  return {
    head: say('letter-spell-head', { ...figures, boxes }),
    says: [],
    figures: rows.filter(({ value }) => value !== ''),
    means: say('letter-spell-means', figures),
    might: say('letter-spell-might', figures),
  };
}

function windowPassage(language: Language, { stage: moved, moves }: WindowNews): Passage {
  const { say, stage } = speech(language);
  const furthest = Math.max(...moves.map(({ before, after }) => Math.abs(after - before)));
  const later =
    (moves.find(({ before, after }) => Math.abs(after - before) === furthest)?.after ?? 0) >
    (moves.find(({ before, after }) => Math.abs(after - before) === furthest)?.before ?? 0);
  const boxes = new Set(moves.flatMap((move) => move.boxes)).size;
  return {
    head: say('letter-window-head', { stage: stage(moved), days: furthest, later, boxes }),
    says: [
      ...moves.slice(0, MOST_MOVES).map((move) => capital(say('letter-window-row', move))),
      ...(moves.length > MOST_MOVES ? [say('letter-further', { things: moves.length - MOST_MOVES })] : []),
    ],
    figures: [],
    means: say('letter-window-means', {}),
    might: say('letter-window-might', {}),
  };
}

/** Most boxes that are named. */
const MOST_NAMED = 30;

function named(language: Language, boxes: readonly string[]): string {
  if (boxes.length <= MOST_NAMED) return list(language, boxes);
  return `${boxes.slice(0, MOST_NAMED).join(', ')} … (${boxes.length})`;
}

function capital(sentence: string): string {
  return `${sentence.slice(0, 1).toLocaleUpperCase()}${sentence.slice(1)}`;
}
