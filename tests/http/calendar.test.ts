import ICAL from 'ical.js';
import { beforeAll, describe, expect, it } from 'vitest';
import { ask, json, threeSignedIn, visitor } from './service.js';

/* The feed is read by a parser that did not write it (ical.js). */
let at = '';
let cookie = '';
beforeAll(async () => {
  const served = await threeSignedIn();
  at = served.at;
  cookie = visitor(at, served.folder, served.sessions.Coral).cookie;
}, 60_000);

const address = async (query: string): Promise<string> => {
  const said = await ask(at, `/api/v1/calendar?${query}`, { headers: { Cookie: cookie } });
  return new URL(String(said.body.address)).pathname;
};

function events(text: string): ICAL.Event[] {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return calendar.getAllSubcomponents('vevent').map((event) => new ICAL.Event(event));
}

const shown = (event: ICAL.Event) => [
  event.uid,
  event.summary,
  event.startDate.toString(),
  event.endDate.toString(),
];

describe('a calendar', () => {
  it('needs no sign-in, only its address', async () => {
    const said = await ask(at, await address('language=en'));
    expect(said.status).toBe(200);
    expect(said.headers.get('Content-Type')).toContain('text/calendar');
  });

  it('has a window of every stage still to come, on the days the forecast gives', async () => {
    const { body } = await ask(at, '/api/v1/forecast', { headers: { Cookie: cookie } });
    const { boxes } = JSON.parse(JSON.stringify(body));
    const expected = boxes.flatMap(
      (box: { box: string; windows: { passed: boolean; stage: string; first: { p50: string | null } }[] }) =>
        box.windows
          .filter(({ passed, first }) => !passed && first.p50 !== null)
          .map(({ first }) => `${box.box} ${first.p50}`),
    );
    const all = events((await ask(at, await address('language=en'))).text);
    const windows = all.filter(({ summary }) => summary.includes(': '));
    expect(windows.map((event) => `${event.summary.split(':')[0]} ${event.startDate.toString()}`)).toEqual(
      expected,
    );
    expect(
      windows.every((event) => event.startDate.isDate && event.startDate.compare(event.endDate) < 0),
    ).toBe(true);
  });

  it('carries the cautions with every date', async () => {
    for (const event of events((await ask(at, await address('language=fr'))).text).filter(({ summary }) =>
      summary.includes(' : '),
    ))
      expect(event.description).toContain('Ne traversez jamais la glace');
  });

  it('speaks the language of its address, whatever the phone asks for', async () => {
    const path = await address('language=fr');
    const { text } = await ask(at, path, { headers: { 'Accept-Language': 'en' } });
    expect(events(text).some(({ summary }) => summary.includes('œuf œillé'))).toBe(true);
  });

  it('of one box has that box only', async () => {
    const all = events((await ask(at, await address('language=en&box=B1'))).text);
    expect(all.length).toBeGreaterThan(0);
    expect(
      all.filter(({ summary }) => summary.includes(': ')).every(({ summary }) => summary.startsWith('B1:')),
    ).toBe(true);
  });

  it('gives the same thing the same name each time, and a moved window a higher number', async () => {
    const read = async () => events((await ask(at, await address('language=en'))).text);
    const before = await read();
    expect((await read()).map(shown)).toEqual(before.map(shown));
    await ask(at, '/api/v1/loads/4/withdraw', { method: 'POST', headers: { Cookie: cookie } });
    const after = await read();
    const uids = (list: ICAL.Event[]) => list.map(({ uid }) => uid).sort();
    expect(uids(after)).toEqual(uids(before));
    expect(new Set(uids(after)).size).toBe(after.length);
    const highest = Math.max(...before.map(({ sequence }) => sequence));
    expect(after.every(({ sequence }) => sequence > highest)).toBe(true);
  });
});

describe('the address', () => {
  it.each([
    '/calendar/en/AAAAAAAAAAAAAAAAAAAAAA.ics',
    '/calendar/xx/AAAA.ics',
    '/calendar/en/B1/AAAAAAAAAAAAAAAAAAAAAA.ics',
  ])('%s is not guessed', async (path) =>
    expect(await ask(at, path)).toMatchObject({ status: 404, body: { code: 'http-unknown-calendar' } }),
  );

  it('of one calendar opens no other', async () => {
    const key = (await address('language=en')).split('/').at(-1);
    expect((await ask(at, `/calendar/fr/${key}`)).status).toBe(404);
    expect((await ask(at, `/calendar/en/B1/${key}`)).status).toBe(404);
  });

  it('is void once it was changed', async () => {
    const old = await address('language=fr');
    const change = json('POST', { language: 'fr' }, { Cookie: cookie });
    const changed = new URL(String((await ask(at, '/api/v1/calendar/change', change)).body.address)).pathname;
    expect((await ask(at, old)).status).toBe(404);
    expect((await ask(at, changed)).status).toBe(200);
    expect((await ask(at, await address('language=en'))).status).toBe(200);
  });
});
