import { createRoute, z } from '@hono/zod-openapi';
import { type Recipient, statedSchema } from '../../messages/index.js';
import { deliveryRows, feedLines } from '../../pages/messages/lists.js';
import { isoInstant } from '../../words/index.js';
import type { Environment } from '../environment.js';
import { HttpRefused } from '../refused.js';
import { answers, apiPart, refusals, refuses } from './routing.js';

const json = <Schema extends z.ZodType>(schema: Schema) => ({
  body: { content: { 'application/json': { schema } }, required: true },
});
const instant = z.string().nullable();
const personId = z.object({ person: z.string().max(40) });
const unknownPerson = refuses('There is no such person');

const person = statedSchema
  .extend({
    id: z.string(),
    secret: z.string().openapi({ description: 'Signs what goes to the webhook (HMAC-SHA256)' }),
    unsubscribed: instant,
  })
  .openapi('Person');

const delivery = z
  .object({
    at: z.string(),
    to: z.string().nullable(),
    subject: z.string(),
    by: z.enum(['email', 'webhook', 'mailbox', 'none']),
    state: z.enum(['waiting', 'sending', 'delivered', 'failed', 'given-up', 'no-address', 'unsubscribed']),
    tries: z.number().int(),
    next: instant,
    answer: z.string().nullable().openapi({ description: 'What was answered last, in a sentence' }),
    seenBy: z.string().nullable(),
  })
  .openapi('Delivery');

const feed = z
  .object({
    feed: z.string(),
    from: z.string(),
    state: z.enum(['never', 'fresh', 'unchanged', 'refused', 'failing']),
    answer: z.string().nullable(),
    fresh: instant,
    tried: instant,
    next: instant,
  })
  .openapi('Feed');

const reading = z
  .object({ at: z.iso.datetime({ offset: true }), celsius: z.number().min(-60).max(60) })
  .strict();

/** Messages told where nothing is said of how many. */
export const USUAL_LIMIT = 200;

const deliveriesRoute = createRoute({
  method: 'get',
  path: '/messages',
  summary: 'Every message, by what way it went, its state and the last answer, newest first',
  request: { query: z.object({ limit: z.coerce.number().int().min(1).max(1000).default(USUAL_LIMIT) }) },
  responses: { 200: answers(z.object({ deliveries: z.array(delivery) }), 'The deliveries'), ...refusals },
});

const peopleRoute = createRoute({
  method: 'get',
  path: '/people',
  summary: 'Who is told what',
  responses: { 200: answers(z.object({ people: z.array(person) }), 'The people'), ...refusals },
});

const addRoute = createRoute({
  method: 'post',
  path: '/people',
  summary: 'Write down a person to be told',
  request: json(statedSchema.strict()),
  responses: { 201: answers(person, 'Written down'), ...refusals },
});

const changeRoute = createRoute({
  method: 'put',
  path: '/people/{person}',
  summary: 'Change what is stated of a person; one who unsubscribed is subscribed again',
  request: { params: personId, ...json(statedSchema.strict()) },
  responses: { 200: answers(person, 'Changed'), 404: unknownPerson, ...refusals },
});

const removeRoute = createRoute({
  method: 'delete',
  path: '/people/{person}',
  summary: 'Take a person away: nothing more goes to them',
  request: { params: personId },
  responses: { 204: { description: 'Taken away' }, 404: unknownPerson, ...refusals },
});

const testRoute = createRoute({
  method: 'post',
  path: '/people/{person}/test',
  summary: 'Send a person a test message',
  request: { params: personId },
  responses: { 202: { description: 'It is on its way: see /messages' }, 404: unknownPerson, ...refusals },
});

const feedsRoute = createRoute({
  method: 'get',
  path: '/feeds',
  summary: 'Where the feeds stand, and what each answered last',
  responses: { 200: answers(z.object({ feeds: z.array(feed) }), 'The feeds'), ...refusals },
});

const pushRoute = createRoute({
  method: 'post',
  path: '/readings',
  summary: 'Send readings of a station; sent again they change nothing',
  request: json(
    z
      .object({ station: z.string().min(1).max(100), readings: z.array(reading).min(1).max(100_000) })
      .strict(),
  ),
  responses: {
    200: answers(
      z.object({
        station: z.string(),
        fresh: z.number().int().openapi({ description: 'Readings that stood nowhere before' }),
        load: z.string().nullable(),
      }),
      'They stand',
    ),
    ...refusals,
  },
});

/** Every way of every message as other programs read it, newest first. */
export async function deliveriesOf({ desk, language }: Environment['Variables'], limit: number) {
  const rows = deliveryRows(await desk.outbox.messages(limit), desk.recipients, language);
  return rows.map(({ at, channel, next, state, ...row }) => ({
    ...row,
    at: isoInstant(at),
    by: channel,
    state,
    next: state === 'waiting' ? isoInstant(next) : null,
  }));
}

/** Messages, who gets them, feeds, and readings that stations send. */
export function messageRoutes() {
  return apiPart()
    .openapi(deliveriesRoute, async (c) =>
      c.json({ deliveries: await deliveriesOf(c.var, c.req.valid('query').limit) }, 200),
    )
    .openapi(peopleRoute, (c) => c.json({ people: c.var.desk.recipients.list().map(shown) }, 200))
    .openapi(addRoute, (c) => {
      const added = c.var.desk.recipients.add(c.req.valid('json'));
      c.var.desk.wake();
      return c.json(shown(added), 201);
    })
    .openapi(changeRoute, (c) => {
      const { id } = known(c.var.desk.recipients.find(c.req.valid('param').person));
      return c.json(shown(c.var.desk.recipients.change(id, c.req.valid('json'))), 200);
    })
    .openapi(removeRoute, async (c) => {
      const { desk } = c.var;
      const { id } = known(desk.recipients.find(c.req.valid('param').person));
      desk.recipients.remove(id);
      await desk.outbox.leave(id, desk.now());
      return c.body(null, 204);
    })
    .openapi(testRoute, async (c) => {
      const { desk } = c.var;
      await desk.messages.test(known(desk.recipients.find(c.req.valid('param').person)), desk.now());
      desk.wake();
      return c.body(null, 202);
    })
    .openapi(feedsRoute, async (c) => {
      const lines = feedLines(await c.var.desk.feeds.list(), c.var.language);
      const feeds = lines.map(({ id, from, row, answer }) => ({
        feed: id,
        from: from.split('?')[0] ?? from,
        state: row?.state ?? ('never' as const),
        answer,
        fresh: maybe(row?.fresh),
        tried: maybe(row?.tried),
        next: maybe(row?.next),
      }));
      return c.json({ feeds }, 200);
    })
    .openapi(pushRoute, async (c) => {
      const { desk, person: who } = c.var;
      const { station, readings } = c.req.valid('json');
      const given = readings.map(({ at, celsius }) => ({ at: Date.parse(at), celsius }));
      const { fresh, load } = await desk.feeds.push(station, given, who.name, desk.now());
      return c.json({ station, fresh, load }, 200);
    });
}

function known(found: Recipient | null): Recipient {
  if (found === null)
    throw new HttpRefused(404, { code: 'http-not-found', with: { path: '/api/v1/people/…' } });
  return found;
}

/** Everything but the key to unsubscribe, which is that person's own. */
function shown({ token: _, unsubscribed, ...rest }: Recipient): z.infer<typeof person> {
  return { ...rest, unsubscribed: unsubscribed === null ? null : isoInstant(unsubscribed) };
}

function maybe(at: number | null | undefined): string | null {
  return at == null ? null : isoInstant(at);
}
