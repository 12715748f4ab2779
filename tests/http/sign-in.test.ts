import { readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { verify } from '@node-rs/argon2';
import { beforeAll, describe, expect, it } from 'vitest';
import { Accounts } from '../../src/http/sign-in/accounts.js';
import { ask, json, scratchFolder, send, service, signIn, threeSignedIn, visitor } from './service.js';

let at = '';
let folder = '';
let sessions: Readonly<Record<string, string>> = {};
beforeAll(async () => {
  ({ at, folder, sessions } = await threeSignedIn());
}, 60_000);

const as = (name: string) => visitor(at, folder, sessions[name] ?? '');
const asking = (name: string, path: string, init: RequestInit = {}) =>
  ask(at, path, { ...init, headers: { ...init.headers, Cookie: as(name).cookie } });

describe('where nobody has an account', () => {
  it('the service will not start but on loopback', async () => {
    const empty = join(scratchFolder(), 'empty');
    await expect(service(empty, { host: '0.0.0.0' })).rejects.toMatchObject({
      remark: { code: 'http-no-account' },
    });
  });

  it('on loopback it is open, and says so', async () => {
    const open = await service(join(scratchFolder(), 'open'));
    expect(open.open).toBe(true);
    expect(await ask(open.address, '/api/v1/season')).toMatchObject({ status: 200 });
  });
});

describe('who has not signed in', () => {
  it.each(['/api/v1/season', '/api/v1/forecast.csv', '/api/v1/openapi.json', '/api/v1/files'])(
    'sees nothing of %s',
    async (path) => {
      expect(await ask(at, path)).toMatchObject({ status: 401, body: { code: 'http-sign-in-first' } });
    },
  );

  it('is led to the sign-in from a page, and back to it afterwards', async () => {
    const said = await ask(at, '/boxes/U1?as-of=2026-02-15', { headers: { Accept: 'text/html' } });
    expect(said.status).toBe(303);
    expect(said.headers.get('Location')).toBe('/sign-in?to=%2Fboxes%2FU1%3Fas-of%3D2026-02-15');
    const signed = await visitor(at, folder).post('/sign-in', {
      name: 'Coral',
      password: 'Coral-password',
      to: '/boxes/U1',
    });
    expect(signed.headers.get('Location')).toBe('/boxes/U1');
  });

  it('is not led away by a sign-in', async () => {
    const said = await visitor(at, folder).post('/sign-in', {
      name: 'Coral',
      password: 'Coral-password',
      to: '//evil.example/',
    });
    expect(said.headers.get('Location')).toBe('/');
  });
});

describe('roles', () => {
  const file = send('PUT', 'application/octet-stream', 'x');
  it.each([
    // path, request, then what coordinator, crew and reader are answered
    ['/api/v1/season', {}, [200, 200, 200]],
    ['/api/v1/files/a.csv', file, [201, 201, 403]],
    ['/api/v1/loads', json('POST', { files: [{ file: 'x' }], dryRun: true }), [404, 404, 403]],
    ['/api/v1/loads/999/withdraw', { method: 'POST' }, [404, 403, 403]],
    ['/api/v1/season', json('PUT', {}, { 'If-Match': '"season-1"' }), [422, 403, 403]],
    ['/api/v1/season/undo', json('POST', {}), [428, 403, 403]],
    ['/api/v1/accounts', {}, [200, 403, 403]],
    ['/api/v1/tokens', {}, [200, 403, 403]],
    ['/api/v1/audit', {}, [200, 403, 403]],
    ['/api/v1/invitations', json('POST', { role: 'coordinator' }), [201, 403, 403]],
    ['/api/v1/calendar/change', json('POST', { language: 'en' }), [200, 403, 403]],
  ] as const)('%s', async (path, init, statuses) => {
    const said = [];
    for (const name of ['Coral', 'Crewe', 'Reade']) said.push((await asking(name, path, init)).status);
    expect(said).toEqual([...statuses]);
  });

  it('a refusal names the role and the one needed', async () => {
    const said = await asking(
      'Reade',
      '/api/v1/files/a.csv',
      send('PUT', 'application/octet-stream', 'x', { 'Accept-Language': 'fr' }),
    );
    expect(said.body.detail).toBe(
      'Votre rôle est «\u00a0lecture\u00a0»\u00a0: il faut ici le rôle «\u00a0équipe\u00a0». Adressez-vous à la coordination.',
    );
  });
});

describe('API tokens', () => {
  const make = async (role: string, ends: string) => {
    const said = await asking('Coral', '/api/v1/tokens', json('POST', { name: 'R script', role, ends }));
    return { id: String(said.body.id), headers: { Authorization: `Bearer ${said.body.token}` } };
  };

  it('act in their role until their day', async () => {
    const { headers } = await make('reader', '2999-12-31');
    expect((await ask(at, '/api/v1/season', { headers })).status).toBe(200);
    expect(
      await ask(at, '/api/v1/files/a.csv', send('PUT', 'application/octet-stream', 'x', headers)),
    ).toMatchObject({
      status: 403,
      body: { code: 'http-role' },
    });
  });

  it('do nothing after it, nor once they are ended', async () => {
    let now = Date.UTC(2026, 1, 15);
    const accounts = new Accounts(scratchFolder(), 1, () => now);
    const { token } = await accounts.addToken('R script', 'reader', now + 1000, 'tests');
    expect(accounts.personOfToken(token)).toMatchObject({ role: 'reader' });
    now += 1000;
    expect(accounts.personOfToken(token)).toBeNull();
    const ended = await make('coordinator', '2999-12-31');
    await asking('Coral', `/api/v1/tokens/${ended.id}`, { method: 'DELETE' });
    expect((await ask(at, '/api/v1/season', { headers: ended.headers })).status).toBe(401);
  });

  it.each(['Bearer x', 'Basic Q29yYWw6Q29yYWwtcGFzc3dvcmQ=', 'Bearer ', `Bearer ${'a'.repeat(43)}`])(
    '%s is none',
    async (authorization) => {
      const headers = { Authorization: authorization };
      expect((await ask(at, '/api/v1/season', { headers })).status).toBe(401);
    },
  );
});

describe('sessions', () => {
  it('end with the sign-out, wherever the cookie is kept', async () => {
    const session = await signIn(at, folder, 'Crewe');
    const browser = visitor(at, folder, session);
    expect((await browser.get('/api/v1/season')).status).toBe(200);
    const out = await browser.post('/sign-out', {});
    expect(out.status).toBe(303);
    expect((await browser.get('/api/v1/season')).status).toBe(401);
  });

  it('travel in a cookie that scripts and other sites do not get', async () => {
    const said = await visitor(at, folder).post('/sign-in', { name: 'Reade', password: 'Reade-password' });
    const cookie = said.headers.getSetCookie().find((one) => one.startsWith('underice_session')) ?? '';
    expect(cookie).toContain('HttpOnly');
    expect(cookie).toContain('SameSite=Lax');
  });

  it('a form signed for another session is forged', async () => {
    const other = visitor(at, folder);
    const said = await ask(
      at,
      '/sign-out',
      send(
        'POST',
        'application/x-www-form-urlencoded',
        `csrf=${new Accounts(folder, 1).sign('form other')}`,
        {
          Cookie: as('Coral').cookie,
        },
      ),
    );
    expect(said).toMatchObject({ status: 403, body: { code: 'http-forged' } });
    expect(other.cookie).not.toContain('session');
  });

  it('end where the password is set anew, or the account is taken away', async () => {
    await asking(
      'Coral',
      '/api/v1/accounts',
      json('POST', { name: 'Gone', role: 'crew', password: 'Gone-password' }),
    );
    const session = await signIn(at, folder, 'Gone');
    await asking('Coral', '/api/v1/accounts/Gone', json('PATCH', { password: 'another-password' }));
    expect((await visitor(at, folder, session).get('/api/v1/season')).status).toBe(401);
    expect((await asking('Coral', '/api/v1/accounts/Gone', { method: 'DELETE' })).status).toBe(204);
    expect(
      (await visitor(at, folder).post('/sign-in', { name: 'Gone', password: 'another-password' })).status,
    ).toBe(401);
  });
});

describe('passwords', () => {
  it('are kept by argon2id only, in a file for its owner only', async () => {
    const file = join(folder, 'underice.accounts.json');
    expect(statSync(file).mode & 0o777).toBe(0o600);
    const text = readFileSync(file, 'utf8');
    expect(text).not.toContain('Coral-password');
    expect(text).not.toContain(sessions.Coral);
    const kept = /"password": "(\$argon2id\$[^"]+)"/.exec(text)?.[1] ?? '';
    // OWASP Password Storage Cheat Sheet: argon2id, m=19456 KiB, t=2, p=1 (memory).
    expect(kept).toContain('m=19456,t=2,p=1');
    expect(await verify(kept, 'Coral-password')).toBe(true);
  });

  it.each([
    ['short', 422, 'http-password-short'],
    ['x'.repeat(201), 422, 'http-password-long'],
  ])('%s: %i', async (password, status, code) => {
    const said = await asking(
      'Coral',
      '/api/v1/accounts',
      json('POST', { name: 'New', role: 'crew', password }),
    );
    expect(said).toMatchObject({ status, body: { code } });
  });

  it('a wrong one and a name that is not there are told apart by nobody', async () => {
    const wrong = await visitor(at, folder).post('/sign-in', { name: 'Reade', password: 'wrong-password' });
    const nobody = await visitor(at, folder).post('/sign-in', { name: 'Nobody', password: 'wrong-password' });
    expect([wrong.status, nobody.status]).toEqual([401, 401]);
    expect(wrong.text).toBe(nobody.text);
  });
});

describe('accounts', () => {
  it('the only coordinator stays one', async () => {
    const change = (init: RequestInit) => asking('Coral', '/api/v1/accounts/Coral', init);
    expect(await change(json('PATCH', { role: 'reader' }))).toMatchObject({ status: 409 });
    expect(await change({ method: 'DELETE' })).toMatchObject({
      status: 409,
      body: { code: 'http-last-coordinator' },
    });
  });

  it.each(['', '<script>', 'a\u0000b', '  ', '=cmd', 'x'.repeat(61)])('%j is no name', async (name) => {
    const said = await asking(
      'Coral',
      '/api/v1/accounts',
      json('POST', { name, role: 'crew', password: 'long-password' }),
    );
    expect(said.status).toBe(422);
  });

  it('a name is taken whatever its letters’ size', async () => {
    const said = await asking(
      'Coral',
      '/api/v1/accounts',
      json('POST', { name: 'cORAL', role: 'crew', password: 'long-password' }),
    );
    expect(said).toMatchObject({ status: 409, body: { code: 'http-name-taken' } });
  });
});

describe('invitations', () => {
  it('are good for one account', async () => {
    const { body } = await asking('Coral', '/api/v1/invitations', json('POST', { role: 'crew' }));
    const path = new URL(String(body.link)).pathname;
    const accept = () => visitor(at, folder).post(path, { name: 'Invited', password: 'Invited-password' });
    expect((await accept()).status).toBe(303);
    expect(await accept()).toMatchObject({ status: 404, body: { code: 'http-invitation-over' } });
    const session = await signIn(at, folder, 'Invited');
    expect((await visitor(at, folder, session).get('/api/v1/accounts')).status).toBe(403);
  });
});

describe('guessing', () => {
  it('is slowed down for the account, and the wait is stated', async () => {
    const now = { at: Date.UTC(2026, 1, 1) };
    const own = scratchFolder();
    const accounts = new Accounts(own, 30, () => now.at);
    await accounts.add('Coral', 'coordinator', 'Coral-password', 'tests');
    const guess = (password: string, address = '192.0.2.1') =>
      accounts.signIn('Coral', password, { address, agent: '' });
    for (let i = 0; i < 5; i++) await expect(guess('wrong')).rejects.toMatchObject({ status: 401 });
    await expect(guess('Coral-password')).rejects.toMatchObject({
      status: 429,
      headers: { 'Retry-After': '2' },
    });
    await expect(guess('Coral-password', '192.0.2.2')).rejects.toMatchObject({ status: 429 });
    now.at += 2000;
    await expect(guess('Coral-password')).resolves.toMatch(/^[\w-]{43}$/);
  });

  it('all at once is counted all at once', async () => {
    const accounts = new Accounts(scratchFolder(), 30);
    await accounts.add('Coral', 'coordinator', 'Coral-password', 'tests');
    const all = Array.from({ length: 20 }, () =>
      accounts
        .signIn('Coral', 'wrong', { address: '192.0.2.1', agent: '' })
        .catch((error: { status: number }) => error.status),
    );
    const statuses = await Promise.all(all);
    expect(statuses.filter((status) => status === 401)).toHaveLength(5);
    expect(statuses.filter((status) => status === 429)).toHaveLength(15);
  });
});

describe('the audit list', () => {
  it('tells who signed in, who was refused and who changed what', async () => {
    const { body } = await asking('Coral', '/api/v1/audit?limit=5000');
    const entries = Array.isArray(body.entries) ? body.entries : [];
    for (const did of [
      'account-made',
      'signed-in',
      'sign-in-refused',
      'token-made',
      'invited',
      'session-ended',
    ])
      expect(
        entries.some((entry) => entry.did === did),
        did,
      ).toBe(true);
    expect(JSON.stringify(entries)).not.toContain('password"');
  });
});
