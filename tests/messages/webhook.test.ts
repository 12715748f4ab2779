import { createHmac } from 'node:crypto';
import { describe, expect, test } from 'vitest';
import { mayAsk } from '../../src/network/index.js';
import { MINUTE, MORNING, person, river, spell } from './river.js';
import { webServer } from './sink.js';

const opened = { number: 1, change: 'opened' as const, spell: spell() };
const LOOPBACK = ['127.0.0.1'];

/** A group with one person whose webhook is at `url`, and a spell that just opened. */
async function hooked(url: string, options = {}) {
  const made = await river({ mail: null, named: LOOPBACK, ...options });
  const ann = made.recipients.add(person('Ann', { email: null, webhook: url }));
  made.happened.push(opened);
  return { ...made, ann };
}

describe('a webhook', () => {
  test('gets JSON with a timestamp, signed over both; the same message when it is sent again', async () => {
    const got: { headers: Record<string, unknown>; body: string }[] = [];
    const { url } = await webServer((request, response) => {
      let body = '';
      request.on('data', (chunk: Buffer) => (body += chunk.toString('utf8')));
      request.on('end', () => {
        got.push({ headers: request.headers, body });
        response.statusCode = got.length === 1 ? 500 : 204;
        response.end();
      });
    });
    const { ann, round, list } = await hooked(`${url}/hook`);
    await round();
    expect(await list()).toMatchObject([
      { state: 'waiting', tries: 1, answer: expect.stringMatching(/answered 500/) },
    ]);
    await round(MORNING + MINUTE);
    expect(await list()).toMatchObject([{ state: 'delivered', tries: 2, answer: 'Accepted: 204' }]);
    expect(got).toHaveLength(2);
    const [first, second] = got;
    expect(first?.headers['underice-message']).toBe(second?.headers['underice-message']);
    // Worked out here by the definition of HMAC-SHA256 over "timestamp.body" (node:crypto).
    const timestamp = String(first?.headers['underice-timestamp']);
    expect(timestamp).toMatch(/^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\dZ$/);
    const expected = createHmac('sha256', ann.secret)
      .update(`${timestamp}.${first?.body ?? ''}`)
      .digest('hex');
    expect(first?.headers['underice-signature']).toBe(`sha256=${expected}`);
    expect(JSON.parse(first?.body ?? '')).toMatchObject({
      group: 'Tallowmere Brook Keepers',
      language: 'en',
      news: [{ kind: 'spell', change: 'opened', spell: { id: 'pool-freezing-1', boxes: ['B1'], hours: 24 } }],
    });
  });

  test('that answers 500 for a day is tried with growing pauses and reached in the end', async () => {
    let asked = 0;
    let well = false;
    const { url } = await webServer((_, response) => {
      asked++;
      response.statusCode = well ? 200 : 500;
      response.end();
    });
    const { round, list } = await hooked(url);
    for (let minutes = 0; minutes < 24 * 60; minutes += 30) await round(MORNING + minutes * MINUTE);
    // 1, 2, 4 … 240 minutes after each other, looked at every half hour: no more than a dozen in a day.
    expect(asked).toBeGreaterThan(6);
    expect(asked).toBeLessThan(15);
    well = true;
    await round(MORNING + 30 * 60 * MINUTE);
    expect(await list()).toMatchObject([{ state: 'delivered' }]);
  });

  test('that answers with a gigabyte is cut short, not waited for', async () => {
    let sent = 0;
    const { url } = await webServer((_, response) => {
      const chunk = Buffer.alloc(65_536);
      const more = () => {
        while (sent < 1e9 && !response.destroyed) {
          sent += chunk.length;
          if (!response.write(chunk)) return void response.once('drain', more);
        }
        response.end();
      };
      more();
    });
    const { round, list } = await hooked(url);
    await round();
    expect(await list()).toMatchObject([{ state: 'delivered', answer: 'Accepted: 200' }]);
    expect(sent).toBeLessThan(50e6);
  });

  test('that never answers is given up after its seconds', async () => {
    const { url } = await webServer(() => undefined);
    const { round, list } = await hooked(url, { hookSeconds: 0.2 });
    await round();
    expect(await list()).toMatchObject([
      { state: 'waiting', answer: expect.stringContaining('did not answer within') },
    ]);
  });

  test.each([
    'http://127.0.0.2/in',
    'http://localhost:9/in',
    'http://169.254.169.254/latest',
    'http://[::1]/in',
    '/relative-but-elsewhere//x:y',
  ])('that redirects to %s: not followed', async (to) => {
    let asked = 0;
    const { url } = await webServer((_, response) => {
      asked++;
      response.writeHead(307, { Location: to }).end();
    });
    const { round, list } = await hooked(url);
    await round();
    const answer = to.startsWith('/') ? /not followed/ : /in this machine or the network around it: refused/;
    expect(await list()).toMatchObject([{ state: 'waiting', answer: expect.stringMatching(answer) }]);
    expect(asked).toBe(1);
  });

  test.each([
    'http://127.0.0.1:9/',
    'http://[::ffff:127.0.0.1]:9/',
    'http://localhost:9/',
    'http://10.0.0.7/',
    'http://[fe80::1]/',
  ])('at %s is refused unless the settings name it', async (url) => {
    const { round, list } = await hooked(url, { named: [] });
    await round();
    expect(await list()).toMatchObject([
      {
        state: 'waiting',
        answer: expect.stringMatching(/lies in this machine or the network around it: refused/),
      },
    ]);
  });

  test('has to be an http or https address without a password', async () => {
    const { recipients } = await river();
    for (const webhook of [
      'ftp://example.org/',
      'file:///etc/passwd',
      'https://a:b@example.org/',
      'example.org',
    ])
      expect(() => recipients.add(person('Eve', { webhook }))).toThrow('messages-bad-person');
  });
});

test('which addresses lie outside (IANA special-purpose registries)', () => {
  const inside = [
    '127.0.0.1',
    '10.1.2.3',
    '172.16.0.1',
    '192.168.0.1',
    '169.254.1.1',
    '100.64.0.1',
    '0.0.0.0',
    '224.0.0.1',
    '::1',
    '::',
    'fe80::1',
    'fc00::1',
    '::ffff:10.0.0.1',
    '64:ff9b::7f00:1',
  ];
  expect(inside.filter((address) => mayAsk(address, address, []))).toEqual([]);
  const outside = ['8.8.8.8', '172.32.0.1', '2606:4700::1111'];
  expect(outside.filter((address) => !mayAsk(address, address, []))).toEqual([]);
  expect(mayAsk('10.1.2.3', 'weather.lan', ['10.1.0.0/16'])).toBe(true);
  expect(mayAsk('10.2.2.3', 'weather.lan', ['10.1.0.0/16'])).toBe(false);
  expect(mayAsk('10.2.2.3', 'weather.lan', ['weather.lan'])).toBe(true);
});
