import { Hono } from 'hono';
import { compress } from 'hono/compress';
import { setCookie } from 'hono/cookie';
import type { Logger } from 'pino';
import type { Group } from '../group/index.js';
import { errorPage } from '../pages/error-page.js';
import { pages } from '../pages/index.js';
import type { Settings, SettingsInForce } from '../settings/index.js';
import { api } from './api/index.js';
import { calendarRoutes } from './calendar/routes.js';
import type { Desk } from './desk.js';
import type { Environment } from './environment.js';
import { safeHeaders } from './middleware/headers.js';
import { keepPages } from './middleware/kept-pages.js';
import { chooseLanguage, known, LANGUAGE_COOKIE } from './middleware/language.js';
import { logRequests } from './middleware/log.js';
import { packWhole } from './middleware/packed.js';
import { knowPerson } from './middleware/person.js';
import { isHttps, ownName } from './middleware/place.js';
import { takePosts } from './middleware/posted.js';
import { spacePages } from './middleware/spaced.js';
import { ownPath } from './own-path.js';
import { ownerRoutes } from './owner.js';
import { answerError } from './problem.js';
import type { Spool } from './received/spool.js';
import { HttpRefused } from './refused.js';
import type { Accounts } from './sign-in/accounts.js';
import { signInRoutes } from './sign-in/routes.js';

/** What the service stands on: one data folder's group, and what lies beside it. */
export interface Service {
  readonly group: Group;
  /** Counts what was written to it. */
  readonly revision: () => number;
  readonly settings: Settings;
  /** Where each came from; null where nobody said. */
  readonly origins: SettingsInForce['origins'] | null;
  readonly accounts: Accounts;
  readonly spool: Spool;
  /** Messages and feeds. */
  readonly desk: Desk;
  /** What commands on this machine send, and the token they show; null before the service is announced. */
  readonly commands: { readonly spool: Spool; readonly token: () => string | null };
  readonly log: Logger;
}

/** The whole service: pages at the root, the API below /api/v1, the calendar, and who may see them. */
export function createApp(service: Service): Hono<Environment> {
  const { settings, accounts, log } = service;
  const app = new Hono<Environment>();
  const refuse = answerError(log, errorPage);
  app.onError(refuse);
  app.use(logRequests(log), compress(), packWhole());
  app.use(safeHeaders(isHttps(settings)), chooseLanguage(settings.language));
  app.use(async (c, next) => {
    c.set('group', service.group);
    c.set('spool', service.spool);
    c.set('accounts', accounts);
    c.set('desk', service.desk);
    c.set('settings', { settings, origins: service.origins });
    c.set('base', settings.address ?? new URL(c.req.url).origin);
    await next();
  });
  app.get('/healthz', (c) => c.json({ status: 'ok' }));
  app.route('/owner', ownerRoutes(service.group, service.commands.spool, service.commands.token));
  app.use(ownName(settings), knowPerson(accounts, settings), takePosts(settings));
  app.use(async (c, next) => {
    c.set('today', await service.group.today());
    await next();
  });
  app.get('/language/:language', (c) => {
    const language = known(c.req.param('language'));
    if (language !== null)
      setCookie(c, LANGUAGE_COOKIE, language, {
        path: '/',
        maxAge: 34_560_000,
        sameSite: 'Lax',
        httpOnly: true,
        secure: isHttps(settings),
      });
    return c.redirect(ownPath(c.req.query('to')), 303);
  });
  app.route('/api/v1', api(settings));
  app.get('/api/v1/', (c) => c.redirect('/api/v1', 308));
  app.route('/', calendarRoutes());
  app.route('/', signInRoutes(settings));
  app.use(keepPages(service.revision), spacePages());
  app.route('/', pages());
  app.notFound((c) => {
    const path = c.req.path.slice(0, 200);
    return refuse(new HttpRefused(404, { code: 'http-not-found', with: { path } }), c);
  });
  return app;
}
