import { createRoute, z } from '@hono/zod-openapi';
import { acceptCorrection, findingAnswer, overrule, withdrawRuling } from '../../quality/index.js';
import { verdicts } from '../../season/index.js';
import { answers, apiPart, refusals, refuses } from './routing.js';

const station = z.object({ station: z.string().max(100) });
const one = station.extend({ finding: z.string().max(100) });
const unknown = refuses('There is no such station or finding');

const findingSchema = z
  .object({
    id: z.string(),
    station: z.string(),
    quantity: z.string(),
    check: z.string().openapi({ example: 'frozen-in' }),
    from: z.iso.datetime(),
    to: z.iso.datetime(),
    flag: z.number().int().openapi({ description: 'QARTOD: 1 pass, 2 not evaluated, 3 suspect, 4 fail' }),
    explained: z.string(),
    source: z.string(),
    figures: z.record(z.string(), z.number()),
    offer: z
      .object({ quantity: z.string(), add: z.number(), course: z.string() })
      .nullable()
      .openapi({ description: 'A correction offered, in °C or seconds; applied only when it is accepted' }),
    ruling: z
      .object({ verdict: z.string(), reason: z.string(), by: z.string(), at: z.iso.datetime() })
      .nullable(),
  })
  .openapi('Finding');
const findings = answers(z.object({ findings: z.array(findingSchema) }), 'What the checks say, by time');

const listRoute = createRoute({
  method: 'get',
  path: '/stations/{station}/findings',
  summary: 'What the quality checks say of a station’s record, and what people ruled of it',
  request: { params: station },
  responses: { 200: findings, 404: unknown, ...refusals },
});

const ruleRoute = createRoute({
  method: 'post',
  path: '/stations/{station}/findings/{finding}/ruling',
  summary:
    'Overrule a finding with a reason; one ruling on the same stretch takes the place of the one before',
  request: {
    params: one,
    body: {
      content: {
        'application/json': {
          schema: z.object({ verdict: z.enum(verdicts), reason: z.string().min(1).max(1000) }),
        },
      },
      required: true,
    },
  },
  responses: { 200: findings, 404: unknown, ...refusals },
});

const withdrawRoute = createRoute({
  method: 'delete',
  path: '/stations/{station}/findings/{finding}/ruling',
  summary: 'Withdraw a ruling: the check’s word stands again',
  request: { params: one },
  responses: { 200: findings, 404: unknown, ...refusals },
});

const acceptRoute = createRoute({
  method: 'post',
  path: '/stations/{station}/findings/{finding}/accept',
  summary: 'Accept the correction a check offers, as the deployment’s own',
  request: { params: one },
  responses: { 200: findings, 404: unknown, ...refusals },
});

export function findingRoutes() {
  return apiPart()
    .openapi(listRoute, async (c) => {
      const found = await c.var.group.findings(c.req.valid('param').station);
      return c.json({ findings: found.map((each) => findingAnswer(each, c.var.language)) }, 200);
    })
    .openapi(ruleRoute, async (c) => {
      const { station: where, finding } = c.req.valid('param');
      const { group, person, language } = c.var;
      await overrule(group, where, finding, c.req.valid('json'), person.name, Date.now());
      const found = await group.findings(where);
      return c.json({ findings: found.map((each) => findingAnswer(each, language)) }, 200);
    })
    .openapi(withdrawRoute, async (c) => {
      const { station: where, finding } = c.req.valid('param');
      const { group, person, language } = c.var;
      await withdrawRuling(group, where, finding, person.name);
      const found = await group.findings(where);
      return c.json({ findings: found.map((each) => findingAnswer(each, language)) }, 200);
    })
    .openapi(acceptRoute, async (c) => {
      const { station: where, finding } = c.req.valid('param');
      const { group, person, language } = c.var;
      await acceptCorrection(group, where, finding, person.name, Date.now());
      const found = await group.findings(where);
      return c.json({ findings: found.map((each) => findingAnswer(each, language)) }, 200);
    });
}
