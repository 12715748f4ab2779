import { beforeAll, describe, expect, it } from 'vitest';
import { ask, json, threeSignedIn } from './service.js';

let at = '';
let sessions: Readonly<Record<string, string>> = {};
beforeAll(async () => {
  ({ at, sessions } = await threeSignedIn());
}, 120_000);

function asking(name: string, path: string, init: RequestInit = {}) {
  const headers = new Headers(init.headers);
  headers.set('Cookie', `underice_session=${sessions[name]}`);
  headers.set('Sec-Fetch-Site', 'same-origin');
  return ask(at, path, { ...init, headers });
}

const seen = { date: '2026-02-10', box: 'U1', stage: 'eye-up', seen: 3, of: 10 };

describe('observations and visits', () => {
  it('are added by the crew, not by a reader', async () => {
    expect((await asking('Reade', '/api/v1/observed', json('POST', seen))).status).toBe(403);
    expect((await asking('Crewe', '/api/v1/observed', json('POST', seen))).status).toBe(201);
    const visit = { site: 'upper-pool', when: '2026-02-12', hand: [{ celsius: 0.3 }], ice: 'under' };
    const added = await asking('Crewe', '/api/v1/visits', json('POST', visit));
    expect(added.text).toContain('"applied":true');
  });

  it('come a page at a time, with the ETag that a change states', async () => {
    const first = await asking('Coral', '/api/v1/visits?limit=1');
    expect(first.body.entries).toHaveLength(1);
    const second = await asking('Coral', `/api/v1/visits?limit=1&cursor=${String(first.body.next)}`);
    expect(second.body.entries).not.toEqual(first.body.entries);
    expect(first.headers.get('ETag')).toMatch(/^"season-\d+"$/);
  });

  it('are stated anew and taken out by who has seen the last version', async () => {
    const { body, headers } = await asking('Coral', '/api/v1/observed?limit=1000');
    const index = Array.isArray(body.entries) ? body.entries.length - 1 : -1;
    const path = `/api/v1/observed/${index}`;
    const tag = { 'If-Match': headers.get('ETag') ?? '' };
    expect((await asking('Coral', path, { method: 'DELETE' })).status).toBe(428);
    expect((await asking('Coral', path, json('PUT', seen, { 'If-Match': 'season' }))).status).toBe(400);
    expect((await asking('Crewe', path, json('PUT', seen, tag))).status).toBe(403);
    expect((await asking('Coral', '/api/v1/observed/9999', json('PUT', seen, tag))).status).toBe(404);
    const fewer = await asking('Coral', path, json('PUT', { ...seen, seen: 2 }, tag));
    expect(fewer.status).toBe(200);
    expect((await asking('Coral', path, { method: 'DELETE', headers: tag })).status).toBe(412);
    const now = { 'If-Match': fewer.headers.get('ETag') ?? '' };
    expect((await asking('Coral', path, { method: 'DELETE', headers: now })).status).toBe(200);
  });

  it('that cannot be are refused, and nothing is kept of them', async () => {
    const before = (await asking('Coral', '/api/v1/observed')).text;
    const said = await asking('Crewe', '/api/v1/observed', json('POST', { ...seen, box: 'nowhere' }));
    expect(said).toMatchObject({ status: 422 });
    expect((await asking('Coral', '/api/v1/observed')).text).toBe(before);
  });

  it('added by several at once are all kept', async () => {
    const days = ['2026-02-01', '2026-02-02', '2026-02-03'];
    const all = await Promise.all(
      days.map((date) => asking('Crewe', '/api/v1/observed', json('POST', { ...seen, date }))),
    );
    expect(all.map(({ status }) => status)).toEqual([201, 201, 201]);
    const { text } = await asking('Coral', '/api/v1/observed');
    for (const date of days) expect(text).toContain(date);
  });
});
