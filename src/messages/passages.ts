import { speech } from '../pages/speech.js';
import { spellSentences } from '../spells/sentences.js';
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

/** What is known beside the news: the group's zone, the week's own sentences, how stations are called. */
export interface PassageContext {
  readonly zone: string;
  readonly weekly: readonly string[];
  readonly stationName: (station: string) => string;
}

/** One thing in one language; times are those of the group's zone. */
export function passageOf(
  language: Language,
  news: News,
  { zone, weekly, stationName }: PassageContext,
): Passage {
  const { say, stage } = speech(language);
  const time = (at: number) => dayAndTime(language, at, zone);
  switch (news.kind) {
    case 'spell':
      return spellPassage(language, news, { zone, weekly, stationName });
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
        head: say('letter-gap-head', { station: stationName(news.station) }),
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
  { zone, stationName }: PassageContext,
): Passage {
  const { say, stage, whole } = speech(language);
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
