import { beforeAll, expect, test } from 'vitest';
import { openOwnGroup } from '../../src/group/index.js';
import { Recipients } from '../../src/messages/index.js';
import { Child, compiled } from '../store/children.js';
import { temporaryFolder } from '../store/temporary.js';
import { person } from './river.js';
import { mailSink } from './sink.js';

/** Where a process is ended: by what it says it has done, or by what the mail server sees. */
const PLACES = ['told', 'kept', 'MAIL', 'RCPT', 'DATA', 'answered', 'round', 'told', 'DATA'] as const;

/** Tells one event of its own, writes the message and sends whatever waits; says each step on a line. */
const code = (folder: string, port: number, event: number) => `
  import { openOwnGroup } from ${JSON.stringify(compiled('group/index.js'))};
  import { Messages, Post, Recipients, sendEmail } from ${JSON.stringify(compiled('messages/index.js'))};
  const group = await openOwnGroup(${JSON.stringify(folder)});
  const { outbox } = group;
  const recipients = new Recipients(group.folder);
  const failed = (error) => { throw error; };
  const messages = new Messages({ group, outbox, recipients, sources: [], mailbox: false, failed,
    base: () => 'https://eggs.example.org', sign: (text) => Buffer.from(text).toString('hex'), domain: 'eggs.example.org' });
  const server = { host: '127.0.0.1', port: ${port}, security: 'none', user: null, password: null,
    from: 'underice@eggs.example.org', seconds: 5 };
  const post = new Post({ outbox, recipients, hours: 72, failed, ways: { webhook: failed,
    email: ({ name, email }, letter) => sendEmail(server, { name, email, group: 'Tallowmere' }, letter) } });
  await outbox.resume(Date.now());
  const news = { kind: 'feed-silent', feed: 'event ${event}', since: 0, hours: 50 };
  await messages.tell('feed', 'm', [{ key: 'event ${event}', news }], Date.now());
  console.log('told');
  await messages.compose(20000, Date.now());
  console.log('kept');
  await post.round(Date.now(), new AbortController().signal);
  console.log('round');
  await new Promise((resolve) => setTimeout(resolve, 200));
  await group.close();
`;

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
    onRcptTo: (_, __, callback) => say('RCPT', callback),
    onData: (stream, _, callback) => {
      let raw = '';
      stream.on('data', (chunk: Buffer) => (raw += chunk.toString('utf8')));
      stream.on('end', () => {
        arrived.push({
          event: /^Subject: .*event (\d+)/m.exec(raw.replace(/\r\n[ \t]+/g, ' '))?.[1] ?? '',
          id: /^Message-ID: (.*)$/im.exec(raw)?.[1]?.trim() ?? '',
        });
        say('DATA', () => {
          callback(null, 'kept');
          setTimeout(() => reached('answered'), 0);
        });
      });
    },
  });
  for (const [event, place] of PLACES.entries()) {
    const child = new Child(code(folder, sink.port, event));
    const there = ['told', 'kept', 'round'].includes(place)
      ? child.line(place)
      : new Promise((resolve) => {
          reached = (where) => where === place && resolve(where);
        });
    await there;
    process.kill(child.pid, 'SIGKILL');
    await child.exited;
    reached = () => undefined;
  }
  const last = new Child(code(folder, sink.port, PLACES.length));
  expect(await last.exited).toMatchObject({ code: 0 });
  const events = new Map<string, string[]>();
  for (const { event, id } of arrived) events.set(event, [...(events.get(event) ?? []), id]);
  expect([...events.keys()].sort()).toEqual([...PLACES.keys(), PLACES.length].map(String).sort());
  for (const [event, ids] of events) {
    const inside = ['MAIL', 'RCPT', 'DATA', 'answered'].includes(PLACES[Number(event)] ?? '');
    expect(ids.length).toBeLessThanOrEqual(inside ? 2 : 1);
    expect(new Set(ids).size).toBe(1);
  }
  // Killed once the server had it and before it could say so, the message had to come again, with the same Message-ID.
  expect(events.get(String(PLACES.indexOf('DATA')))).toHaveLength(2);
});
