import { randomBytes } from 'node:crypto';
import { getCookie, setCookie } from 'hono/cookie';
import { createMiddleware } from 'hono/factory';
import type { Settings } from '../../settings/index.js';
import type { Environment } from '../environment.js';
import { HttpRefused } from '../refused.js';
import { mayActAs, type Person, roleNeeded } from '../roles.js';
import type { Accounts } from '../sign-in/accounts.js';
import { isHttps } from './place.js';

const VISIT = 'underice_visit';
export const SESSION = 'underice_session';

/** What is answered without knowing who asks. */
const PUBLIC =
  /^\/(healthz$|sign-in(\/|$)|invitation\/|calendar\/|assets\/|letters\/|unsubscribe\/|language\/|favicon\.ico$|owner\/)/;

const NOBODY: Person = { name: '', role: 'reader', by: 'nobody' };

/** Who asks, what the csrf field of their forms must say, and whether they may do it. */
export function knowPerson(accounts: Accounts, settings: Settings) {
  return createMiddleware<Environment>(async (c, next) => {
    const session = getCookie(c, SESSION) ?? null;
    const visit = session ?? getCookie(c, VISIT) ?? newVisit();
    if (session === null && getCookie(c, VISIT) === undefined && !c.req.path.startsWith('/api/'))
      setCookie(c, VISIT, visit, { httpOnly: true, sameSite: 'Lax', path: '/', secure: isHttps(settings) });
    c.set('csrf', accounts.sign(`form ${visit}`));
    const person = who(accounts, c.req.header('Authorization'), session);
    c.set('person', person ?? NOBODY);
    if (!PUBLIC.test(c.req.path)) {
      if (person === null) throw new HttpRefused(401, { code: 'http-sign-in-first', with: {} });
      const needed = roleNeeded(c.req.method, c.req.path);
      if (!mayActAs(person.role, needed))
        throw new HttpRefused(403, { code: 'http-role', with: { role: person.role, needed } });
    }
    await next();
  });
}

/** @throws HttpRefused 401 where a token is shown that is none: it is not taken for a browser's request. */
function who(accounts: Accounts, authorization: string | undefined, session: string | null): Person | null {
  if (authorization !== undefined) {
    const token = /^Bearer ([\w-]{20,100})$/i.exec(authorization)?.[1];
    const person = token === undefined ? null : accounts.personOfToken(token);
    if (person === null) throw new HttpRefused(401, { code: 'http-token-not-known', with: {} });
    return person;
  }
  if (accounts.open) return { name: '-', role: 'coordinator', by: 'open' };
  return session === null ? null : accounts.personOfSession(session);
}

function newVisit(): string {
  return randomBytes(16).toString('base64url');
}
