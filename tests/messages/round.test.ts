import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { Feeds } from '../../src/feeds/index.js';
import { Round } from '../../src/messages/index.js';
import { feedSchema } from '../../src/settings/schema.js';
import { temporaryFolder } from '../store/temporary.js';
import { MORNING, person, type River, river, spell, TODAY } from './river.js';
import { mailSink, webServer } from './sink.js';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;

function download(from: number, hours: number): string {
  const rows = Array.from({ length: hours }, (_, i) => `${new Date(from + i * HOUR).toISOString()},0.1`);
  return `Time (UTC),Temperature (°C)\n${rows.join('\n')}\n`;
}

/** The service's own round over a river and its feeds. */
function roundOf(
  { group, messages, post }: River,
  url: string,
  failed: (error: unknown) => void,
  others: readonly unknown[] = [],
  now = () => MORNING,
): Round {
  const feeds = new Feeds({
    group,
    book: group.outbox,
    feeds: [{ id: 'weir', url, station: 'pool' }, ...others].map((one) => feedSchema.parse(one)),
    named: ['127.0.0.1'],
    megabytes: 5,
    tell: (source, mark, news, at) => messages.tell(source, mark, news, at),
    failed: (_, error) => failed(error),
  });
  return new Round({
    messages,
    post,
    feeds,
    revision: () => group.revision,
    today: async () => TODAY,
    now,
    first: (at) => group.outbox.resume(at),
    failed,
    rest: 300,
    every: 200,
  });
}

async function until(so: () => boolean): Promise<void> {
  for (let tries = 0; tries < 400 && !so(); tries++) await new Promise((resolve) => setTimeout(resolve, 50));
  expect(so()).toBe(true);
}

test('after weeks out of service: what was missed is fetched, judged once, and told in one message', async () => {
  const sink = await mailSink();
  const made = await river({ mail: { port: sink.port } });
  let body = download(MORNING - 60 * DAY, 24);
  const { url } = await webServer((_, response) => void response.end(body));
  const errors: unknown[] = [];
  const before = roundOf(made, url, (error) => errors.push(error));
  before.start();
  await until(() => made.group.revision > 1);
  await before.stop();
  made.recipients.add(person('Ann'));
  body = download(MORNING - 30 * DAY, 100);
  for (const number of [1, 2, 3])
    made.happened.push({ number, change: 'past', spell: spell({ id: `s${number}` }) });
  const after = roundOf(made, url, (error) => errors.push(error));
  after.start();
  await until(() => sink.mails.length > 0);
  after.wake();
  await after.stop();
  expect(errors).toEqual([]);
  expect(sink.mails).toHaveLength(1);
  expect(sink.mails[0]?.header('Subject')).toMatch(/\(and 3 more items\)$/);
  expect(sink.mails[0]?.raw.replace(/=\r\n/g, '')).toContain('Readings of pool are missing for good');
});

test('told to end while a mail server keeps it waiting, it ends, and the message waits', async () => {
  let asked = false;
  const sink = await mailSink({
    onMailFrom: () => {
      asked = true;
    },
  });
  const made = await river({ mail: { port: sink.port, seconds: 1 } });
  made.recipients.add(person('Ann'));
  made.happened.push({ number: 1, change: 'opened', spell: spell() });
  const errors: unknown[] = [];
  const { url } = await webServer((_, response) => void response.writeHead(304).end());
  const round = roundOf(made, url, (error) => errors.push(error));
  round.start();
  await until(() => asked);
  await round.stop();
  expect(errors).toEqual([]);
  expect(await made.list()).toMatchObject([{ state: 'waiting', tries: 1 }]);
});

test('a lethal spell leaves as a message soon after its download, though nobody asks a page and another feed hangs', async () => {
  const sink = await mailSink();
  const made = await river({ mail: { port: sink.port }, judged: true });
  made.recipients.add(person('Ann'));
  /** Water of 5 °C since planting; from some hour on it rises to 19 °C. */
  const water = (hours: number, warm: number) => {
    const first = Date.parse('2025-11-05T00:00Z');
    const rows = Array.from({ length: hours }, (_, i) => {
      const celsius = 5 + Math.min(14, Math.max(0, i - warm)) + Math.sin(i / 4) / 5;
      return `${new Date(first + i * HOUR).toISOString()},${celsius.toFixed(2)}`;
    });
    return `Time (UTC),Temperature (°C)\n${rows.join('\n')}\n`;
  };
  let body = water(60 * 24, 1e6);
  let asked = 0;
  const { url } = await webServer((request, response) => {
    if (request.url === '/weir') return void response.end(body);
    // Answers the first time, and then not for as long as the test lasts.
    if (asked++ === 0) response.writeHead(304).end();
  });
  const errors: unknown[] = [];
  const other = { id: 'slow', url: `${url}/slow`, station: 'pool', everyMinutes: 1 };
  let now = MORNING;
  const round = roundOf(
    made,
    `${url}/weir`,
    (error) => errors.push(error),
    [other],
    () => now,
  );
  round.start();
  for (let judged = false; !judged; judged = (await made.group.outbox.mark('spells')) !== null)
    await new Promise((resolve) => setTimeout(resolve, 50));
  now += 2 * 60_000;
  round.wake();
  await until(() => asked === 2);
  body = water(66 * 24, 62 * 24);
  const path = join(temporaryFolder(), 'pool.csv');
  writeFileSync(path, body);
  await made.group.load({
    files: [{ path }],
    asked: { station: 'pool' },
    createStations: false,
    dryRun: false,
    who: 'Ann',
    progress: null,
  });
  await until(() => sink.mails.length > 0);
  await round.stop();
  expect(errors).toEqual([]);
  expect(sink.mails).toHaveLength(1);
  expect(sink.mails[0]?.header('Subject')).toMatch(/warm/i);
});
