import { createRoute, z } from '@hono/zod-openapi';
import { checkedLayout, type SavedLayout } from '../../../adapters/layouts-saved.js';
import { dropLayout, saveLayout } from '../../group/layouts.js';
import { answers, apiPart, refusals, refuses } from './routing.js';

/** A layout as `underice layouts --json` lists it; its rules are those of the season file. */
const layoutSchema = z.custom<SavedLayout>().openapi('SavedLayout', {
  type: 'object',
  required: ['name', 'match', 'settled'],
  properties: {
    name: { type: 'string', maxLength: 200 },
    match: {
      type: 'object',
      description:
        'One of `header` (a list of headers), `opening` (how the first line begins), `fileName` (a part of it)',
    },
    settled: {
      type: 'object',
      description:
        'Any of encoding, delimiter, decimal, headerLine, dateOrder, time, temperature, level, discharge, station, unit, zone, missing',
    },
  },
});
const layoutList = z.object({ layouts: z.array(layoutSchema) });
const moved = refuses('Somebody else changed the season meanwhile: nothing was overwritten');

const listRoute = createRoute({
  method: 'get',
  path: '/layouts',
  summary: 'The layouts of downloads that the group keeps',
  responses: { 200: answers(layoutList, 'The layouts'), ...refusals },
});

const keepRoute = createRoute({
  method: 'post',
  path: '/layouts',
  summary: 'Keep a layout, in place of one of the same name: files it matches are read by it',
  request: { body: { content: { 'application/json': { schema: layoutSchema } }, required: true } },
  responses: { 200: answers(layoutList, 'The layouts'), 412: moved, ...refusals },
});

const removeRoute = createRoute({
  method: 'delete',
  path: '/layouts/{layout}',
  summary: 'Remove a layout; what was loaded with it stays as it is',
  request: { params: z.object({ layout: z.string().max(200) }) },
  responses: {
    200: answers(layoutList, 'The layouts left'),
    404: refuses('There is no such layout'),
    412: moved,
    ...refusals,
  },
});

export function layoutRoutes() {
  return apiPart()
    .openapi(listRoute, async (c) => c.json({ layouts: (await c.var.group.season()).layouts }, 200))
    .openapi(keepRoute, async (c) => {
      const layout = checkedLayout(c.req.valid('json'));
      const { layouts } = await saveLayout(c.var.group, layout, c.var.person.name);
      return c.json({ layouts }, 200);
    })
    .openapi(removeRoute, async (c) => {
      const { layout } = c.req.valid('param');
      const { layouts } = await dropLayout(c.var.group, layout, c.var.person.name);
      return c.json({ layouts }, 200);
    });
}
