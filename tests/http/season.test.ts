import { beforeAll, describe, expect, it } from 'vitest';
import { readSeason, seasonDocument } from '../../src/season/index.js';
import { ask, json, sampleFolder, send, service } from './service.js';

let at = '';
beforeAll(async () => {
  at = (await service(await sampleFolder())).address;
}, 60_000);

const tag = async () => (await ask(at, '/api/v1/season')).headers.get('ETag') ?? '';
const document = async (): Promise<Record<string, unknown>> => (await ask(at, '/api/v1/season')).body;
const put = (body: unknown, ifMatch: string | null, query = '') =>
  ask(at, `/api/v1/season${query}`, json('PUT', body, ifMatch === null ? {} : { 'If-Match': ifMatch }));

/** The season with a note on its first box. */
async function noted(note: string): Promise<Record<string, unknown>> {
  const season = await document();
  const [first, ...others] = Array.isArray(season.boxes) ? season.boxes : [];
  return { ...season, boxes: [{ ...first, note }, ...others] };
}

describe('the season document', () => {
  it('comes as JSON and as the file, the same season', async () => {
    const yaml = await ask(at, '/api/v1/season.yaml');
    expect(yaml.headers.get('Content-Type')).toContain('application/yaml');
    expect(await document()).toEqual(
      JSON.parse(JSON.stringify(seasonDocument(readSeason(yaml.text, 'season')))),
    );
    expect(yaml.headers.get('ETag')).toBe(await tag());
  });

  it('is not sent again to who has it (RFC 9110, 13.1.2)', async () => {
    expect((await ask(at, '/api/v1/season', { headers: { 'If-None-Match': await tag() } })).status).toBe(304);
  });

  it('tries a change without keeping it', async () => {
    const before = await tag();
    const said = await put(await noted('tried'), null, '?dry_run=true');
    expect(said).toMatchObject({ status: 200, body: { applied: false } });
    expect(said.body.changes).toHaveLength(1);
    expect(await tag()).toBe(before);
  });
});

describe('a change states what it changes', () => {
  it.each([
    [null, 428, 'http-if-match-missing'],
    ['*', 400, 'http-if-match-malformed'],
    ['season-1', 400, 'http-if-match-malformed'],
    ['W/"season-1"', 400, 'http-if-match-malformed'],
    ['"season-1", "season-2"', 400, 'http-if-match-malformed'],
    ['"season--1"', 400, 'http-if-match-malformed'],
    [`"season-${'9'.repeat(30)}"`, 400, 'http-if-match-malformed'],
    ['"season-999"', 412, 'season-moved'],
  ])('If-Match %j: %i', async (given, status, code) => {
    expect(await put(await noted('never'), given)).toMatchObject({ status, body: { code } });
    expect(JSON.stringify(await document())).not.toContain('never');
  });

  it('of two coordinators at the same box, the second is told, and nothing is overwritten', async () => {
    const seen = await tag();
    const [first, second] = [await noted('the first was here'), await noted('the second was here')];
    const answers = await Promise.all([put(first, seen), put(second, seen)]);
    expect(answers.map(({ status }) => status).sort()).toEqual([200, 412]);
    const lost = answers.find(({ status }) => status === 412);
    expect(lost?.body.detail).toContain('Nothing was overwritten');
    const stands = JSON.stringify(await document());
    expect(stands.includes('the first was here')).not.toBe(stands.includes('the second was here'));
  });
});

describe('a season that is no season', () => {
  it.each([
    ['a broken document', '{"group":', 400, 'http-not-json'],
    ['a list', '[]', 422, 'http-not-these-values'],
    ['an unknown key', '{"group":{"name":"A","zone":"UTC"},"boxen":[]}', 422, 'season.refused'],
    [
      'markup as an id',
      '{"group":{"name":"A","zone":"UTC"},"stations":[{"id":"<script>"}]}',
      422,
      'season.refused',
    ],
  ])('%s', async (_, text, status, code) => {
    const said = await ask(
      at,
      '/api/v1/season',
      send('PUT', 'application/json', text, { 'If-Match': await tag() }),
    );
    expect(said).toMatchObject({ status, body: { code } });
  });

  it('as a file: each thing wrong, with its line', async () => {
    const text = 'group:\n  name: A\n  zone: Nowhere/Atall\nboxes:\n  - id: 1\n';
    const said = await ask(
      at,
      '/api/v1/season',
      send('PUT', 'application/yaml', text, { 'If-Match': await tag() }),
    );
    expect(said).toMatchObject({ status: 422, body: { code: 'season.refused' } });
    expect(said.body.problems).toContainEqual({ line: 3, path: 'group.zone', code: 'season.unknown-zone' });
  });

  it('larger than a season can be', async () => {
    const said = await ask(
      at,
      '/api/v1/season',
      send('PUT', 'application/yaml', `# ${'x'.repeat(5e6)}`, { 'If-Match': await tag() }),
    );
    expect(said).toMatchObject({ status: 413, body: { code: 'http-body-too-large' } });
  });
});

describe('versions', () => {
  it('tell who changed what, and are gone back to', async () => {
    const before = await document();
    expect((await put(await noted('a change to take back'), await tag())).status).toBe(200);
    const { versions } = (await ask(at, '/api/v1/season/versions')).body;
    const [newest] = Array.isArray(versions) ? versions : [];
    const whole = await ask(at, `/api/v1/season/versions/${newest.version}`);
    expect(whole.body.text).toContain('a change to take back');
    expect(whole.body.changes).toHaveLength(1);
    const undone = await ask(at, '/api/v1/season/undo', json('POST', {}, { 'If-Match': await tag() }));
    expect(undone).toMatchObject({ status: 200, body: { applied: true, version: newest.version + 1 } });
    expect(await document()).toEqual(before);
  });

  it('that are not there are said to be so', async () => {
    expect(await ask(at, '/api/v1/season/versions/999')).toMatchObject({
      status: 404,
      body: { code: 'unknown-version' },
    });
    const said = await ask(
      at,
      '/api/v1/season/undo',
      json('POST', { version: 999 }, { 'If-Match': await tag() }),
    );
    expect(said).toMatchObject({ status: 404, body: { code: 'unknown-version' } });
  });
});
