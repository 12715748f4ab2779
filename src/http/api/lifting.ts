import { createRoute, z } from '@hono/zod-openapi';
import {
  approvePlan,
  enterPutBack,
  enterTally,
  liftingAnswer,
  liftingState,
  outcomes,
  outcomesAnswer,
  talliesAnswer,
} from '../../lifting/index.js';
import { isoDay } from '../../words/index.js';
import {
  liftingSchema,
  outcomesSchema,
  putBackEntered,
  talliesSchema,
  tallyEntered,
} from './lifting-schemas.js';
import { answers, apiPart, dateQuery, dayOf, refusals, refuses } from './routing.js';

const unknownBox = refuses('The season has no such box');
const box = z.object({ box: z.string().max(100) });
const kept = answers(
  z.object({ kept: z.boolean() }).openapi('Kept', { description: 'false: this entry was there already' }),
  'It is there, once',
);

const liftingRoute = createRoute({
  method: 'get',
  path: '/lifting',
  summary: 'When the boxes may come out: every candidate day, the recommended ones, what others cost',
  request: { query: z.object({ as_of: dateQuery }) },
  responses: { 200: answers(liftingSchema, 'The plan'), ...refusals },
});

const approveRoute = createRoute({
  method: 'post',
  path: '/lifting/approve',
  summary: 'Approve the plan as it stands; with `days`, only if those are still its days',
  request: {
    body: {
      content: {
        'application/json': { schema: z.object({ days: z.array(z.iso.date()).max(366).optional() }) },
      },
      required: false,
    },
  },
  responses: { 200: answers(liftingSchema, 'The approved plan'), ...refusals },
});

const outcomeRoute = createRoute({
  method: 'get',
  path: '/lifting/outcome',
  summary: 'What was found at lifting, beside what the forecast had said of it',
  request: { query: z.object({ as_of: dateQuery }) },
  responses: { 200: answers(outcomesSchema, 'The comparison'), ...refusals },
});

const talliesRoute = createRoute({
  method: 'get',
  path: '/tallies',
  summary: 'Every tally, and every box that was checked and put back',
  responses: { 200: answers(talliesSchema, 'The tallies'), ...refusals },
});

const tallyRoute = createRoute({
  method: 'post',
  path: '/boxes/{box}/tally',
  summary: 'Keep a tally of a lifted box; the same `entry` sent again is kept once',
  request: {
    params: box,
    body: { content: { 'application/json': { schema: tallyEntered } }, required: true },
  },
  responses: { 200: kept, 404: unknownBox, ...refusals },
});

const putBackRoute = createRoute({
  method: 'post',
  path: '/boxes/{box}/put-back',
  summary: 'Keep that a box was checked and put back: its windows and the plan follow at once',
  request: {
    params: box,
    body: { content: { 'application/json': { schema: putBackEntered } }, required: true },
  },
  responses: { 200: kept, 404: unknownBox, ...refusals },
});

export function liftingRoutes() {
  return apiPart()
    .openapi(liftingRoute, async (c) => {
      const state = await liftingState(c.var.group, dayOf(c.req.valid('query').as_of));
      return c.json(liftingAnswer(state, c.var.language), 200);
    })
    .openapi(approveRoute, async (c) => {
      const { group, person, language } = c.var;
      await approvePlan(group, person.name, Date.now(), c.req.valid('json')?.days ?? null);
      return c.json(liftingAnswer(await liftingState(group, null), language), 200);
    })
    .openapi(outcomeRoute, async (c) => {
      const found = await outcomes(c.var.group, dayOf(c.req.valid('query').as_of));
      return c.json(outcomesAnswer(found, c.var.language), 200);
    })
    .openapi(talliesRoute, async (c) =>
      c.json(talliesAnswer(await c.var.group.season(), c.var.language), 200),
    )
    .openapi(tallyRoute, async (c) => {
      const { when = isoDay(c.var.today), ...rest } = c.req.valid('json');
      const entered = { box: c.req.valid('param').box, when, ...rest };
      const { fresh } = await enterTally(c.var.group, entered, c.var.person.name);
      return c.json({ kept: fresh }, 200);
    })
    .openapi(putBackRoute, async (c) => {
      const { when = isoDay(c.var.today), ...rest } = c.req.valid('json');
      const entered = { box: c.req.valid('param').box, when, ...rest };
      const { fresh } = await enterPutBack(c.var.group, entered, c.var.person.name);
      return c.json({ kept: fresh }, 200);
    });
}
