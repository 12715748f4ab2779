import ICAL from 'ical.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { underice } from '../cli/terminal.js';
import { ask, json, sampleFolder, send, service, signIn, threeAccounts, visitor } from './service.js';

/* The service stands in June: the plan, the sheets, a check that moves it, tallies that arrive once. */
const JUNE = Date.parse('2026-06-01T00:00Z') / 86_400_000;
let at = '';
let folder = '';
beforeAll(async () => {
  folder = await sampleFolder();
  at = (await service(folder, {}, JUNE)).address;
}, 60_000);

const dates = (body: Record<string, unknown>): string[] =>
  Array.isArray(body.recommended) ? body.recommended.map(String) : [];

describe('the lifting plan over HTTP', () => {
  it('is the same from the API and from the command through the service', async () => {
    const api = await ask(at, '/api/v1/lifting');
    expect(api.status).toBe(200);
    expect(dates(api.body).length).toBeGreaterThan(0);
    const said = await underice(['lifting', '--json', '--data', folder]);
    expect(JSON.parse(said.out)).toEqual(api.body);
    const text = await underice(['lifting', '--data', folder, '--lang', 'fr']);
    expect(text.out).toMatch(/^Levée, telle que connue le 1er juin 2026/);
    expect(text.out).toMatch(/Mises en garde/);
  });

  it('stands in the calendar feed, as a draft, read by another parser', async () => {
    const { body } = await ask(at, '/api/v1/calendar?language=en');
    const feed = await ask(at, new URL(String(body.address)).pathname);
    const events = new ICAL.Component(ICAL.parse(feed.text)).getAllSubcomponents('vevent');
    const lifting = events
      .map((event) => new ICAL.Event(event))
      .filter(({ summary }) => /^Lift /.test(summary));
    const plan = await ask(at, '/api/v1/lifting');
    expect(lifting.map(({ startDate }) => startDate.toString())).toEqual(dates(plan.body));
    for (const { summary, description } of lifting) {
      expect(summary).toMatch(/\(draft\)$/);
      expect(description).toMatch(/never cross ice/i);
    }
  });

  it('has a page whose first words are the answer, and a sheet that begins with the stop rule', async () => {
    const page = await ask(at, '/lifting');
    expect(page.text).toMatch(/<p class="answer">No day is likely to keep both levels .*Least bad: /);
    const [day] = dates((await ask(at, '/api/v1/lifting')).body);
    const site = /\/lifting\/sheets\/\d{4}-\d\d-\d\d\/([\w-]+)/.exec(page.text)?.[1];
    const sheet = await ask(at, `/lifting/sheets/${day}/${site}`);
    expect(sheet.text).toMatch(/DRAFT/);
    expect(sheet.text.indexOf('First of all')).toBeLessThan(sheet.text.indexOf('Before you go in'));
    expect(sheet.text).toMatch(/If more than \d+ live alevins are in it/);
    expect((await ask(at, '/lifting/sheets/2026-06-05/nowhere')).status).toBe(404);
    expect((await ask(at, '/lifting/sheets/never/ford')).status).toBe(404);
  });

  it('moves at once when a box was checked and put back; the entry sent twice is there once', async () => {
    const before = await ask(at, '/api/v1/lifting');
    const entered = { entry: 'phone-7-0001', alive: 900, empty: 20 };
    const put = () => ask(at, '/api/v1/boxes/U1/put-back', json('POST', entered));
    expect((await put()).body).toEqual({ kept: true });
    expect((await put()).body).toEqual({ kept: false });
    const after = await ask(at, '/api/v1/lifting');
    expect(after.body.days).not.toEqual(before.body.days);
    expect((await ask(at, '/api/v1/tallies')).body.checkedAndPutBack).toHaveLength(1);
  });

  it('is approved by name, and says so everywhere', async () => {
    const plan = await ask(at, '/api/v1/lifting');
    const stale = await ask(at, '/api/v1/lifting/approve', json('POST', { days: ['2026-01-01'] }));
    expect(stale.status).toBe(422);
    expect(String(stale.body.detail)).toMatch(/The plan has changed/);
    const approved = await ask(at, '/api/v1/lifting/approve', json('POST', { days: dates(plan.body) }));
    expect(approved.body.state).toBe('approved');
    const [day] = dates(plan.body);
    const page = await ask(at, '/lifting');
    expect(page.text).toMatch(/Approved by /);
    const site = new RegExp(`/lifting/sheets/${day}/([\\w-]+)`).exec(page.text)?.[1];
    expect((await ask(at, `/lifting/sheets/${day}/${site}`)).text).not.toMatch(/DRAFT/);
  });
});

describe('tallies over HTTP', () => {
  const form = (fields: Record<string, string>) =>
    send('POST', 'application/x-www-form-urlencoded', new URLSearchParams(fields).toString(), {
      Origin: at,
    });
  const token = async () => {
    const page = await ask(at, '/tally/F1');
    const cookie = page.headers.get('Set-Cookie')?.split(';')[0] ?? '';
    const field = (name: string) => new RegExp(`name="${name}" value="([^"]+)"`).exec(page.text)?.[1] ?? '';
    return { cookie, csrf: field('csrf'), entry: field('entry') };
  };

  it('come from a plain form, once however often it is sent', async () => {
    const { cookie, csrf, entry } = await token();
    expect(entry).toMatch(/^[\w-]{36}$/);
    expect((await token()).entry).not.toBe(entry);
    const post = () => {
      const init = form({
        csrf,
        entry,
        when: '2026-06-01',
        empty: '700',
        dead: '200',
        alive: '0',
        fungus: '12',
      });
      return ask(at, '/boxes/F1/tally', { ...init, headers: { ...init.headers, Cookie: cookie } });
    };
    expect((await post()).status).toBe(303);
    expect((await post()).status).toBe(303);
    const { tallies } = JSON.parse((await ask(at, '/api/v1/tallies')).text);
    expect(tallies).toHaveLength(1);
    expect(tallies[0]).toMatchObject({ box: 'F1', empty: 700, difference: -100, kinds: { fungus: 12 } });
    expect((await ask(at, '/tally')).text).toMatch(/900 counted of 1,000 planted: 100 are not accounted for/);
  });

  it('come back with a sentence and what was typed, where they cannot be', async () => {
    const { cookie, csrf, entry } = await token();
    const init = form({ csrf, entry, when: '2026-06-01', empty: '9000', dead: '<b>x</b>' });
    const said = await ask(at, '/boxes/F2/tally', { ...init, headers: { ...init.headers, Cookie: cookie } });
    expect(said.status).toBe(422);
    expect(said.text).toMatch(/role="alert"/);
    expect(said.text).toContain('value="9000"');
    expect(said.text).not.toContain('<b>x</b>');
    const api = await ask(at, '/api/v1/boxes/F2/tally', json('POST', { empty: 'many' }));
    expect(api.status).toBe(422);
    expect(String(api.body.detail)).toMatch(/not a number/);
    expect((await ask(at, '/api/v1/boxes/nowhere/tally', json('POST', { empty: 1 }))).status).toBe(404);
  });

  it('come from the command through the service', async () => {
    const said = await underice([
      'tally',
      'F2',
      '--empty',
      '600',
      '--dead',
      '90',
      '--alive',
      '0',
      '--data',
      folder,
    ]);
    expect(said.status).toBe(0);
    expect(said.out).toMatch(/^The tally of box F2 is kept\./);
    const refused = await underice(['tally', 'F2', '--empty', '9999', '--data', folder]);
    expect(refused.status).toBe(2);
    expect(refused.err).toMatch(/too many/);
    const list = await underice(['tally', '--json', '--data', folder]);
    expect(JSON.parse(list.out).tallies).toHaveLength(2);
  });
});

describe('who may do what', () => {
  it('lets the crew tally and put back, and only a coordinator approve', async () => {
    const own = await sampleFolder();
    await threeAccounts(own);
    const address = (await service(own, {}, JUNE)).address;
    const cookieOf = async (name: string) => visitor(address, own, await signIn(address, own, name)).cookie;
    const crew = { Cookie: await cookieOf('Crewe') };
    const reader = { Cookie: await cookieOf('Reade') };
    expect((await ask(address, '/lifting', { headers: reader })).text).not.toMatch(/lifting\/approve/);
    expect((await ask(address, '/tally/U1', { headers: reader })).text).not.toMatch(/<form[^>]*boxes/);
    expect((await ask(address, '/tally/U1', { headers: crew })).text).toMatch(
      /action="\/boxes\/U1\/put-back"/,
    );
    const post = (path: string, who: Record<string, string>) =>
      ask(address, path, json('POST', { alive: 3 }, { ...who, Origin: address }));
    expect((await post('/api/v1/lifting/approve', crew)).status).toBe(403);
    expect((await post('/api/v1/boxes/U1/put-back', reader)).status).toBe(403);
  }, 60_000);
});
