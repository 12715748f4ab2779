import { type Context, Hono } from 'hono';
import { deleteCookie, setCookie } from 'hono/cookie';
import { accountPage, invitationPage, signInPage } from '../../pages/sign-in/routes.js';
import type { Settings } from '../../settings/index.js';
import { sayRefusal } from '../../words/refusals.js';
import type { Environment } from '../environment.js';
import { SESSION } from '../middleware/person.js';
import { isHttps, remoteAddress } from '../middleware/place.js';
import { ownPath } from '../own-path.js';
import { statusOf, wantsPage } from '../problem.js';
import { HttpRefused } from '../refused.js';

/** What the forms of sign-in post; the pages themselves are with the others. */
export function signInRoutes(settings: Settings): Hono<Environment> {
  const begin = (c: Context<Environment>, secret: string) =>
    setCookie(c, SESSION, secret, {
      path: '/',
      httpOnly: true,
      sameSite: 'Lax',
      secure: isHttps(settings),
      maxAge: settings.sessionDays * 86_400,
    });
  const signIn = async (c: Context<Environment>, name: string, password: string) => {
    const from = { address: remoteAddress(c, settings), agent: c.req.header('User-Agent') ?? '' };
    begin(c, await c.var.accounts.signIn(name, password, from));
  };
  return new Hono<Environment>()
    .post('/sign-in', (c) => {
      const { form } = c.var;
      return orSaidOnPage(c, signInPage, async () => {
        await signIn(c, form.field('name'), form.field('password'));
        return ownPath(form.field('to'));
      });
    })
    .post('/invitation/:secret', (c) => {
      const { form, accounts } = c.var;
      const [name, password] = [form.field('name'), form.field('password')];
      return orSaidOnPage(c, invitationPage, async () => {
        await accounts.accept(c.req.param('secret'), name, password);
        await signIn(c, name, password);
        return '/';
      });
    })
    .post('/sign-out', async (c) => {
      const { person, accounts } = c.var;
      const secret = /(?:^|;\s*)underice_session=([\w-]+)/.exec(c.req.header('Cookie') ?? '')?.[1];
      if (secret !== undefined) await accounts.endSession(person.name, secret);
      deleteCookie(c, SESSION, { path: '/' });
      return c.redirect('/sign-in', 303);
    })
    .post('/account/sessions/:id/end', async (c) => {
      await c.var.accounts.endSession(c.var.person.name, c.req.param('id'));
      return c.redirect(ownPath(c.var.form.field('to')), 303);
    })
    .post('/account/password', (c) => {
      const { person, accounts, form } = c.var;
      return orSaidOnPage(c, accountPage, async () => {
        if (person.by !== 'session') throw new HttpRefused(401, { code: 'http-sign-in-first', with: {} });
        // Whoever finds a phone signed in does not thereby get the account.
        await accounts.checkPassword(person.name, form.field('old'), remoteAddress(c, settings));
        await accounts.setPassword(person.name, form.field('password'), person.name);
        await signIn(c, person.name, form.field('password'));
        return ownPath(form.field('to'));
      });
    });
}

type Shown = (c: Context<Environment>, refusal: string) => FrameOf | Promise<FrameOf>;
type FrameOf = ReturnType<typeof signInPage>;

/** Does it and goes on; to a person who is refused the form is shown again, with the reason. */
async function orSaidOnPage(c: Context<Environment>, shown: Shown, work: () => Promise<string>) {
  try {
    return c.redirect(await work(), 303);
  } catch (error) {
    // An invitation that is over has no form to be shown again.
    if (!(error instanceof HttpRefused) || error.status === 404 || !wantsPage(c)) throw error;
    for (const [name, value] of Object.entries(error.headers)) c.header(name, value);
    return c.html(await shown(c, sayRefusal(c.var.language, error)), statusOf(error.status));
  }
}
