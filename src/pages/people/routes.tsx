import { type Context, Hono } from 'hono';
import type { Environment } from '../../http/environment.js';
import { HttpRefused } from '../../http/refused.js';
import { isRefusal, sayRefusalOnPage } from '../../words/refusals.js';
import { viewOf } from '../view.js';
import { AccountsPage, type Invited } from './accounts.js';
import { AuditPage } from './audit.js';
import { roleNamed } from './roles.js';
import { TokensPage } from './tokens.js';

const DAY = 86_400_000;
const ENTRIES = 200;
const MOST_ENTRIES = 5000;

/** Accounts, invitations, tokens and what happened: a coordinator's pages. */
export function peopleRoutes(): Hono<Environment> {
  return new Hono<Environment>()
    .get('/accounts', async (c) => c.html(await accountsPage(c)))
    .post('/accounts', (c) =>
      accountsChanged(c, ({ accounts, form, person }) =>
        accounts.add(form.field('name'), roleNamed(form.field('role')), form.field('password'), person.name),
      ),
    )
    .post('/accounts/invitations', async (c) => {
      const { accounts, form, person, base } = c.var;
      const role = roleNamed(form.field('role'));
      const { secret, ends } = await accounts.invite(role, person.name);
      return c.html(await accountsPage(c, { invited: { link: `${base}/invitation/${secret}`, role, ends } }));
    })
    .post('/accounts/invitations/:id/end', (c) =>
      accountsChanged(c, ({ accounts, person }) => accounts.endInvitation(c.req.param('id'), person.name)),
    )
    .get('/accounts/tokens', async (c) => c.html(await tokensPage(c)))
    .post('/accounts/tokens', makeToken)
    .post('/accounts/tokens/:id/end', async (c) => {
      await c.var.accounts.endToken(c.req.param('id'), c.var.person.name);
      return c.redirect('/accounts/tokens', 303);
    })
    .get('/accounts/audit', async (c) => {
      const asked = Number(c.req.query('entries') ?? ENTRIES);
      const most = Math.min(MOST_ENTRIES, Number.isInteger(asked) && asked > 0 ? asked : ENTRIES);
      const entries = await c.var.accounts.audit.list(most);
      const older =
        entries.length < most || most >= MOST_ENTRIES ? null : `/accounts/audit?entries=${most * 5}`;
      const { group } = await c.var.group.season();
      return c.html(<AuditPage view={await viewOf(c)} entries={entries} zone={group.zone} older={older} />);
    })
    .post('/accounts/:name/role', (c) =>
      accountsChanged(c, ({ accounts, form, person }) =>
        accounts.setRole(c.req.param('name'), roleNamed(form.field('role')), person.name),
      ),
    )
    .post('/accounts/:name/password', (c) =>
      accountsChanged(c, ({ accounts, form, person }) =>
        accounts.setPassword(c.req.param('name'), form.field('password'), person.name),
      ),
    )
    .post('/accounts/:name/sign-out', (c) =>
      accountsChanged(c, ({ accounts, person }) => accounts.endSessions(c.req.param('name'), person.name)),
    )
    .post('/accounts/:name/remove', (c) =>
      accountsChanged(c, ({ accounts, person }) => accounts.remove(c.req.param('name'), person.name)),
    );
}

/** Does it and shows the accounts; what is refused is said on the same page. */
async function accountsChanged(
  c: Context<Environment>,
  change: (asked: Environment['Variables']) => Promise<void>,
) {
  try {
    await change(c.var);
  } catch (error) {
    if (!(error instanceof HttpRefused)) throw error;
    const refusal = sayRefusalOnPage(c.var.language, error);
    return c.html(await accountsPage(c, { refusal }), error.status === 409 ? 409 : 422);
  }
  return c.redirect('/accounts', 303);
}

async function accountsPage(
  c: Context<Environment>,
  said: { readonly invited?: Invited; readonly refusal?: string } = {},
) {
  const { accounts } = c.var;
  return (
    <AccountsPage
      view={{ ...(await viewOf(c)), here: '/accounts' }}
      accounts={accounts.list()}
      sessions={(name) => accounts.sessions(name).length}
      invitations={accounts.invitations()}
      {...said}
    />
  );
}

async function makeToken(c: Context<Environment>) {
  const { accounts, form, person, language } = c.var;
  const name = form.field('name').trim();
  try {
    const ends = Date.parse(`${form.field('ends')}T23:59:59Z`);
    const { token } = await accounts.addToken(name, roleNamed(form.field('role')), ends, person.name);
    return c.html(await tokensPage(c, { made: { name, token } }));
  } catch (error) {
    if (!isRefusal(error)) throw error;
    return c.html(await tokensPage(c, { refusal: sayRefusalOnPage(language, error) }), 422);
  }
}

async function tokensPage(
  c: Context<Environment>,
  said: { readonly made?: { readonly name: string; readonly token: string }; readonly refusal?: string } = {},
) {
  // What is over is over by the clock, whatever day the pages are shown at.
  const now = Math.floor(Date.now() / DAY) * DAY;
  return <TokensPage view={await viewOf(c)} tokens={c.var.accounts.tokens()} now={now} {...said} />;
}
