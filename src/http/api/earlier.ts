import { createRoute, z } from '@hono/zod-openapi';
import { earlierFields, keepEarlier, readEarlier, withdrawEarlier } from '../../earlier/index.js';
import { answers, apiPart, refusals, refuses } from './routing.js';

const column = z.string().max(200).optional();
const columnsSchema = z.object({
  season: column,
  site: column,
  box: column,
  lot: column,
  planted: column,
  lifted: column,
  eggs: column,
  empty: column,
  dead: column,
  note: column,
});

const keepRoute = createRoute({
  method: 'post',
  path: '/earlier',
  summary: 'Take a table (CSV) of past boxes, a line a box; with dry_run, say what was understood',
  request: {
    body: {
      content: {
        'application/json': {
          schema: z.object({
            file: z.string().min(1).max(200),
            text: z.string(),
            columns: columnsSchema.default({}),
            dry_run: z.boolean().default(false),
          }),
        },
      },
      required: true,
    },
  },
  responses: {
    200: answers(
      z.object({
        id: z.string().nullable(),
        columns: z.record(z.string(), z.string().nullable()),
        boxes: z.array(z.record(z.string(), z.string())),
      }),
      'What was understood, and the id it is kept under',
    ),
    413: refuses('Too much at once'),
    ...refusals,
  },
});

const withdrawRoute = createRoute({
  method: 'delete',
  path: '/earlier/{id}',
  summary: 'Take a table of past seasons out again',
  request: { params: z.object({ id: z.string().max(40) }) },
  responses: { 204: { description: 'Taken out' }, ...refusals },
});

export function earlierApiRoutes() {
  return apiPart()
    .openapi(keepRoute, async (c) => {
      const { file, text, columns, dry_run: dryRun } = c.req.valid('json');
      const asked = Object.fromEntries(
        earlierFields.flatMap((field) => (columns[field] === undefined ? [] : [[field, columns[field]]])),
      );
      const table = readEarlier(text, asked);
      const id = dryRun ? null : await keepEarlier(c.var.group, file, table, c.var.person.name);
      return c.json(
        { id, columns: { ...table.columns }, boxes: table.boxes.map((box) => ({ ...box })) },
        200,
      );
    })
    .openapi(withdrawRoute, async (c) => {
      await withdrawEarlier(c.var.group, c.req.valid('param').id, c.var.person.name);
      return c.body(null, 204);
    });
}
