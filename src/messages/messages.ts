import { createHash, randomUUID } from 'node:crypto';
import type { DayNumber, EpochMillis } from '../../forecasting/units.js';
import type { Group } from '../group/index.js';
import { liftingState } from '../lifting/index.js';
import { nameIn } from '../season/index.js';
import type { DuePart, EventToTell, MessageToSend, Outbox } from '../store/index.js';
import { chartOf, spellChart } from './chart.js';
import { dueFor, lastWeekly } from './due.js';
import { writeLetter } from './letter.js';
import { type KeyedNews, type News, type NewsSource, urgencyOf } from './news.js';
import type { Recipient, Recipients } from './people.js';
import { weekOf } from './weekly.js';

const DAY = 86_400_000;

export interface MessagesOptions {
  readonly group: Group;
  readonly outbox: Outbox;
  readonly recipients: Recipients;
  readonly sources: readonly NewsSource[];
  /** In the demonstration nothing leaves: every message is kept to be read. */
  readonly mailbox: boolean;
  /** The address under which people reach the pages. */
  readonly base: () => string;
  /** A signature of this folder's own: nobody guesses a message's address. */
  readonly sign: (text: string) => string;
  /** What stands behind the @ of a Message-ID. */
  readonly domain: string;
  readonly failed: (source: string, error: unknown) => void;
}

/** Judges what is news, for whom, and writes it; sending is `Post`'s. */
export class Messages {
  constructor(private readonly options: MessagesOptions) {}

  /**
   * Asks every source what is new and keeps it, with the mark that says it was told, in one transaction each. A source
   * that fails is asked again next time; the others go on.
   *
   * @returns whether every source answered.
   */
  async judge(asOf: DayNumber, at: EpochMillis): Promise<boolean> {
    const { group, outbox, recipients, sources, failed } = this.options;
    if (recipients.active().length === 0) return true;
    let answered = true;
    for (const source of sources) {
      try {
        const mark = await outbox.mark(source.name);
        const found = await source.news({ group, mark, asOf, at });
        if (found.news.length === 0 && found.mark === mark) continue;
        await this.tell(source.name, found.mark, found.news, at);
      } catch (error) {
        answered = false;
        failed(source.name, error);
      }
    }
    await this.judgeWeek(asOf, at);
    return answered;
  }

  /** Keeps news for everybody whom it concerns. */
  async tell(source: string, mark: string, news: readonly KeyedNews[], at: EpochMillis): Promise<void> {
    const { outbox, recipients } = this.options;
    const zone = await this.zone();
    const events = news.map(({ key, news: one }): EventToTell => {
      const parts = recipients.active().flatMap((person) => {
        const due = dueFor(person, one, at, zone);
        return due === null ? [] : [{ person: person.id, due }];
      });
      return { key, content: JSON.stringify(one), parts };
    });
    await outbox.tell(source, mark, events, at);
  }

  /** A message to one person that says nothing but that it arrives. */
  async test(person: Recipient, at: EpochMillis): Promise<void> {
    const key = `test ${randomUUID()}`;
    const content = JSON.stringify({ kind: 'test' } satisfies News);
    await this.options.outbox.tell(
      'test',
      key,
      [{ key, content, parts: [{ person: person.id, due: at }] }],
      at,
    );
  }

  /** Writes one message for each person of everything that is due for them by now. */
  async compose(asOf: DayNumber, at: EpochMillis): Promise<void> {
    const { outbox, recipients } = this.options;
    const due = await outbox.due(at);
    if (due.length === 0) return;
    const byPerson = new Map<string, DuePart[]>();
    for (const part of due) byPerson.set(part.person, [...(byPerson.get(part.person) ?? []), part]);
    const messages: MessageToSend[] = [];
    for (const [id, parts] of byPerson) {
      const person = recipients.find(id);
      if (person === null || person.unsubscribed !== null) await outbox.leave(id, at);
      else messages.push(await this.messageTo(person, parts, asOf));
    }
    if (messages.length > 0) await outbox.keep(messages, at);
  }

  private async judgeWeek(asOf: DayNumber, at: EpochMillis): Promise<void> {
    const { outbox, recipients } = this.options;
    const zone = await this.zone();
    for (const { id, weekly } of recipients.active()) {
      if (weekly === null) continue;
      const source = `weekly ${id}`;
      const mark = await outbox.mark(source);
      const due = String(lastWeekly(weekly, at, zone));
      if (mark === due) continue;
      const content = JSON.stringify({ kind: 'weekly', day: asOf } satisfies News);
      const events =
        mark === null ? [] : [{ key: `${source} ${due}`, content, parts: [{ person: id, due: at }] }];
      await outbox.tell(source, due, events, at);
    }
  }

  private async messageTo(
    person: Recipient,
    parts: readonly DuePart[],
    asOf: DayNumber,
  ): Promise<MessageToSend> {
    const { group, sign, base, mailbox, domain } = this.options;
    const season = await group.season();
    const news = parts.map(({ content }) => newsOf(content)).sort((a, b) => rank(a) - rank(b));
    const hashed = createHash('sha256')
      .update(parts.map(({ key }) => key).join('\n'))
      .digest('hex');
    const id = sign(`message ${person.id} ${hashed}`);
    const tested = news.every(({ kind }) => kind === 'test');
    const forecast = tested ? null : await group.forecast({ box: null, asOf });
    const week = news.some(({ kind }) => kind === 'weekly') && forecast !== null;
    const stationName = (id: string) => nameIn(season.stations, id);
    const chart =
      forecast === null
        ? null
        : ((await spellChart(person.language, news, group, stationName)) ??
          chartOf(person.language, news, forecast));
    const letter = writeLetter({
      language: person.language,
      group: season.group.name === '-' ? 'Underice' : season.group.name,
      name: person.name,
      zone: season.group.zone,
      news,
      stationName,
      weekly: week ? weekOf(person.language, forecast, (await liftingState(group, asOf)).plan) : [],
      chart,
      link: `${base()}/letters/${id}`,
      unsubscribe: `${base()}/unsubscribe/${person.token}`,
      pages: `${base()}/`,
      messageId: `<${createHash('sha256').update(id).digest('hex').slice(0, 40)}@${domain}>`,
    });
    const { email, webhook } = person;
    const ways = mailbox
      ? [{ channel: 'mailbox', state: 'waiting' } as const]
      : [
          ...(email === null ? [] : [{ channel: 'email', state: 'waiting' } as const]),
          ...(webhook === null ? [] : [{ channel: 'webhook', state: 'waiting' } as const]),
        ];
    return {
      id,
      person: person.id,
      content: JSON.stringify(letter),
      events: parts.map(({ event }) => event),
      deliveries: ways.length > 0 ? ways : [{ channel: 'none', state: 'no-address' }],
    };
  }

  private async zone(): Promise<string> {
    return (await this.options.group.season()).group.zone;
  }
}

/** What cannot wait stands first, the week last. */
function rank(news: News): number {
  if (news.kind === 'weekly') return 3;
  return { now: 0, 'can-wait': 1, weekly: 2 }[urgencyOf(news)];
}

/** News as this program kept it. */
function newsOf(content: string): News {
  const news: News = JSON.parse(content);
  return news;
}

/** The middle of a day, for a demonstration that stands at one. */
export const noonOf = (day: DayNumber): EpochMillis => day * DAY + DAY / 2;
