import { expect, test } from 'vitest';
import { Feeds } from '../../src/feeds/index.js';
import { Round } from '../../src/messages/index.js';
import { feedSchema } from '../../src/settings/schema.js';
import { MORNING, person, type River, river, spell, TODAY } from './river.js';
import { mailSink, webServer } from './sink.js';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;

function download(from: number, hours: number): string {
  const rows = Array.from({ length: hours }, (_, i) => `${new Date(from + i * HOUR).toISOString()},0.1`);
  return `Time (UTC),Temperature (°C)\n${rows.join('\n')}\n`;
}

/** The service's own round over a river and one feed. */
function roundOf({ group, messages, post }: River, url: string, failed: (error: unknown) => void): Round {
  const feeds = new Feeds({
    group,
    book: group.outbox,
    feeds: [feedSchema.parse({ id: 'weir', url, station: 'pool' })],
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
    now: () => MORNING,
    first: (at) => group.outbox.resume(at),
    failed,
  });
}

async function until(so: () => boolean): Promise<void> {
  for (let tries = 0; tries < 200 && !so(); tries++) await new Promise((resolve) => setTimeout(resolve, 50));
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
  expect(sink.mails[0]?.header('Subject')).toMatch(/and 3 more$/);
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
