import { describe, expect, test } from 'vitest';
import { MINUTE, MORNING, person, river, spell } from './river.js';
import { certificate, mailSink } from './sink.js';

const opened = (number: number, given = {}) => ({ number, change: 'opened' as const, spell: spell(given) });

describe('one event, one message', () => {
  test('plain text and HTML with numbers, what it means, cautions, a link that acknowledges; one for each person', async () => {
    const sink = await mailSink();
    const { recipients, happened, round, list } = await river({ mail: { port: sink.port } });
    recipients.add(person('Ann'));
    recipients.add(person('Luc', { language: 'fr' }));
    happened.push(opened(1, { boxes: ['B1', 'B2', 'B3'] }));
    await round();
    await round(MORNING + MINUTE);
    const [ann, luc] = [...sink.mails].sort((a, b) => (a.to < b.to ? -1 : 1));
    expect(sink.mails).toHaveLength(2);
    expect([ann?.to, luc?.to]).toEqual([['ann@example.org'], ['luc@example.org']]);
    expect(ann?.header('Subject')).toBe(
      'Tallowmere Brook Keepers: Lethal spell: freezing, boxes B1, B2 and B3',
    );
    expect(ann?.header('Message-ID')).toMatch(/^<[0-9a-f]{40}@eggs\.example\.org>$/);
    expect(ann?.header('List-Unsubscribe')).toMatch(
      /^<https:\/\/eggs\.example\.org\/unsubscribe\/[\w-]{32}>$/,
    );
    expect(ann?.header('List-Unsubscribe-Post')).toBe('List-Unsubscribe=One-Click');
    const text = readable(ann?.raw ?? '');
    for (const part of [
      'hours: 24',
      '18.2 degree-hours',
      '−1.3',
      'eggs exposed: 1,000',
      'What it means',
      'What one might do',
      'Never cross ice',
      'https://eggs.example.org/letters/',
    ])
      expect(text).toContain(part);
    expect(text).toContain('<h2');
    expect(readable(luc?.raw ?? '')).toContain('Ne traversez jamais la glace');
    expect(await list()).toMatchObject([
      { to: 'Luc', state: 'delivered', tries: 1, answer: expect.stringContaining('kept as 4711') },
      { to: 'Ann', state: 'delivered', tries: 1 },
    ]);
  });

  test('500 spells opening at once give each person one message', async () => {
    const sink = await mailSink();
    const { recipients, happened, round } = await river({ mail: { port: sink.port } });
    for (const name of ['Ann', 'Bea', 'Cyr']) recipients.add(person(name));
    for (let i = 1; i <= 500; i++) happened.push(opened(i, { id: `spell-${i}`, boxes: [`X${i}`] }));
    await round();
    await round(MORNING + MINUTE);
    expect(sink.mails.map(({ to }) => to[0]).sort()).toEqual([
      'ann@example.org',
      'bea@example.org',
      'cyr@example.org',
    ]);
    expect(sink.mails[0]?.header('Subject')).toMatch(/\(and 499 more items\)$/);
    expect(readable(sink.mails[0]?.raw ?? '')).toContain('And 488 more of the same');
  });

  test('a name with line breaks in it begins no header', async () => {
    const sink = await mailSink();
    const { recipients, happened, round } = await river({ mail: { port: sink.port } });
    recipients.add(person('Ann'));
    happened.push(
      opened(1, { boxes: ['B1\r\nBcc: everybody@example.org\r\n\r\n<script>alert(1)</script>'] }),
    );
    await round();
    const [mail] = sink.mails;
    expect(mail?.to).toEqual(['ann@example.org']);
    expect(mail?.header('Bcc')).toBeNull();
    expect(mail?.header('Subject')).toContain('B1 Bcc: everybody@example.org');
    expect(readable(mail?.raw ?? '').split('<!doctype html>')[1]).not.toContain('<script>');
    for (const name of ['Eve\r\nBcc: x@example.org', '\u202eEve'])
      expect(() => recipients.add(person(name))).toThrow('messages-bad-person');
    for (const email of ['a@b, c@d', 'a@b\r\nBcc: c@d', '<a@b>', 'a b@c'])
      expect(() => recipients.add(person('Eve', { email }))).toThrow('messages-bad-person');
  });

  test('a person with no address stands in the list as such', async () => {
    const { recipients, happened, round, list } = await river();
    recipients.add(person('Ann', { email: null }));
    happened.push(opened(1));
    await round();
    expect(await list()).toMatchObject([
      {
        to: 'Ann',
        state: 'no-address',
        tries: 0,
        answer: expect.stringContaining('neither an e-mail address nor a webhook'),
      },
    ]);
  });

  test('who has unsubscribed gets nothing, not even what waits', async () => {
    const sink = await mailSink({
      onRcptTo: (_, __, callback) => callback(Object.assign(new Error('later'), { responseCode: 451 })),
    });
    const { recipients, happened, round, list, group } = await river({ mail: { port: sink.port } });
    const ann = recipients.add(person('Ann'));
    happened.push(opened(1));
    await round();
    recipients.unsubscribe(ann.id, MORNING);
    await group.outbox.leave(ann.id, MORNING);
    happened.push(opened(2));
    await round(MORNING + 60 * MINUTE);
    expect(await list()).toMatchObject([{ state: 'unsubscribed', tries: 1 }]);
    expect(sink.mails).toEqual([]);
  });
});

describe('a mail server that', () => {
  const refusing = (code: number, message: string) => ({
    onRcptTo: (_: unknown, __: unknown, callback: (error?: Error) => void) =>
      callback(Object.assign(new Error(message), { responseCode: code })),
  });

  test('is not there: tried again with growing pauses, then given up', async () => {
    const { recipients, happened, round, list } = await river({ mail: { port: 1 }, hours: 1 });
    recipients.add(person('Ann'));
    happened.push(opened(1));
    await round();
    expect(await list()).toMatchObject([
      { state: 'waiting', tries: 1, next: MORNING + MINUTE, answer: expect.stringContaining('ECONNREFUSED') },
    ]);
    await round(MORNING + MINUTE - 1);
    expect(await list()).toMatchObject([{ tries: 1 }]);
    let at = MORNING;
    for (let tries = 2; tries <= 5; tries++) {
      at += MINUTE * 2 ** (tries - 2);
      await round(at);
      expect(await list()).toMatchObject([{ state: 'waiting', tries }]);
    }
    await round(at + 16 * MINUTE);
    expect(await list()).toMatchObject([{ state: 'given-up', tries: 6 }]);
  });

  test('refuses: the list says so and nothing is tried again', async () => {
    const sink = await mailSink(refusing(550, 'no such mailbox'));
    const { recipients, happened, round, list } = await river({ mail: { port: sink.port } });
    recipients.add(person('Ann'));
    happened.push(opened(1));
    await round();
    await round(MORNING + 600 * MINUTE);
    expect(await list()).toMatchObject([
      { state: 'failed', tries: 1, answer: expect.stringMatching(/for good: 550 no such mailbox/) },
    ]);
  });

  test('greylists (451): tried again, with the same Message-ID, and delivered', async () => {
    let times = 0;
    const sink = await mailSink({
      onRcptTo: (_, __, callback) =>
        times++ === 0 ? callback(Object.assign(new Error('greylisted'), { responseCode: 451 })) : callback(),
    });
    const { recipients, happened, round, list } = await river({ mail: { port: sink.port } });
    recipients.add(person('Ann'));
    happened.push(opened(1));
    await round();
    expect(await list()).toMatchObject([
      { state: 'waiting', tries: 1, answer: expect.stringMatching(/“later”: 451 greylisted/) },
    ]);
    await round(MORNING + MINUTE);
    expect(await list()).toMatchObject([{ state: 'delivered', tries: 2 }]);
    expect(sink.mails).toHaveLength(1);
  });

  test('hangs: given up after the stated seconds, and waits', async () => {
    const sink = await mailSink({ onMailFrom: () => undefined });
    const { recipients, happened, round, list } = await river({ mail: { port: sink.port, seconds: 0.3 } });
    recipients.add(person('Ann'));
    happened.push(opened(1));
    await round();
    expect(await list()).toMatchObject([
      { state: 'waiting', tries: 1, answer: '127.0.0.1 did not answer in time.' },
    ]);
  });

  test.each(['starttls', 'tls'] as const)(
    'has a bad certificate (%s): nothing is sent; a trusted one is',
    async (security) => {
      const own = certificate();
      const sink = await mailSink({ ...own, secure: security === 'tls' });
      const strange = await river({ mail: { port: sink.port, security } });
      strange.recipients.add(person('Ann'));
      strange.happened.push(opened(1));
      await strange.round();
      expect(await strange.list()).toMatchObject([
        {
          state: 'waiting',
          answer: expect.stringContaining('certificate of 127.0.0.1 is not to be trusted'),
        },
      ]);
      expect(sink.mails).toEqual([]);
      const trusted = await river({ mail: { port: sink.port, security, ca: own.cert } });
      trusted.recipients.add(person('Ann'));
      trusted.happened.push(opened(1));
      await trusted.round();
      expect(await trusted.list()).toMatchObject([{ state: 'delivered' }]);
      expect(sink.mails.map(({ secure }) => secure)).toEqual([true]);
    },
  );

  test('offers no encryption: nothing is sent in the open', async () => {
    const sink = await mailSink();
    const { recipients, happened, round, list } = await river({
      mail: { port: sink.port, security: 'starttls' },
    });
    recipients.add(person('Ann'));
    happened.push(opened(1));
    await round();
    expect(await list()).toMatchObject([
      { state: 'waiting', answer: expect.stringContaining('offers no encryption') },
    ]);
    expect(sink.mails).toEqual([]);
  });

  test('does not take the password: tried again, for the settings may be mended', async () => {
    const sink = await mailSink({
      onAuth: (_, __, callback) => callback(new Error('bad password')),
      allowInsecureAuth: true,
    });
    const { recipients, happened, round, list } = await river({
      mail: { port: sink.port, user: 'underice', password: 'x' },
    });
    recipients.add(person('Ann'));
    happened.push(opened(1));
    await round();
    expect(await list()).toMatchObject([
      { state: 'waiting', answer: expect.stringContaining('does not take our name and password') },
    ]);
  });

  test('nobody has named: it waits and says so', async () => {
    const { recipients, happened, round, list } = await river({ mail: null });
    recipients.add(person('Ann'));
    happened.push(opened(1));
    await round();
    expect(await list()).toMatchObject([
      { state: 'waiting', tries: 0, answer: expect.stringContaining('smtpHost') },
    ]);
  });
});

/** The parts of a mail as a mail program reads them. */
function readable(raw: string): string {
  return raw
    .split(/\r\n--[^\r\n]+/)
    .map((part) => {
      const [head = '', ...rest] = part.split('\r\n\r\n');
      const body = rest.join('\r\n\r\n');
      if (/base64/i.test(head)) return Buffer.from(body, 'base64').toString('utf8');
      if (!/quoted-printable/i.test(head)) return body;
      const bytes = body
        .replace(/=\r\n/g, '')
        .replace(/=([0-9A-F]{2})/g, (_, hex: string) => String.fromCharCode(Number.parseInt(hex, 16)));
      return Buffer.from(bytes, 'latin1').toString('utf8');
    })
    .join('\n');
}
