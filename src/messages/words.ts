import type { SpellChange } from '../../forecasting/spells/history.js';
import type { Certainty, Severity, SpellKind } from '../../forecasting/spells/spell.js';
import type { NetworkWords } from '../network/index.js';
import type { Subject } from './people.js';
import type { MessagesRefusedWords } from './refused.js';

type Nothing = Record<never, never>;

interface SpellFigures {
  readonly kind: SpellKind;
  readonly severity: Severity;
  readonly certainty: Certainty;
  readonly change: SpellChange;
}

/** What stands in a message. Days are day numbers, instants epoch milliseconds, hours and °C plain figures. */
export interface LetterWords {
  'letter-subject': { readonly group: string; readonly head: string; readonly more: number };
  'letter-dear': { readonly name: string };
  'letter-several': { readonly things: number };
  'letter-further': { readonly things: number };
  'letter-means': Nothing;
  'letter-might': Nothing;
  'letter-cautions': Nothing;
  'letter-acknowledge': Nothing;
  'letter-pages': Nothing;
  'letter-why': { readonly group: string };
  'letter-unsubscribe': Nothing;
  'letter-chart': { readonly box: string };
  'letter-chart-spell': { readonly station: string };
  'letter-chart-key': Nothing;
  'letter-chart-axis': Nothing;
  'letter-spell-head': SpellFigures & { readonly boxes: readonly string[]; readonly station: string };
  'letter-spell-station': Nothing;
  'letter-spell-sources': { readonly sources: readonly string[] };
  'letter-spell-from': Nothing;
  'letter-spell-to': Nothing;
  'letter-spell-peak': Nothing;
  'letter-spell-hours': Nothing;
  'letter-spell-beyond': Nothing;
  'letter-spell-beyond-value': { readonly degreeHours: number };
  'letter-spell-boxes': Nothing;
  'letter-spell-eggs': Nothing;
  'letter-spell-stages': Nothing;
  'letter-spell-known': Nothing;
  'letter-spell-certainty': { readonly certainty: Certainty; readonly chance: number | null };
  'letter-spell-still': Nothing;
  'letter-spell-means': SpellFigures;
  'letter-spell-might': SpellFigures;
  'letter-window-head': {
    readonly stage: string;
    readonly days: number;
    readonly later: boolean;
    readonly boxes: number;
  };
  'letter-window-row': { readonly boxes: readonly string[]; readonly before: number; readonly after: number };
  'letter-window-means': Nothing;
  'letter-window-might': Nothing;
  'letter-stage-head': { readonly stage: string; readonly boxes: readonly string[] };
  'letter-stage-when': { readonly first: number; readonly last: number };
  'letter-stage-means': { readonly stage: string };
  'letter-stage-might': { readonly stage: string };
  'letter-lifting-head': { readonly day: number; readonly inDays: number };
  'letter-lifting-chance': { readonly chance: number; readonly boxes: number };
  'letter-lifting-means': { readonly approved: boolean };
  'letter-lifting-might': Nothing;
  'letter-silent-head': { readonly station: string; readonly hours: number };
  'letter-silent-says': { readonly last: string; readonly usualHours: number };
  'letter-silent-means': Nothing;
  'letter-silent-might': Nothing;
  'letter-feed-head': { readonly feed: string; readonly hours: number };
  'letter-feed-says': { readonly since: string };
  'letter-feed-means': Nothing;
  'letter-feed-might': Nothing;
  'letter-gap-head': { readonly station: string };
  'letter-gap-says': { readonly feed: string; readonly from: string; readonly to: string };
  'letter-gap-means': Nothing;
  'letter-gap-might': Nothing;
  'letter-weekly-head': { readonly day: number };
  'letter-weekly-box': { readonly box: string; readonly stage: string; readonly windows: string };
  'letter-weekly-window': { readonly stage: string; readonly from: number; readonly to: number };
  'letter-weekly-lifting': { readonly day: number; readonly boxes: number };
  'letter-weekly-water': { readonly box: string; readonly day: number };
  'letter-weekly-means': Nothing;
  'letter-weekly-might': Nothing;
  'letter-test-head': Nothing;
  'letter-test-says': Nothing;
}

/** What came of sending. */
export interface DeliveryWords {
  'delivery-accepted': { readonly answer: string };
  'delivery-smtp-refused': { readonly answer: string };
  'delivery-smtp-later': { readonly answer: string };
  'delivery-smtp-sign-in': { readonly answer: string };
  'delivery-smtp-no-tls': { readonly host: string };
  'delivery-smtp-too-slow': { readonly host: string };
  'delivery-no-server': Nothing;
  'delivery-no-address': Nothing;
  'delivery-here': Nothing;
  'delivery-stopped': Nothing;
}

/** What came of asking a feed. */
export interface FeedWords {
  'feed-fresh': { readonly readings: number; readonly unusable: number };
  'feed-nothing-new': { readonly unusable: number };
  'feed-same': Nothing;
  'feed-refused': { readonly why: { readonly en: string; readonly fr: string } };
  'feed-empty': Nothing;
  'feed-no-folder': { readonly folder: string };
  'feed-files': { readonly files: number; readonly readings: number; readonly refused: number };
  'feed-pushed': { readonly readings: number };
}

/** The page of messages and feeds. */
export interface MessagesPageWords {
  'page-nav-messages': Nothing;
  'page-messages-title': Nothing;
  'page-messages-answer': { readonly people: number; readonly waiting: number; readonly failed: number };
  'page-messages-nobody': Nothing;
  'page-messages-no-server': Nothing;
  'page-messages-people': Nothing;
  'page-messages-add': Nothing;
  'page-messages-change': { readonly name: string };
  'page-messages-save': Nothing;
  'page-messages-remove': Nothing;
  'page-messages-test': Nothing;
  'page-messages-name': Nothing;
  'page-messages-language': Nothing;
  'page-messages-email': Nothing;
  'page-messages-webhook': Nothing;
  'page-messages-webhook-what': Nothing;
  'page-messages-secret': Nothing;
  'page-messages-weekly': Nothing;
  'page-messages-weekday': { readonly weekday: number };
  'page-messages-never': Nothing;
  'page-messages-quiet': Nothing;
  'page-messages-quiet-what': Nothing;
  'page-messages-quiet-from': Nothing;
  'page-messages-quiet-to': Nothing;
  'page-messages-subjects': Nothing;
  'page-messages-subject': { readonly subject: Subject };
  'page-messages-unsubscribed': { readonly day: number };
  'page-messages-list': Nothing;
  'page-messages-none': Nothing;
  'page-messages-when': Nothing;
  'page-messages-who': Nothing;
  'page-messages-what': Nothing;
  'page-messages-way': Nothing;
  'page-messages-state': Nothing;
  'page-messages-last': Nothing;
  'page-messages-way-name': { readonly channel: string };
  'page-messages-state-name': { readonly state: string; readonly tries: number; readonly next: string };
  'page-messages-seen': { readonly by: string };
  'page-messages-gone': Nothing;
  'page-feeds-title': Nothing;
  'page-feeds-none': Nothing;
  'page-feeds-what': Nothing;
  'page-feeds-from': Nothing;
  'page-feeds-fresh': Nothing;
  'page-feeds-tried': Nothing;
  'page-feeds-next': Nothing;
  'page-feeds-state': { readonly state: string };
  'page-feeds-push': Nothing;
  'page-mailbox-title': Nothing;
  'page-mailbox-what': Nothing;
  'page-mailbox-none': Nothing;
  'page-mailbox-link': Nothing;
  'page-mailbox-from': Nothing;
  'page-mailbox-to': Nothing;
  'page-mailbox-subject': Nothing;
  'page-mailbox-plain': Nothing;
  'page-mailbox-html': Nothing;
  'page-letter-title': Nothing;
  'page-letter-seen-do': Nothing;
  'page-letter-seen': { readonly by: string };
  'page-unsubscribe-title': Nothing;
  'page-unsubscribe-ask': { readonly name: string };
  'page-unsubscribe-do': Nothing;
  'page-unsubscribe-done': Nothing;
  'page-unsubscribe-unknown': Nothing;
}

export interface MessagesWords
  extends LetterWords,
    DeliveryWords,
    FeedWords,
    NetworkWords,
    MessagesRefusedWords,
    MessagesPageWords {}
