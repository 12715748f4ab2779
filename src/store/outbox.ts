import type { EpochMillis } from './entries.js';

/** By what way a message goes to a person; `none` where they have neither. */
export type Channel = 'email' | 'webhook' | 'mailbox' | 'none';

/**
 * `waiting` until `next`; `sending` while a conversation runs; `delivered`; `failed`: refused for good; `given-up` after
 * the stated hours; `no-address` and `unsubscribed`: nothing was sent.
 */
export type DeliveryState =
  | 'waiting'
  | 'sending'
  | 'delivered'
  | 'failed'
  | 'given-up'
  | 'no-address'
  | 'unsubscribed';

/** Something that happened, and whom it is for from when on. Content is JSON. */
export interface EventToTell {
  /** Stable: an event of a key that is known already is not told again. */
  readonly key: string;
  readonly content: string;
  readonly parts: readonly { readonly person: string; readonly due: EpochMillis }[];
}

/** An event that stands in no message of this person yet. */
export interface DuePart {
  readonly event: number;
  readonly key: string;
  readonly at: EpochMillis;
  readonly person: string;
  readonly due: EpochMillis;
  readonly content: string;
}

/** One message to one person, made of the events named, with the ways it is to go. */
export interface MessageToSend {
  readonly id: string;
  readonly person: string;
  readonly content: string;
  readonly events: readonly number[];
  readonly deliveries: readonly { readonly channel: Channel; readonly state: DeliveryState }[];
}

export interface StoredMessage {
  readonly number: number;
  readonly id: string;
  readonly person: string;
  readonly at: EpochMillis;
  readonly content: string;
  readonly acknowledged: { readonly by: string; readonly at: EpochMillis } | null;
}

export interface Delivery {
  readonly number: number;
  readonly message: number;
  readonly channel: Channel;
  readonly state: DeliveryState;
  readonly tries: number;
  readonly next: EpochMillis;
  readonly last: EpochMillis | null;
  /** What was answered last, as a remark (JSON). */
  readonly answer: string | null;
}

export interface Settled {
  readonly state: DeliveryState;
  readonly next: EpochMillis;
  readonly at: EpochMillis;
  readonly answer: string | null;
}

/**
 * What is to be told to whom, and what came of it. Every change is one transaction that stands once its promise
 * resolves: whoever is killed in between finds each event told wholly or not at all.
 */
export interface Outbox {
  /** How far a source has been told; null before its first time. */
  mark(source: string): Promise<string | null>;
  /** Keeps events together with the mark that says they are told. */
  tell(source: string, mark: string, events: readonly EventToTell[], at: EpochMillis): Promise<void>;
  /** Events due by `at` that stand in no message yet, oldest first. */
  due(at: EpochMillis): Promise<readonly DuePart[]>;
  /** Keeps messages, their deliveries and which events stand in them. */
  keep(messages: readonly MessageToSend[], at: EpochMillis): Promise<void>;
  /** Deliveries to be tried at `at`, oldest first. */
  toSend(at: EpochMillis): Promise<readonly Delivery[]>;
  /** Says that a conversation begins, before it does. */
  begin(delivery: number, at: EpochMillis): Promise<void>;
  settle(delivery: number, settled: Settled): Promise<void>;
  /** What was being sent when the process ended waits again. */
  resume(at: EpochMillis): Promise<void>;
  message(number: number): Promise<StoredMessage | null>;
  messageOf(id: string): Promise<StoredMessage | null>;
  /** The newest messages, newest first, each with its deliveries. */
  messages(
    most: number,
  ): Promise<readonly { readonly message: StoredMessage; readonly deliveries: readonly Delivery[] }[]>;
  acknowledge(number: number, by: string, at: EpochMillis): Promise<void>;
  /** Nothing more goes to this person: what waits is left. */
  leave(person: string, at: EpochMillis): Promise<void>;
}

/** `fresh`: brought something new; `unchanged`; `refused`: what it gives is no download; `failing`: nothing came. */
export type FeedState = 'never' | 'fresh' | 'unchanged' | 'refused' | 'failing';

/** Where a feed stands. */
export interface FeedRow {
  readonly id: string;
  readonly state: FeedState;
  readonly etag: string | null;
  readonly modified: string | null;
  /** What was fetched last: a hash, or a folder's files (JSON). */
  readonly seen: string | null;
  readonly tried: EpochMillis | null;
  /** When something new came last. */
  readonly fresh: EpochMillis | null;
  readonly tries: number;
  readonly next: EpochMillis;
  /** When its silence was told; null once it speaks. */
  readonly told: EpochMillis | null;
  readonly load: string | null;
  /** What came of the last time, as a remark (JSON). */
  readonly answer: string | null;
}

export interface FeedBook {
  feeds(): Promise<readonly FeedRow[]>;
  keepFeed(row: FeedRow): Promise<void>;
}
