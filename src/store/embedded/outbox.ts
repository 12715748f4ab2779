import type { DuckDBConnection } from '@duckdb/node-api';
import type { EpochMillis } from '../entries.js';
import type {
  Channel,
  Delivery,
  DeliveryState,
  DuePart,
  EventToTell,
  FeedBook,
  FeedRow,
  FeedState,
  MessageToSend,
  Outbox,
  Settled,
  StoredMessage,
} from '../outbox.js';
import type { Connections } from './connections.js';
import { type Row, rows } from './sql.js';

type Transaction = <T>(work: (connection: DuckDBConnection) => Promise<T>) => Promise<T>;

/** The outbox and the feeds' states in the store file. */
export class StoredOutbox implements Outbox, FeedBook {
  constructor(
    private readonly readers: Connections,
    private readonly transaction: Transaction,
  ) {}

  async mark(source: string): Promise<string | null> {
    const [row] = await this.read('SELECT mark FROM news_mark WHERE source = ?', [source]);
    return row === undefined ? null : row.text('mark');
  }

  tell(source: string, mark: string, events: readonly EventToTell[], at: EpochMillis): Promise<void> {
    return this.transaction(async (connection) => {
      let number = await next(connection, 'message_event');
      for (const { key, content, parts } of events) {
        const known = await rows(connection, 'SELECT number FROM message_event WHERE key = ?', [key]);
        if (known.length > 0) continue;
        await rows(connection, 'INSERT INTO message_event VALUES (?, ?, ?, ?)', [number, key, at, content]);
        for (const { person, due } of parts)
          await rows(connection, 'INSERT INTO message_part VALUES (?, ?, ?, NULL)', [number, person, due]);
        number++;
      }
      await rows(connection, 'DELETE FROM news_mark WHERE source = ?', [source]);
      await rows(connection, 'INSERT INTO news_mark VALUES (?, ?)', [source, mark]);
    });
  }

  async due(at: EpochMillis): Promise<readonly DuePart[]> {
    const found = await this.read(
      `SELECT e.number, e.key, e.made_at, e.content, p.person, p.due_ms FROM message_part p
        JOIN message_event e ON e.number = p.event
        WHERE p.message IS NULL AND p.due_ms <= ? ORDER BY e.number, p.rowid`,
      [at],
    );
    return found.map((row) => ({
      event: row.number('number'),
      key: row.text('key'),
      at: row.number('made_at'),
      person: row.text('person'),
      due: row.number('due_ms'),
      content: row.text('content'),
    }));
  }

  keep(messages: readonly MessageToSend[], at: EpochMillis): Promise<void> {
    return this.transaction(async (connection) => {
      let number = await next(connection, 'message');
      let delivery = await next(connection, 'delivery');
      for (const { id, person, content, events, deliveries } of messages) {
        await rows(connection, 'INSERT INTO message VALUES (?, ?, ?, ?, ?, NULL, NULL)', [
          number,
          person,
          at,
          id,
          content,
        ]);
        const among = events.map((event) => Math.trunc(event)).join(', ');
        await rows(
          connection,
          `UPDATE message_part SET message = ? WHERE person = ? AND message IS NULL AND event IN (${among})`,
          [number, person],
        );
        for (const { channel, state } of deliveries) {
          await rows(connection, 'INSERT INTO delivery VALUES (?, ?, ?, ?, 0, ?, NULL, NULL)', [
            delivery,
            number,
            channel,
            state,
            at,
          ]);
          delivery++;
        }
        number++;
      }
    });
  }

  async toSend(at: EpochMillis): Promise<readonly Delivery[]> {
    const found = await this.read(
      "SELECT * FROM delivery WHERE state = 'waiting' AND next_ms <= ? ORDER BY number",
      [at],
    );
    return found.map(deliveryOf);
  }

  begin(delivery: number, at: EpochMillis): Promise<void> {
    return this.change(
      "UPDATE delivery SET state = 'sending', tries = tries + 1, last_ms = ? WHERE number = ?",
      [at, delivery],
    );
  }

  settle(delivery: number, { state, next, at, answer }: Settled): Promise<void> {
    return this.change(
      'UPDATE delivery SET state = ?, next_ms = ?, last_ms = ?, answer = ? WHERE number = ?',
      [state, next, at, answer, delivery],
    );
  }

  resume(at: EpochMillis): Promise<void> {
    return this.change("UPDATE delivery SET state = 'waiting', next_ms = ? WHERE state = 'sending'", [at]);
  }

  async message(number: number): Promise<StoredMessage | null> {
    const [row] = await this.read('SELECT * FROM message WHERE number = ?', [number]);
    return row === undefined ? null : messageOf(row);
  }

  async messageOf(id: string): Promise<StoredMessage | null> {
    const [row] = await this.read('SELECT * FROM message WHERE id = ?', [id]);
    return row === undefined ? null : messageOf(row);
  }

  async messages(most: number) {
    const found = await this.read('SELECT * FROM message ORDER BY number DESC LIMIT ?', [most]);
    const oldest = found.at(-1)?.number('number') ?? 0;
    const deliveries = (
      await this.read('SELECT * FROM delivery WHERE message >= ? ORDER BY number', [oldest])
    ).map(deliveryOf);
    return found.map((row) => ({
      message: messageOf(row),
      deliveries: deliveries.filter(({ message }) => message === row.number('number')),
    }));
  }

  acknowledge(number: number, by: string, at: EpochMillis): Promise<void> {
    return this.change(
      'UPDATE message SET acknowledged_by = ?, acknowledged_at = ? WHERE number = ? AND acknowledged_at IS NULL',
      [by, at, number],
    );
  }

  leave(person: string, at: EpochMillis): Promise<void> {
    return this.transaction(async (connection) => {
      await rows(connection, 'DELETE FROM message_part WHERE person = ? AND message IS NULL', [person]);
      await rows(
        connection,
        `UPDATE delivery SET state = 'unsubscribed', last_ms = ? WHERE state = 'waiting'
          AND message IN (SELECT number FROM message WHERE person = ?)`,
        [at, person],
      );
    });
  }

  async feeds(): Promise<readonly FeedRow[]> {
    return (await this.read('SELECT * FROM feed ORDER BY id')).map(feedOf);
  }

  keepFeed(row: FeedRow): Promise<void> {
    return this.transaction(async (connection) => {
      await rows(connection, 'DELETE FROM feed WHERE id = ?', [row.id]);
      const { id, state, etag, modified, seen, tried, fresh, tries, next: due, told, load, answer } = row;
      await rows(connection, 'INSERT INTO feed VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)', [
        id,
        state,
        etag,
        modified,
        seen,
        tried,
        fresh,
        tries,
        due,
        told,
        load,
        answer,
      ]);
    });
  }

  private read(sql: string, values: Parameters<typeof rows>[2] = []): Promise<Row[]> {
    return this.readers.use((connection) => rows(connection, sql, values));
  }

  private change(sql: string, values: Parameters<typeof rows>[2]): Promise<void> {
    return this.transaction(async (connection) => {
      await rows(connection, sql, values);
    });
  }
}

async function next(connection: DuckDBConnection, table: string): Promise<number> {
  const [row] = await rows(connection, `SELECT coalesce(max(number), 0) + 1 AS number FROM ${table}`);
  return row.number('number');
}

const channels: readonly Channel[] = ['email', 'webhook', 'mailbox', 'none'];
const states: readonly DeliveryState[] = [
  'waiting',
  'sending',
  'delivered',
  'failed',
  'given-up',
  'no-address',
  'unsubscribed',
];
const feedStates: readonly FeedState[] = ['never', 'fresh', 'unchanged', 'refused', 'failing'];

function oneOf<T extends string>(known: readonly T[], text: string): T {
  const found = known.find((one) => one === text);
  if (found === undefined)
    throw new TypeError(`the store holds "${text}" where one of ${known.join(', ')} belongs`);
  return found;
}

function deliveryOf(row: Row): Delivery {
  return {
    number: row.number('number'),
    message: row.number('message'),
    channel: oneOf(channels, row.text('channel')),
    state: oneOf(states, row.text('state')),
    tries: row.number('tries'),
    next: row.number('next_ms'),
    last: row.numberOrNull('last_ms'),
    answer: row.textOrNull('answer'),
  };
}

function messageOf(row: Row): StoredMessage {
  const by = row.textOrNull('acknowledged_by');
  return {
    number: row.number('number'),
    id: row.text('id'),
    person: row.text('person'),
    at: row.number('made_at'),
    content: row.text('content'),
    acknowledged: by === null ? null : { by, at: row.number('acknowledged_at') },
  };
}

function feedOf(row: Row): FeedRow {
  return {
    id: row.text('id'),
    state: oneOf(feedStates, row.text('state')),
    etag: row.textOrNull('etag'),
    modified: row.textOrNull('modified'),
    seen: row.textOrNull('seen'),
    tried: row.numberOrNull('tried_ms'),
    fresh: row.numberOrNull('fresh_ms'),
    tries: row.number('tries'),
    next: row.number('next_ms'),
    told: row.numberOrNull('told_ms'),
    load: row.textOrNull('load'),
    answer: row.textOrNull('answer'),
  };
}
