import { pino } from 'pino';
import { expect, test } from 'vitest';
import { sampleWinterDay } from '../../src/group/sample-season.js';
import { serve } from '../../src/http/serve.js';
import { Accounts } from '../../src/http/sign-in/accounts.js';
import { letterSchema, Recipients } from '../../src/messages/index.js';
import { LetterText } from '../../src/pages/messages/letter-text.js';
import { speech } from '../../src/pages/speech.js';
import { readSettings } from '../../src/settings/index.js';
import { mailSink } from '../messages/sink.js';
import { ask, json, sampleFolder, service, signIn, threeAccounts, visitor } from './service.js';

/** Asks again until it is so, at most some seconds. */
async function until(so: () => Promise<boolean> | boolean): Promise<void> {
  for (let tries = 0; tries < 300; tries++) {
    if (await so()) return;
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error('it did not come about');
}

test('a person is written down, a test message arrives, its link says who has seen it, one press unsubscribes', async () => {
  const sink = await mailSink();
  const folder = await sampleFolder();
  await threeAccounts(folder);
  const { address } = await service(folder, {
    smtpHost: '127.0.0.1',
    smtpPort: String(sink.port),
    smtpSecurity: 'none',
    smtpFrom: 'underice@example.org',
  });
  const coordinator = visitor(address, folder, await signIn(address, folder, 'Coral'));
  const reader = visitor(address, folder, await signIn(address, folder, 'Reade'));
  const stated = {
    name: 'Ann',
    language: 'fr',
    email: 'ann@example.org',
    weekly: '1',
    quietFrom: '21:00',
    quietTo: '07:00',
  };
  expect((await reader.post('/messages/people', stated)).status).toBe(403);
  const refused = await coordinator.post('/messages/people', {
    ...stated,
    email: 'ann@example.org\r\nBcc: x@y',
  });
  expect(refused.status).toBe(422);
  expect(refused.text).toContain('That is no e-mail address.');
  expect((await coordinator.post('/messages/people', stated)).status).toBe(303);
  expect((await coordinator.get('/messages')).text).toContain('ann@example.org');
  // Addresses are nobody's but the coordinator's.
  expect((await reader.get('/messages')).text).not.toContain('ann@example.org');
  expect((await reader.get('/api/v1/people')).status).toBe(403);
  const [ann] = new Recipients(folder).list();
  expect((await coordinator.post(`/messages/people/${ann?.id}/test`, {})).status).toBe(303);
  await until(() => sink.mails.length === 1);
  expect(sink.mails[0]?.to).toEqual(['ann@example.org']);
  await until(async () => (await coordinator.get('/messages')).text.includes('delivered'));
  // The page's figures as other programs take them: the same rows as JSON and as CSV.
  expect((await reader.get('/messages')).text).toContain('href="/api/v1/messages.csv"');
  const [head = '', row = ''] = (await reader.get('/api/v1/messages.csv')).text.trim().split(/\r?\n/);
  const { deliveries } = (await reader.get('/api/v1/messages')).body;
  expect(deliveries).toMatchObject([{ to: 'Ann', by: 'email', state: 'delivered', tries: 1 }]);
  expect(head.replace('\uFEFF', '').split(',')).toEqual(Object.keys(Object(deliveries)[0]));
  expect(row).toMatch(/^Ann,.*,delivered,/);
  const raw = (sink.mails[0]?.raw ?? '').replace(/=\r\n/g, '');
  const link = /\/letters\/([\w-]+)/.exec(raw)?.[1] ?? '';
  // A program that only looks at the link acknowledges nothing, and needs no sign-in.
  const seen = visitor(address, folder);
  expect((await seen.get(`/letters/${link}`)).text).toContain('J’en ai pris connaissance');
  expect((await reader.get('/messages')).text).not.toContain('Seen by');
  expect((await seen.post(`/letters/${link}`, {})).text).toContain('Ann a pris connaissance');
  expect((await reader.get('/messages')).text).toContain('Seen by Ann');
  expect((await ask(address, `/letters/${link.slice(1)}x`)).status).toBe(404);
  const leave = /\/unsubscribe\/([\w-]+)/.exec(sink.mails[0]?.header('List-Unsubscribe') ?? '')?.[1] ?? '';
  await ask(address, `/unsubscribe/${leave}`);
  expect(new Recipients(folder).active()).toHaveLength(1);
  // RFC 8058, section 3.2: the mail program posts List-Unsubscribe=One-Click, without cookies.
  const form = { 'Content-Type': 'application/x-www-form-urlencoded' };
  const left = await ask(address, `/unsubscribe/${leave}`, {
    method: 'POST',
    body: 'List-Unsubscribe=One-Click',
    headers: form,
  });
  expect(left.status).toBe(200);
  expect(new Recipients(folder).active()).toHaveLength(0);
});

test('a station sends its readings with a token of the crew; the feed stands in the list', async () => {
  const folder = await sampleFolder();
  await threeAccounts(folder);
  const accounts = new Accounts(folder, 30);
  const ends = Date.now() + 86_400_000;
  const [crew, looks] = [
    await accounts.addToken('weir', 'crew', ends, 'x'),
    await accounts.addToken('r', 'reader', ends, 'x'),
  ];
  const { address } = await service(folder, {}, null);
  const bearer = ({ token }: { token: string }) => ({ Authorization: `Bearer ${token}` });
  const body = {
    station: 'weir',
    readings: [1, 2, 3].map((hour) => ({ at: `2026-11-20T0${hour}:00:00Z`, celsius: 0.1 * hour })),
  };
  expect((await ask(address, '/api/v1/readings', json('POST', body))).status).toBe(401);
  expect((await ask(address, '/api/v1/readings', json('POST', body, bearer(looks)))).status).toBe(403);
  const sent = await ask(address, '/api/v1/readings', json('POST', body, bearer(crew)));
  expect(sent).toMatchObject({ status: 200, body: { station: 'weir', fresh: 3 } });
  const again = await ask(address, '/api/v1/readings', json('POST', body, bearer(crew)));
  expect(again).toMatchObject({ status: 200, body: { fresh: 0 } });
  const nowhere = await ask(
    address,
    '/api/v1/readings',
    json('POST', { ...body, station: 'x' }, bearer(crew)),
  );
  expect(nowhere.status).toBe(422);
  const bad = { station: 'weir', readings: [{ at: 'yesterday', celsius: 1 }] };
  expect((await ask(address, '/api/v1/readings', json('POST', bad, bearer(crew)))).status).toBe(422);
  const feeds = await ask(address, '/api/v1/feeds', { headers: bearer(looks) });
  expect(feeds.body).toMatchObject({ feeds: [{ feed: 'push weir', state: 'fresh' }] });
});

test('a name that ends with an address is no link where its message is read', () => {
  const letter = letterSchema.parse({
    language: 'en',
    subject: 'x',
    text: 'Weir: https://elsewhere.example/\n\nFord: http://[\n\nOpen the season: https://eggs.example.org/\n',
    html: '',
    chart: null,
    chartTitle: '',
    messageId: 'x',
    news: [],
    link: 'https://eggs.example.org/letters/1',
    unsubscribe: '',
  });
  const view = { ...speech('en'), here: '/', csrf: '', nonce: '', today: 0, group: '', person: '' };
  const rest = { role: 'reader', open: false, stillChecking: false } as const;
  const page = String(LetterText({ view: { ...view, ...rest }, letter, chart: '' }));
  expect(page).toContain('<a href="https://eggs.example.org/">Open the season</a>');
  expect(page).not.toContain('href="https://elsewhere');
  expect(page).toContain('Ford: http://[');
});

test('in the demonstration a real spell’s message can be read as it would arrive, and nothing leaves', async () => {
  const folder = await sampleFolder();
  const { settings } = readSettings({ folder, file: null, env: {}, flags: { port: '0' } });
  const serving = await serve(folder, settings, {
    standingAt: sampleWinterDay,
    log: pino({ level: 'silent' }),
    mailbox: true,
  });
  try {
    const page = async () => (await ask(serving.address, '/messages/mailbox')).text;
    await until(async () => (await page()).includes('lethal spell'));
    const box = await page();
    expect(box).toContain('Nothing here left this computer');
    const letter = /\/letters\/([\w-]+)\/mail/.exec(box.slice(box.indexOf('lethal spell')))?.[1] ?? '';
    const mail = await ask(serving.address, `/letters/${letter}/mail`);
    expect(mail.text).toContain('lethal spell');
    expect(mail.text).toContain('Never cross ice');
    const chart = await fetch(`${serving.address}/letters/${letter}/chart.png`);
    expect(chart.headers.get('Content-Type')).toBe('image/png');
    // The signature of PNG (W3C PNG specification, section 5.2).
    expect([...new Uint8Array(await chart.arrayBuffer()).subarray(1, 4)]).toEqual([80, 78, 71]);
    // The same read in a browser: headings, the chart, and no link but to this service.
    const read = (await ask(serving.address, `/letters/${letter}`)).text;
    expect(read).toMatch(/<h2>[^<]*lethal spell/);
    expect(read).toContain(`src="/letters/${letter}/chart.png"`);
    expect(read.match(/href="https?:[^"]*"/g)?.every((link) => link.includes(serving.address))).toBe(true);
    expect(read.match(/Never cross ice/g)).toHaveLength(1);
  } finally {
    await serving.close();
  }
  const plain = await service(folder);
  expect((await ask(plain.address, '/messages/mailbox')).status).toBe(404);
});
