import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { beforeAll, expect, test } from 'vitest';
import { openOwnGroup } from '../../src/group/index.js';
import { Recipients } from '../../src/messages/index.js';
import { Child } from '../store/children.js';
import { temporaryFolder } from '../store/temporary.js';
import { life } from './life.js';
import { person } from './river.js';
import { mailOf, mailSink } from './sink.js';

/**
 * Lives of the process that are ended at a moment drawn from the seed, and for how long lives are begun (ms): a slow
 * machine has fewer, not below the least.
 */
const KILLS = 24;
const LEAST = 8;
const WHILE = 16_000;
/** A moment is a number of steps (what the process says, what the mail server sees) and a little time after the last. */
const STEPS = 14;
const AFTER = 20;
const SEED = 20_261_127;

/**
 * What a service does in a life: takes up what was being sent, is told of an event, writes what is due, sends, and again.
 * Says which events stand (their transaction is committed) on a line each.
 */
const code = (folder: string, port: number, number: number, events: number) =>
  life(
    folder,
    port,
    `
  console.log('open');
  await outbox.resume(Date.now());
  for (let i = 0; i < ${events}; i++) {
    const event = 'event${number}x' + i + 'y';
    await messages.tell('feed', event, [{ key: event, news: { kind: 'feed-silent', feed: event, since: 0, hours: 50 } }],
      Date.now());
    console.log('told ' + event);
    await messages.compose(20000, Date.now());
    console.log('composed');
    await post.round(Date.now(), new AbortController().signal);
  }
  await messages.compose(20000, Date.now());
  await post.round(Date.now(), new AbortController().signal);
  console.log('done');
`,
  );

let folder = '';
beforeAll(async () => {
  folder = temporaryFolder();
  const group = await openOwnGroup(folder);
  new Recipients(folder).add(person('Ann'));
  await group.close();
});

test(`up to ${KILLS} kills at moments drawn from a seed: no message lost, none twice but with the same Message-ID`, async () => {
  const moments = xoroshiro128plus(SEED);
  const draw = () => uniformInt(moments, 0, 1_000_000) / 1_000_001;
  const mails: { events: readonly string[]; id: string }[] = [];
  let step: () => void = () => undefined;
  const sink = await mailSink({
    onMailFrom: (_, __, callback) => {
      step();
      setTimeout(callback, 12 * draw());
    },
    onData: (stream, _, callback) => {
      let raw = '';
      stream.on('data', (chunk: Buffer) => (raw += chunk.toString('utf8')));
      stream.on('end', () => {
        const events = new Set(raw.replaceAll('=\r\n', '').match(/event\d+x\d+y/g));
        mails.push({ events: [...events], id: mailOf(raw, [], false).header('Message-ID') ?? '' });
        step();
        setTimeout(() => callback(null, 'kept'), 25 * draw());
      });
    },
  });
  const told = new Set<string>();
  const note = (child: Child) => {
    for (const line of child.lines) if (line.startsWith('told ')) told.add(line.slice(5));
  };
  const begun = Date.now();
  let lives = 0;
  for (; lives < KILLS && (lives < LEAST || Date.now() - begun < WHILE); lives++) {
    const child = new Child(code(folder, sink.port, lives, 6));
    await child.line('open');
    const most = 1 + Math.floor(STEPS * draw());
    await new Promise<void>((resolve) => {
      let seen = 0;
      step = () => {
        if (++seen >= most) resolve();
      };
      child.heard = step;
      child.exited.then(() => resolve());
    });
    step = () => undefined;
    await new Promise((resolve) => setTimeout(resolve, AFTER * draw()));
    process.kill(child.pid, 'SIGKILL');
    await child.exited;
    note(child);
  }
  const last = new Child(code(folder, sink.port, lives, 1));
  await last.line('done');
  await last.exited;
  note(last);
  const idsOf = (event: string) =>
    new Set(mails.filter(({ events }) => events.includes(event)).map(({ id }) => id));
  // What was told stands, and came: none lost, none in two messages.
  expect(told.size).toBeGreaterThan(lives / 2);
  expect([...told].filter((event) => idsOf(event).size !== 1)).toEqual([]);
  // Killed before it could say so, an event may stand or not: then it came once as well, or never.
  const seen = new Set(mails.flatMap(({ events }) => events));
  expect([...seen].filter((event) => idsOf(event).size !== 1)).toEqual([]);
  // A kill inside the conversation may send that message again, and no other.
  const again = mails.length - new Set(mails.map(({ id }) => id)).size;
  expect(again).toBeLessThanOrEqual(lives);
  // The moments fell on both sides of deliveries, or nothing was tried.
  expect(mails.length).toBeGreaterThan(lives / 2);
}, 120_000);
