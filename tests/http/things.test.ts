import { beforeAll, describe, expect, it } from 'vitest';
import { thingLists } from '../../src/http/api/things.js';
import { ask, json, type Said, sampleFolder, send, service } from './service.js';

let at = '';
beforeAll(async () => {
  at = (await service(await sampleFolder())).address;
}, 60_000);

const API = '/api/v1/season';
const get = (path: string) => ask(at, `${API}/${path}`);
const tag = async () => (await ask(at, API)).headers.get('ETag') ?? '';
const put = async (path: string, body: unknown, ifMatch?: string) =>
  ask(at, `${API}/${path}`, json('PUT', body, { 'If-Match': ifMatch ?? (await tag()) }));
const remove = async (path: string, ifMatch?: string) =>
  ask(at, `${API}/${path}`, { method: 'DELETE', headers: { 'If-Match': ifMatch ?? (await tag()) } });
const things = ({ body }: Said): Record<string, unknown>[] => (Array.isArray(body.things) ? body.things : []);

describe('the things of a season, one by one', () => {
  it.each(thingLists)('%s are those of the document', async (list) => {
    const { body } = await ask(at, API);
    const said = await get(list);
    expect(said).toMatchObject({ status: 200, body: { next: null } });
    expect(things(said)).toEqual(body[list] ?? []);
    expect(said.headers.get('ETag')).toBe(await tag());
  });

  it('come a page at a time, each once and in order', async () => {
    const ids: unknown[] = [];
    for (let cursor = ''; ; ) {
      const page = await get(`boxes?limit=4${cursor === '' ? '' : `&cursor=${cursor}`}`);
      expect(things(page).length).toBeLessThanOrEqual(4);
      ids.push(...things(page).map(({ id }) => id));
      if (page.body.next === null) break;
      cursor = String(page.body.next);
    }
    expect(ids).toEqual(['U1', 'U2', 'F1', 'F2', 'B1', 'A1']);
    expect(await get('boxes?cursor=nonsense')).toMatchObject({
      status: 422,
      body: { code: 'http-bad-cursor' },
    });
  });

  it('are made, changed and taken out, each a version that can be undone', async () => {
    const before = (await ask(at, API)).body;
    const made = await put('sites/elbow', { name: 'The Elbow', station: 'braid' });
    expect(made).toMatchObject({ status: 200, body: { applied: true } });
    expect(made.headers.get('ETag')).toBe(await tag());
    expect((await get('sites/elbow')).body).toEqual({ id: 'elbow', name: 'The Elbow', station: 'braid' });
    await put('sites/elbow', { id: 'elbow', name: 'Elbow Pool', station: 'braid' });
    expect((await get('sites/ELBOW')).body).toMatchObject({ name: 'Elbow Pool' });
    expect(await remove('sites/elbow')).toMatchObject({ status: 200, body: { applied: true } });
    expect(await get('sites/elbow')).toMatchObject({ status: 404, body: { code: 'unknown-thing' } });
    expect((await ask(at, API)).body).toEqual(before);
    await ask(at, `${API}/undo`, json('POST', {}, { 'If-Match': await tag() }));
    expect((await get('sites/elbow')).status).toBe(200);
  });

  it('a box keeps its fills, and the forecast reads what was put', async () => {
    const box = (await get('boxes/B1')).body;
    expect(await put('boxes/B1', { ...box, note: 'by the leaning birch' })).toMatchObject({ status: 200 });
    expect((await get('boxes/B1')).body).toEqual({ ...box, note: 'by the leaning birch' });
    expect((await ask(at, '/api/v1/boxes/B1')).status).toBe(200);
  });
});

describe('what may not be', () => {
  it.each([
    ['a box at no site', 'boxes/B9', { site: 'nowhere', fills: [] }, 422, 'season.refused'],
    ['another id than its address', 'boxes/B1', { id: 'B2' }, 422, 'http-not-these-values'],
    ['a list', 'boxes/B1', [], 422, 'http-not-these-values'],
    ['markup as an id', 'stations/<script>', { kind: 'stream' }, 422, 'season.refused'],
  ])('%s', async (_, path, body, status, code) => {
    const before = await tag();
    expect(await put(path, body)).toMatchObject({ status, body: { code } });
    expect(await tag()).toBe(before);
  });

  it('a lot that boxes hold is not taken out from under them', async () => {
    expect(await remove('lots/A')).toMatchObject({ status: 422, body: { code: 'season.refused' } });
    expect((await get('lots/A')).status).toBe(200);
  });

  it.each([
    ['"season-1"', 412, 'season-moved'],
    ['*', 400, 'http-if-match-malformed'],
  ])('If-Match %s', async (given, status, code) => {
    const said = await put('boxes/B1', { site: 'braid', fills: [] }, given);
    expect(said).toMatchObject({ status, body: { code } });
    expect(await remove('boxes/B1', given)).toMatchObject({ status, body: { code } });
  });

  it('without If-Match, or as no document', async () => {
    const bare = await ask(at, `${API}/boxes/B1`, json('PUT', {}));
    expect(bare).toMatchObject({ status: 428, body: { code: 'http-if-match-missing' } });
    const broken = send('PUT', 'application/json', '{"site":', { 'If-Match': await tag() });
    expect(await ask(at, `${API}/boxes/B1`, broken)).toMatchObject({ status: 400 });
  });
});
