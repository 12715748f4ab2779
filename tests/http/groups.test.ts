import { request } from 'node:http';
import { join } from 'node:path';
import { pino } from 'pino';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openGroup, openOwnGroup } from '../../src/group/index.js';
import { type ServingGroups, serveGroups } from '../../src/http/serve-groups.js';
import { Accounts } from '../../src/http/sign-in/accounts.js';
import { readSettings } from '../../src/settings/index.js';
import { scratchFolder } from './service.js';

/* Two groups of one process, as a regional programme runs them. */
const NORTH = 'north.localhost';
const SOUTH = 'south.localhost';

let serving: ServingGroups;
let north = '';
let south = '';
let northToken = '';

const settingsOf = (folder: string, host: string | null) =>
  readSettings({
    folder,
    file: null,
    env: {},
    flags: { port: '0', ...(host === null ? {} : { address: `http://${host}:8177` }) },
  }).settings;

async function groupIn(folder: string, name: string, station: string): Promise<string> {
  const group = await openOwnGroup(folder);
  const text = `group: { name: ${name}, zone: America/Halifax }\nstations: [{ id: ${station} }]\n`;
  await group.applySeason(text, 'season.yaml', 'tests');
  await group.close();
  await new Accounts(folder, 30).add('Coral', 'coordinator', `${name}-password`, 'tests');
  return folder;
}

beforeAll(async () => {
  const root = scratchFolder();
  north = await groupIn(join(root, 'north'), 'Northwater', 'cedar');
  south = await groupIn(join(root, 'south'), 'Southwater', 'maple');
  const nextDay = Date.now() + 86_400_000;
  northToken = (await new Accounts(north, 30).addToken('R', 'reader', nextDay, 'Coral')).token;
  const places = [
    { folder: north, settings: settingsOf(north, NORTH) },
    { folder: south, settings: settingsOf(south, SOUTH) },
  ];
  serving = await serveGroups(places, settingsOf(north, null), { log: pino({ level: 'silent' }) });
}, 60_000);
afterAll(() => serving.close());

interface Answer {
  readonly status: number;
  readonly text: string;
  readonly cookies: readonly string[];
}

/** A browser's request: fetch would not let the host name be chosen. */
function ask(host: string, path: string, headers: Record<string, string> = {}, body = ''): Promise<Answer> {
  return new Promise((resolve, reject) => {
    const sent = request(
      {
        port: serving.port,
        path,
        method: body === '' ? 'GET' : 'POST',
        headers: { Host: `${host}:8177`, 'Content-Length': Buffer.byteLength(body), ...headers },
      },
      (answer) => {
        let text = '';
        answer.setEncoding('utf8').on('data', (chunk: string) => (text += chunk));
        answer.on('end', () =>
          resolve({
            status: answer.statusCode ?? 0,
            text,
            cookies: (answer.headers['set-cookie'] ?? []).map((cookie) => cookie.split(';')[0] ?? ''),
          }),
        );
      },
    );
    sent.on('error', reject);
    sent.end(body);
  });
}

/** Signs in by the form, as a person would; the cookies of the session. */
async function signIn(host: string, password: string): Promise<Answer> {
  const form = await ask(host, '/sign-in');
  const csrf = /name="csrf" value="([^"]+)"/.exec(form.text)?.[1] ?? '';
  return ask(
    host,
    '/sign-in',
    {
      Cookie: form.cookies.join('; '),
      'Content-Type': 'application/x-www-form-urlencoded',
      'Sec-Fetch-Site': 'same-origin',
    },
    new URLSearchParams({ csrf, name: 'Coral', password }).toString(),
  );
}

const sessionOf = ({ cookies }: Answer) =>
  cookies.find((cookie) => cookie.startsWith('underice_session=')) ?? '';

describe('two groups of one service', () => {
  it('each answer under their own host name, with their own accounts', async () => {
    expect(serving.groups.map(({ address }) => address)).toEqual([
      `http://${NORTH}:8177`,
      `http://${SOUTH}:8177`,
    ]);
    const [here, there] = [
      await signIn(NORTH, 'Northwater-password'),
      await signIn(SOUTH, 'Southwater-password'),
    ];
    const stations = (host: string, session: string) => ask(host, '/api/v1/stations', { Cookie: session });
    const one = await stations(NORTH, sessionOf(here));
    const other = await stations(SOUTH, sessionOf(there));
    expect([one.status, other.status]).toEqual([200, 200]);
    expect(one.text).toContain('cedar');
    expect(one.text).not.toContain('maple');
    expect(other.text).toContain('maple');
    expect(other.text).not.toContain('cedar');
  });

  it('know nobody of each other: neither a password, nor a session, nor the place of a form', async () => {
    expect(sessionOf(await signIn(SOUTH, 'Northwater-password'))).toBe('');
    const session = sessionOf(await signIn(NORTH, 'Northwater-password'));
    expect(session).not.toBe('');
    expect((await ask(SOUTH, '/api/v1/stations', { Cookie: session })).status).toBe(401);
    const page = await ask(NORTH, '/editing', { Cookie: session });
    const csrf = /name="csrf" value="([^"]+)"/.exec(page.text)?.[1] ?? '';
    const forged = await ask(
      SOUTH,
      '/sign-in',
      {
        Cookie: session,
        'Content-Type': 'application/x-www-form-urlencoded',
        'Sec-Fetch-Site': 'same-origin',
      },
      new URLSearchParams({ csrf, name: 'Coral', password: 'Southwater-password' }).toString(),
    );
    expect(forged.status).toBe(403);
  });

  it('a token of one is nobody’s at the other', async () => {
    const headers = { Authorization: `Bearer ${northToken}` };
    expect((await ask(NORTH, '/api/v1/stations', headers)).status).toBe(200);
    expect((await ask(SOUTH, '/api/v1/stations', headers)).status).toBe(401);
  });

  it('under no other name anything is answered but that it runs', async () => {
    for (const host of ['127.0.0.1', 'localhost', 'elsewhere.example']) {
      expect((await ask(host, '/')).status).toBe(421);
      expect((await ask(host, '/healthz')).text).toBe('{"status":"ok"}');
      expect((await ask(host, '/owner/hello')).status).toBe(401);
    }
  });

  it('commands in either folder go through the service to their own group', async () => {
    for (const [folder, id] of [
      [north, 'cedar'],
      [south, 'maple'],
    ] as const) {
      const group = await openGroup(folder);
      expect((await group.stations()).map(({ station }) => station)).toEqual([id]);
      await group.close();
    }
  });

  it.each([
    [null, 'http-group-no-address'],
    [NORTH, 'http-group-same-host'],
  ])('are refused where the second’s host is %s', async (host, code) => {
    const places = [
      { folder: north, settings: settingsOf(north, NORTH) },
      { folder: south, settings: settingsOf(south, host) },
    ];
    const refused = serveGroups(places, settingsOf(north, null), { log: pino({ level: 'silent' }) });
    await expect(refused).rejects.toMatchObject({ remark: { code } });
  });
});
