import { beforeAll, describe, expect, it } from 'vitest';
import type { Serving } from '../../src/http/serve.js';
import { ask, cookiesOf, json, sampleFolder, send, service } from './service.js';

let at = '';
let serving: Serving;
beforeAll(async () => {
  serving = await service(await sampleFolder());
  at = serving.address;
}, 60_000);

describe('what every answer carries', () => {
  // OWASP Secure Headers Project; Content Security Policy Level 3 (W3C): abstract.
  it('keeps foreign scripts and frames out', async () => {
    for (const path of ['/', '/healthz', '/api/v1/forecast', '/nothing-here']) {
      const { headers } = await ask(at, path);
      const policy = headers.get('Content-Security-Policy') ?? '';
      expect(policy).toMatch(/script-src 'self' 'nonce-[\w-]{20,}'/);
      expect(policy).toContain("frame-ancestors 'none'");
      expect(policy).toContain("default-src 'none'");
      expect(policy.split(';').find((one) => one.includes('script-src'))).not.toContain('unsafe');
      expect(headers.get('X-Frame-Options')).toBe('DENY');
      expect(headers.get('X-Content-Type-Options')).toBe('nosniff');
    }
  });

  it('gives every answer a nonce of its own', async () => {
    const nonce = async () =>
      /nonce-([\w-]+)/.exec((await ask(at, '/')).headers.get('Content-Security-Policy') ?? '')?.[1];
    expect(await nonce()).not.toBe(await nonce());
  });

  it('binds to loopback unless told otherwise', () => {
    expect(at).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
  });

  it('says that it is well', async () => {
    expect(await ask(at, '/healthz')).toMatchObject({ status: 200, body: { status: 'ok' } });
  });
});

describe('language', () => {
  it.each([
    ['fr-CA,fr;q=0.9,en;q=0.8', 'fr'],
    ['en-CA,fr;q=0.5', 'en'],
    ['de, fr;q=0.3', 'fr'],
    ['fr;q=0, en;q=0.1', 'en'],
    ['de', 'en'],
    ['', 'en'],
    ['*;;;q=q,,,', 'en'],
  ])('Accept-Language %j: %s', async (accept, language) => {
    const said = await ask(at, '/nothing-here', { headers: { 'Accept-Language': accept } });
    expect(said.headers.get('Content-Language')).toBe(language);
    expect(said.body.detail).toBe(
      language === 'fr' ? 'Il n’y a rien à /nothing-here.' : 'There is nothing at /nothing-here.',
    );
  });

  it("a person's choice goes before the browser's", async () => {
    const chosen = await ask(at, '/language/fr?to=/help');
    expect(chosen).toMatchObject({ status: 303 });
    expect(chosen.headers.get('Location')).toBe('/help');
    const headers = { Cookie: cookiesOf(chosen), 'Accept-Language': 'en' };
    expect((await ask(at, '/nothing-here', { headers })).headers.get('Content-Language')).toBe('fr');
  });

  it.each(['//evil.example', '/\\evil.example', 'https://evil.example', 'javascript:alert(1)'])(
    'does not lead away to %s',
    async (to) => {
      const { headers } = await ask(at, `/language/fr?to=${encodeURIComponent(to)}`);
      expect(headers.get('Location')).toBe('/');
    },
  );
});

describe('errors', () => {
  it('are problem details for programs (RFC 9457)', async () => {
    const said = await ask(at, '/api/v1/boxes/nowhere');
    expect(said.headers.get('Content-Type')).toBe('application/problem+json');
    expect(said.body).toEqual({
      type: 'about:blank',
      title: 'Not Found',
      status: 404,
      detail: 'There is no box "nowhere" in the season: it has U1, U2, F1, F2, B1 and A1.',
      code: 'unknown-box',
    });
  });

  it('are a page with the sentence for people', async () => {
    const said = await ask(at, '/nothing-here', {
      headers: { Accept: 'text/html', 'Accept-Language': 'fr' },
    });
    expect(said).toMatchObject({ status: 404 });
    expect(said.text).toContain('<html lang="fr-CA">');
    expect(said.text).toContain('Il n’y a rien à /nothing-here.');
  });

  it('carry no markup from an address into a page', async () => {
    const said = await ask(at, '/%3Cscript%3Ealert(1)%3C/script%3E', { headers: { Accept: 'text/html' } });
    expect(said.text).not.toContain('<script>alert');
  });
});

describe('a request that is not wished', () => {
  it('by a name that somebody else made point here', async () => {
    const { request } = await import('node:http');
    const status = await new Promise<number | undefined>((resolve, reject) => {
      const asked = request(`${at}/api/v1/season`, { headers: { Host: 'evil.example' } }, (answer) => {
        answer.resume();
        resolve(answer.statusCode);
      });
      asked.on('error', reject).end();
    });
    expect(status).toBe(421);
  });

  it('a forged post of a form, without its field or with another visit’s', async () => {
    const form = (fields: string, headers = {}) =>
      ask(at, '/sign-out', send('POST', 'application/x-www-form-urlencoded', fields, headers));
    expect(await form('a=1')).toMatchObject({ status: 403, body: { code: 'http-forged' } });
    expect(await form('csrf=AAAAAAAAAAAAAAAAAAAAAA')).toMatchObject({ status: 403 });
    expect(await form('csrf=x', { 'Sec-Fetch-Site': 'cross-site' })).toMatchObject({ status: 403 });
  });

  it('a forged post to the open API from a page elsewhere', async () => {
    const forged = (headers: Record<string, string>) =>
      ask(at, '/api/v1/loads/1/withdraw', { method: 'POST', headers });
    expect(await forged({ 'Sec-Fetch-Site': 'cross-site' })).toMatchObject({ status: 403 });
    expect(await forged({ 'Sec-Fetch-Site': 'same-site' })).toMatchObject({ status: 403 });
    expect(await forged({ Origin: 'https://evil.example' })).toMatchObject({ status: 403 });
    expect(await forged({ Origin: 'null' })).toMatchObject({ status: 403 });
    // What a page elsewhere can send without asking first (Fetch standard, CORS-safelisted types): abstract.
    for (const type of ['text/plain', 'application/x-www-form-urlencoded', 'multipart/form-data; boundary=x'])
      expect(await forged({ 'Content-Type': type })).toMatchObject({ status: 415 });
    const { loads } = (await ask(at, '/api/v1/loads')).body;
    expect(Array.isArray(loads) && loads[0]).toMatchObject({ withdrawn: null });
  });

  it('at the door of the commands, without the key', async () => {
    for (const headers of [{}, { Authorization: 'Bearer 00' }, { Authorization: `Bearer ${'0'.repeat(64)}` }])
      expect(await ask(at, '/owner/call/season', json('POST', {}, headers))).toMatchObject({ status: 401 });
  });
});
