import { beforeAll, expect, test } from 'vitest';
import { openOwnGroup } from '../../src/group/index.js';
import { Messages, Post, Recipients, sendEmail } from '../../src/messages/index.js';
import { Child } from '../store/children.js';
import { temporaryFolder } from '../store/temporary.js';
import { life } from './life.js';
import { person } from './river.js';
import { mailOf, mailSink } from './sink.js';

/** Where a process is ended: by what it says it has done, or by what the mail server sees. */
const PLACES = ['told', 'kept', 'MAIL', 'DATA', 'answered', 'round'] as const;
const INSIDE: readonly string[] = ['MAIL', 'DATA', 'answered'];

/** Tells one event of its own, writes the message and sends whatever waits; says each step on a line. */
const code = (folder: string, port: number, event: number) =>
  life(
    folder,
    port,
    `
  await outbox.resume(Date.now());
  const news = { kind: 'feed-silent', feed: 'event ${event}', since: 0, hours: 50 };
  await messages.tell('feed', 'm', [{ key: 'event ${event}', news }], Date.now());
  console.log('told');
  await messages.compose(20000, Date.now());
  console.log('kept');
  await post.round(Date.now(), new AbortController().signal);
  console.log('round');
  await new Promise((resolve) => setTimeout(resolve, 200));
`,
  );

let folder = '';
beforeAll(async () => {
  folder = temporaryFolder();
  const group = await openOwnGroup(folder);
  new Recipients(folder).add(person('Ann'));
  await group.close();
});

test(`${PLACES.length} kills between event and delivery: no message lost, none sent twice but inside the conversation`, async () => {
  let reached: (place: string) => void = () => undefined;
  const say = (place: string, callback: () => void) => {
    reached(place);
    // Time enough for the kill: what is answered afterwards reaches nobody.
    setTimeout(callback, 40);
  };
  const arrived: { event: string; id: string }[] = [];
  const sink = await mailSink({
    onMailFrom: (_, __, callback) => say('MAIL', callback),
    onData: (stream, _, callback) => {
      let raw = '';
      stream.on('data', (chunk: Buffer) => (raw += chunk.toString('utf8')));
      stream.on('end', () => {
        const { header } = mailOf(raw, [], false);
        const event = /event (\d+)/.exec(header('Subject') ?? '')?.[1] ?? '';
        arrived.push({ event, id: header('Message-ID') ?? '' });
        say('DATA', () => {
          callback(null, 'kept');
          setTimeout(() => reached('answered'), 0);
        });
      });
    },
  });
  for (const [event, place] of PLACES.entries()) {
    const child = new Child(code(folder, sink.port, event));
    if (INSIDE.includes(place))
      await new Promise((resolve) => {
        reached = (where) => where === place && resolve(where);
      });
    else await child.line(place);
    process.kill(child.pid, 'SIGKILL');
    expect((await child.exited).signal).toBe('SIGKILL');
    reached = () => undefined;
    await carryOn(sink.port);
    const ids = arrived.filter((one) => one.event === String(event)).map(({ id }) => id);
    expect(new Set(ids).size, place).toBe(1);
    if (!INSIDE.includes(place)) expect(ids, place).toHaveLength(1);
    // Ended once the server had it and before that could be noted, it comes again, with the same Message-ID.
    expect(ids.length, place).toBeLessThanOrEqual(2);
    if (place === 'DATA') expect(ids, place).toHaveLength(2);
  }
  expect(new Set(arrived.map(({ id }) => id)).size).toBe(PLACES.length);
});

/** What the next start of the service does: takes up what was being sent, writes what is due, sends. */
async function carryOn(port: number): Promise<void> {
  const group = await openOwnGroup(folder);
  const { outbox } = group;
  const recipients = new Recipients(folder);
  const failed = (error: unknown): never => {
    throw error;
  };
  const messages = new Messages({
    group,
    outbox,
    recipients,
    sources: [],
    mailbox: false,
    base: () => 'https://eggs.example.org',
    sign: (text) => Buffer.from(text).toString('hex'),
    domain: 'eggs.example.org',
    failed: (_, error) => failed(error),
  });
  const server = {
    host: '127.0.0.1',
    port,
    security: 'none',
    user: null,
    password: null,
    from: 'underice@eggs.example.org',
    seconds: 5,
  } as const;
  const post = new Post({
    outbox,
    recipients,
    hours: 72,
    failed,
    ways: {
      email: ({ name, email }, letter) =>
        sendEmail(server, { name, email: email ?? '', group: 'Tallowmere' }, letter),
      webhook: async () => failed('no webhook here'),
    },
  });
  await outbox.resume(Date.now());
  await messages.compose(20_000, Date.now());
  await post.round(Date.now(), new AbortController().signal);
  await group.close();
}
