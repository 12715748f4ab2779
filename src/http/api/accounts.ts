import { createRoute, z } from '@hono/zod-openapi';
import type { Settings } from '../../settings/index.js';
import { isoInstant } from '../../words/index.js';
import { roles } from '../roles.js';
import { answers, apiPart, refusals, refuses } from './routing.js';

const role = z.enum(roles).openapi('Role');
const name = z.string().min(1).max(60);
const account = z.object({ name: z.string(), role, made: z.string(), by: z.string() }).openapi('Account');
const token = z
  .object({ id: z.string(), name: z.string(), role, ends: z.string(), made: z.string(), by: z.string() })
  .openapi('Token');
const invitation = z
  .object({ id: z.string(), role, made: z.string(), ends: z.string(), by: z.string() })
  .openapi('Invitation');
const session = z
  .object({ id: z.string(), since: z.string(), ends: z.string(), agent: z.string() })
  .openapi('Session');
const json = <Schema extends z.ZodType>(schema: Schema) => ({
  body: { content: { 'application/json': { schema } }, required: true },
});
const lastOne = refuses('The only coordinator stays one');
const unknown = refuses('There is no such account');

const accountsRoute = createRoute({
  method: 'get',
  path: '/accounts',
  summary: 'Who has an account',
  responses: { 200: answers(z.object({ accounts: z.array(account) }), 'The accounts'), ...refusals },
});

const addRoute = createRoute({
  method: 'post',
  path: '/accounts',
  summary: 'Make an account',
  request: json(z.object({ name, role, password: z.string().max(1000) }).strict()),
  responses: { 204: { description: 'Made' }, 409: refuses('The name is taken'), ...refusals },
});

const changeRoute = createRoute({
  method: 'patch',
  path: '/accounts/{name}',
  summary: 'Change a role or set a password; a new password ends every session of the account',
  request: {
    params: z.object({ name }),
    ...json(z.object({ role: role.optional(), password: z.string().max(1000).optional() }).strict()),
  },
  responses: { 204: { description: 'Changed' }, 404: unknown, 409: lastOne, ...refusals },
});

const removeRoute = createRoute({
  method: 'delete',
  path: '/accounts/{name}',
  summary: 'Take an account away, and end its sessions',
  request: { params: z.object({ name }) },
  responses: { 204: { description: 'Taken away' }, 404: unknown, 409: lastOne, ...refusals },
});

const tokensRoute = createRoute({
  method: 'get',
  path: '/tokens',
  summary: 'API tokens: for whom, which role, until when',
  responses: { 200: answers(z.object({ tokens: z.array(token) }), 'The tokens'), ...refusals },
});

const addTokenRoute = createRoute({
  method: 'post',
  path: '/tokens',
  summary: 'Make an API token; it is shown this once',
  request: json(z.object({ name, role, ends: z.iso.date() }).strict()),
  responses: { 201: answers(z.object({ id: z.string(), token: z.string() }), 'The token'), ...refusals },
});

const endTokenRoute = createRoute({
  method: 'delete',
  path: '/tokens/{id}',
  summary: 'End an API token',
  request: { params: z.object({ id: z.string().max(40) }) },
  responses: { 204: { description: 'Ended' }, ...refusals },
});

const inviteRoute = createRoute({
  method: 'post',
  path: '/invitations',
  summary: 'A link by which somebody makes their own account',
  request: json(z.object({ role }).strict()),
  responses: { 201: answers(z.object({ link: z.string(), ends: z.string() }), 'The link'), ...refusals },
});

const invitationsRoute = createRoute({
  method: 'get',
  path: '/invitations',
  summary: 'Invitations that nobody has used yet; their links are not told again',
  responses: {
    200: answers(z.object({ invitations: z.array(invitation) }), 'The invitations'),
    ...refusals,
  },
});

const endInvitationRoute = createRoute({
  method: 'delete',
  path: '/invitations/{id}',
  summary: 'End an invitation: its link leads nowhere',
  request: { params: z.object({ id: z.string().max(40) }) },
  responses: { 204: { description: 'Ended' }, ...refusals },
});

const sessionsRoute = createRoute({
  method: 'get',
  path: '/sessions',
  summary: 'Where you yourself are signed in',
  responses: { 200: answers(z.object({ sessions: z.array(session) }), 'The sessions'), ...refusals },
});

const endSessionRoute = createRoute({
  method: 'delete',
  path: '/sessions/{id}',
  summary: 'Sign yourself out there; a session of somebody else is left as it is',
  request: { params: z.object({ id: z.string().max(100) }) },
  responses: { 204: { description: 'Ended' }, ...refusals },
});

const endSessionsRoute = createRoute({
  method: 'delete',
  path: '/accounts/{name}/sessions',
  summary: 'Sign somebody out everywhere',
  request: { params: z.object({ name }) },
  responses: { 204: { description: 'Signed out' }, 404: unknown, ...refusals },
});

const auditRoute = createRoute({
  method: 'get',
  path: '/audit',
  summary: 'Who signed in, who was refused, who changed accounts; newest first',
  request: { query: z.object({ limit: z.coerce.number().int().min(1).max(5000).default(200) }) },
  responses: {
    200: answers(
      z.object({
        entries: z
          .array(z.object({ at: z.string(), who: z.string(), did: z.string(), what: z.string() }))
          .readonly(),
      }),
      'The entries',
    ),
    ...refusals,
  },
});

export function accountRoutes(settings: Settings) {
  return apiPart()
    .openapi(accountsRoute, (c) => {
      const accounts = c.var.accounts.list().map((row) => ({ ...row, made: isoInstant(row.made) }));
      return c.json({ accounts }, 200);
    })
    .openapi(addRoute, async (c) => {
      const { name, role, password } = c.req.valid('json');
      await c.var.accounts.add(name, role, password, c.var.person.name);
      return c.body(null, 204);
    })
    .openapi(changeRoute, async (c) => {
      const { name } = c.req.valid('param');
      const { role, password } = c.req.valid('json');
      if (role !== undefined) await c.var.accounts.setRole(name, role, c.var.person.name);
      if (password !== undefined) await c.var.accounts.setPassword(name, password, c.var.person.name);
      return c.body(null, 204);
    })
    .openapi(removeRoute, async (c) => {
      await c.var.accounts.remove(c.req.valid('param').name, c.var.person.name);
      return c.body(null, 204);
    })
    .openapi(tokensRoute, (c) => {
      const tokens = c.var.accounts
        .tokens()
        .map((row) => ({ ...row, ends: isoInstant(row.ends), made: isoInstant(row.made) }));
      return c.json({ tokens }, 200);
    })
    .openapi(addTokenRoute, async (c) => {
      const { name, role, ends } = c.req.valid('json');
      const end = Date.parse(`${ends}T23:59:59Z`);
      return c.json(await c.var.accounts.addToken(name, role, end, c.var.person.name), 201);
    })
    .openapi(endTokenRoute, async (c) => {
      await c.var.accounts.endToken(c.req.valid('param').id, c.var.person.name);
      return c.body(null, 204);
    })
    .openapi(inviteRoute, async (c) => {
      const { secret, ends } = await c.var.accounts.invite(c.req.valid('json').role, c.var.person.name);
      const base = settings.address ?? new URL(c.req.url).origin;
      return c.json({ link: `${base}/invitation/${secret}`, ends: isoInstant(ends) }, 201);
    })
    .openapi(invitationsRoute, (c) => {
      const invitations = c.var.accounts
        .invitations()
        .map((row) => ({ ...row, made: isoInstant(row.made), ends: isoInstant(row.ends) }));
      return c.json({ invitations }, 200);
    })
    .openapi(endInvitationRoute, async (c) => {
      await c.var.accounts.endInvitation(c.req.valid('param').id, c.var.person.name);
      return c.body(null, 204);
    })
    .openapi(sessionsRoute, (c) => {
      const own = c.var.person.by === 'session' ? c.var.accounts.sessions(c.var.person.name) : [];
      const sessions = own.map(({ id, since, ends, agent }) => ({
        id,
        since: isoInstant(since),
        ends: isoInstant(ends),
        agent,
      }));
      return c.json({ sessions }, 200);
    })
    .openapi(endSessionRoute, async (c) => {
      const { person, accounts } = c.var;
      if (person.by === 'session') await accounts.endSession(person.name, c.req.valid('param').id);
      return c.body(null, 204);
    })
    .openapi(endSessionsRoute, async (c) => {
      await c.var.accounts.endSessions(c.req.valid('param').name, c.var.person.name);
      return c.body(null, 204);
    })
    .openapi(auditRoute, async (c) =>
      c.json({ entries: await c.var.accounts.audit.list(c.req.valid('query').limit) }, 200),
    );
}
