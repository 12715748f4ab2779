import type { EpochMillis } from '../../../forecasting/units.js';
import { type Speech, speech } from '../../pages/speech.js';
import { dayAndTime, type Language } from '../../words/index.js';
import type { Subject } from '../people.js';

/** `now`: also at night. `can-wait`: not in quiet hours. `weekly`: with the weekly summary. */
export type Urgency = 'now' | 'can-wait' | 'weekly';

/** One thing in a message: its heading, what is said, the figures, what it means and what one might do. */
export interface Passage {
  readonly head: string;
  readonly says: readonly string[];
  readonly figures: readonly { readonly name: string; readonly value: string }[];
  readonly means: string | null;
  readonly might: string | null;
}

/** What is known beside the news: the group's zone, the week's own sentences, how stations are called. */
export interface PassageContext {
  readonly zone: string;
  readonly weekly: readonly string[];
  readonly stationName: (station: string) => string;
}

/** In which words a thing is told. */
export interface Telling extends PassageContext {
  readonly language: Language;
  readonly speech: Speech;
  /** An instant on the group's clocks. */
  readonly time: (at: EpochMillis) => string;
}

export function tellingIn(language: Language, context: PassageContext): Telling {
  return {
    ...context,
    language,
    speech: speech(language),
    time: (at) => dayAndTime(language, at, context.zone),
  };
}

/** A kind of thing that people are told: who wants it, how soon, of which boxes, and how it reads. */
export interface MessageKind<Told> {
  /** What a person chooses to be told of, or not; null: told to everybody it is meant for. */
  readonly subject: Subject | null;
  /** Left out: it can wait. */
  urgency?(news: Told): Urgency;
  /** Whose water the message shows; left out: any box's. */
  boxes?(news: Told): readonly string[];
  passage(news: Told, telling: Telling): Passage;
}

export function capital(sentence: string): string {
  return `${sentence.slice(0, 1).toLocaleUpperCase()}${sentence.slice(1)}`;
}
