import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import { afterAll } from 'vitest';
import { samplePath } from '../../sample-logs/plan.js';
import { sampleWinterDay } from '../../src/group/sample-season.js';
import { type Serving, serve } from '../../src/http/serve.js';
import { Accounts } from '../../src/http/sign-in/accounts.js';
import { readSettings, type Setting } from '../../src/settings/index.js';
import { copySampleSeason } from './sample-copy.js';

export type Flags = Partial<Record<Setting, string>>;

/** A folder of this test file's own, thrown away when its tests are done. */
export function scratchFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'underice-http-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A data folder with the invented sample season in it. */
export async function sampleFolder(): Promise<string> {
  const folder = join(scratchFolder(), 'season');
  await copySampleSeason(folder);
  return folder;
}

/** The real service on a free port of loopback, ended after the tests; it stands at the sample season's winter day. */
export async function service(
  folder: string,
  flags: Flags = {},
  standingAt: number | null = sampleWinterDay,
  mailbox = false,
): Promise<Serving> {
  const { settings } = readSettings({ folder, file: null, env: {}, flags: { port: '0', ...flags } });
  const serving = await serve(folder, settings, {
    standingAt,
    mailbox,
    log: pino({ level: 'silent' }),
  });
  afterAll(() => serving.close());
  return serving;
}

/** Accounts for three roles, made before the service starts; every password is "<name>-password". */
export async function threeAccounts(folder: string): Promise<void> {
  const accounts = new Accounts(folder, 30);
  await accounts.add('Coral', 'coordinator', 'Coral-password', 'tests');
  await accounts.add('Crewe', 'crew', 'Crewe-password', 'tests');
  await accounts.add('Reade', 'reader', 'Reade-password', 'tests');
}

/** The sample season served to three accounts of three roles, each signed in: their sessions by name. */
export async function threeSignedIn(): Promise<{
  readonly at: string;
  readonly folder: string;
  readonly sessions: Readonly<Record<'Coral' | 'Crewe' | 'Reade', string>>;
}> {
  const folder = await sampleFolder();
  await threeAccounts(folder);
  const at = (await service(folder)).address;
  const [Coral, Crewe, Reade] = [
    await signIn(at, folder, 'Coral'),
    await signIn(at, folder, 'Crewe'),
    await signIn(at, folder, 'Reade'),
  ];
  return { at, folder, sessions: { Coral, Crewe, Reade } };
}

export interface Said {
  readonly status: number;
  readonly headers: Headers;
  readonly text: string;
  readonly body: Record<string, unknown>;
}

/** One request, its answer whole. Redirects are not followed. */
export async function ask(address: string, path: string, init: RequestInit = {}): Promise<Said> {
  const response = await fetch(`${address}${path}`, { redirect: 'manual', ...init });
  const text = await response.text();
  const json = response.headers.get('Content-Type')?.includes('json') === true;
  return { status: response.status, headers: response.headers, text, body: json ? JSON.parse(text) : {} };
}

/** Sends a body of a type. */
export function send(
  method: string,
  type: string,
  body: string | Uint8Array<ArrayBuffer>,
  headers: Record<string, string> = {},
): RequestInit {
  return { method, body, headers: { 'Content-Type': type, ...headers } };
}

export const json = (method: string, body: unknown, headers: Record<string, string> = {}): RequestInit =>
  send(method, 'application/json', JSON.stringify(body), headers);

/** The cookies an answer set, as a browser would send them back. */
export function cookiesOf(said: Said): string {
  return said.headers
    .getSetCookie()
    .map((cookie) => cookie.split(';')[0] ?? '')
    .join('; ');
}

export const sampleDownload = (file: string): string => samplePath(`downloads/${file}`);

export interface Visitor {
  readonly cookie: string;
  /** Posts a form as a page of the service would. */
  post(path: string, fields: Record<string, string>): Promise<Said>;
  get(path: string): Promise<Said>;
}

/** A browser that has the service open; its csrf field is what the service's pages would put into their forms. */
export function visitor(at: string, folder: string, session: string | null = null): Visitor {
  const cookie = session === null ? 'underice_visit=0123456789abcdef' : `underice_session=${session}`;
  const secret = session ?? '0123456789abcdef';
  const csrf = new Accounts(folder, 1).sign(`form ${secret}`);
  const headers = { Cookie: cookie, 'Sec-Fetch-Site': 'same-origin' };
  return {
    cookie,
    get: (path) => ask(at, path, { headers }),
    post: (path, fields) => {
      const body = new URLSearchParams({ csrf, ...fields }).toString();
      return ask(at, path, send('POST', 'application/x-www-form-urlencoded', body, headers));
    },
  };
}

/** Signs in as a person would; the session's secret. */
export async function signIn(at: string, folder: string, name: string): Promise<string> {
  const said = await visitor(at, folder).post('/sign-in', { name, password: `${name}-password` });
  const session = /underice_session=([\w-]+)/.exec(said.headers.getSetCookie().join('\n'))?.[1];
  if (session === undefined) throw new Error(`not signed in: ${said.status} ${said.text}`);
  return session;
}
