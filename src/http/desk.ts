import type { Logger } from 'pino';
import type { DayNumber } from '../../forecasting/units.js';
import { Feeds } from '../feeds/index.js';
import type { LocalGroup } from '../group/local.js';
import {
  type MailServer,
  Messages,
  newsSources,
  noonOf,
  Post,
  Recipients,
  Round,
  sendEmail,
  sendWebhook,
} from '../messages/index.js';
import type { Settings } from '../settings/index.js';
import type { Outbox } from '../store/index.js';
import { inventedPast, inventedPeople } from './demo-post.js';

/** Everything of messages and feeds that pages and API work with. */
export interface Desk {
  readonly messages: Messages;
  readonly recipients: Recipients;
  readonly feeds: Feeds;
  readonly outbox: Outbox;
  /** Messages are kept to be read here instead of sent: the demonstration. */
  readonly mailbox: boolean;
  /** The address messages come from; null where no mail server is named. */
  readonly from: string | null;
  /** Now, as messages reckon: in a demonstration, the day it stands at. */
  readonly now: () => number;
  /** The checks are still looking at earlier years of what was loaded. */
  stillChecking(): boolean;
  /** Sends what is due at once. */
  wake(): void;
  start(): void;
  stop(): Promise<void>;
}

export interface DeskOptions {
  readonly group: LocalGroup;
  readonly settings: Settings;
  readonly base: () => string;
  readonly sign: (text: string) => string;
  readonly standingAt: DayNumber | null;
  readonly mailbox: boolean;
  readonly log: Logger;
}

/** Puts messages and feeds together as the settings say. */
export function openDesk({ group, settings, base, sign, standingAt, mailbox, log }: DeskOptions): Desk {
  const { outbox } = group;
  const recipients = new Recipients(group.folder);
  const begun = Date.now();
  const now = () => (standingAt === null ? Date.now() : noonOf(standingAt) + Date.now() - begun);
  const failed = (what: string) => (error: unknown) => log.error({ err: error }, what);
  const server = mailServer(settings);
  const messages = new Messages({
    group,
    outbox,
    recipients,
    sources: newsSources(group, settings),
    mailbox,
    base,
    sign,
    domain: settings.smtpFrom?.split('@')[1] ?? 'underice.invalid',
    failed: (source, error) => failed(`judging ${source}`)(error),
  });
  const named = settings.privateAddresses;
  const name = async () => (await group.season()).group.name;
  const post = new Post({
    outbox,
    recipients,
    hours: settings.messageHours,
    failed: failed('sending'),
    ways: {
      email:
        server === null
          ? null
          : async ({ name: to, email }, letter) =>
              sendEmail(server, { name: to, email: email ?? '', group: await name() }, letter),
      webhook: async ({ webhook, secret }, letter, signal) =>
        sendWebhook({ url: webhook ?? '', secret, named, signal }, await name(), letter, Date.now()),
    },
  });
  const feeds = new Feeds({
    group,
    book: outbox,
    feeds: settings.feeds,
    named,
    megabytes: settings.uploadMegabytes,
    tell: (source, mark, news, at) => messages.tell(source, mark, news, at),
    failed: (feed, error) => failed(`feed ${feed}`)(error),
  });
  const round = new Round({
    messages,
    post,
    feeds,
    revision: () => group.revision,
    stillChecking: () => group.stillChecking,
    today: () => group.today(),
    now,
    first: async (at) => {
      await outbox.resume(at);
      if (!mailbox || standingAt === null || recipients.list().length > 0) return;
      inventedPeople(recipients);
      await inventedPast(messages, post, standingAt);
    },
    failed: failed('messages'),
  });
  return {
    messages,
    recipients,
    feeds,
    outbox,
    mailbox,
    from: server?.from ?? null,
    now,
    stillChecking: () => group.stillChecking,
    wake: () => round.wake(),
    start: () => round.start(),
    stop: () => round.stop(),
  };
}

/** The mail server that the settings name; null where they name none, or no address to come from. */
function mailServer(settings: Settings): MailServer | null {
  const { smtpHost, smtpPort, smtpSecurity, smtpUser, smtpPassword, smtpFrom, smtpSeconds } = settings;
  if (smtpHost === null || smtpFrom === null) return null;
  return {
    host: smtpHost,
    port: smtpPort,
    security: smtpSecurity,
    user: smtpUser,
    password: smtpPassword,
    from: smtpFrom,
    seconds: smtpSeconds,
  };
}
