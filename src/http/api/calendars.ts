import { createRoute, z } from '@hono/zod-openapi';
import type { Settings } from '../../settings/index.js';
import { languages } from '../../words/index.js';
import { calendarPath, nameOf } from '../calendar/routes.js';
import { answers, apiPart, refusals, refuses } from './routing.js';

const calendar = z.object({
  language: z.enum(languages).default('en'),
  box: z.string().max(100).optional().openapi({ description: 'One box only' }),
});
const address = z.object({ address: z.string() }).openapi('Calendar');

const calendarRoute = createRoute({
  method: 'get',
  path: '/calendar',
  summary: 'The address a phone subscribes to: windows and downloads due; whoever knows it may read it',
  request: { query: calendar },
  responses: {
    200: answers(address, 'The address'),
    404: refuses('The season has no such box'),
    ...refusals,
  },
});

const changeRoute = createRoute({
  method: 'post',
  path: '/calendar/change',
  summary: 'Change the address: the old one is void',
  request: { body: { content: { 'application/json': { schema: calendar.strict() } }, required: true } },
  responses: { 200: answers(address, 'The new address'), ...refusals },
});

export function calendarRoutes(settings: Settings) {
  const whole = (path: string, url: string) => `${settings.address ?? new URL(url).origin}${path}`;
  return apiPart()
    .openapi(calendarRoute, async (c) => {
      const { language, box = null } = c.req.valid('query');
      // Refuses a box that is not there.
      if (box !== null) await c.var.group.forecast({ box, asOf: null });
      return c.json({ address: whole(calendarPath(c.var.accounts, { language, box }), c.req.url) }, 200);
    })
    .openapi(changeRoute, async (c) => {
      const { language, box = null } = c.req.valid('json');
      await c.var.accounts.changeCalendar(nameOf({ language, box }), c.var.person.name);
      return c.json({ address: whole(calendarPath(c.var.accounts, { language, box }), c.req.url) }, 200);
    });
}
