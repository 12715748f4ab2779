import { createRoute, z } from '@hono/zod-openapi';
import type { DevelopmentTable } from '../../../forecasting/table.js';
import { UnknownName } from '../../group/unknown-name.js';
import { answers, apiPart, refusals, refuses } from './routing.js';

/** A development table as `underice tables --json` prints it: README, "Development tables", explains each field. */
const tableSchema = z.custom<DevelopmentTable>().openapi('DevelopmentTable', {
  type: 'object',
  required: ['id', 'species', 'name', 'stages'],
  properties: {
    id: { type: 'string' },
    species: { type: 'string' },
    name: { type: 'object', properties: { en: { type: 'string' }, fr: { type: 'string' } } },
    stages: { type: 'array', items: { type: 'object' } },
  },
});

const tablesRoute = createRoute({
  method: 'get',
  path: '/tables',
  summary: "The shipped development tables, then the group's own",
  responses: { 200: answers(z.object({ tables: z.array(tableSchema) }), 'The tables'), ...refusals },
});

const tableRoute = createRoute({
  method: 'get',
  path: '/tables/{table}',
  summary: 'One development table with its sources',
  request: { params: z.object({ table: z.string().max(100) }) },
  responses: { 200: answers(tableSchema, 'The table'), 404: refuses('There is no such table'), ...refusals },
});

export function tableRoutes() {
  return apiPart()
    .openapi(tablesRoute, async (c) => c.json({ tables: [...(await c.var.group.tables())] }, 200))
    .openapi(tableRoute, async (c) => {
      const { table: id } = c.req.valid('param');
      const tables = await c.var.group.tables();
      const table = tables.find((one) => one.id === id);
      if (table === undefined)
        throw new UnknownName({
          code: 'unknown-table',
          with: { table: id, tables: tables.map((one) => one.id) },
        });
      return c.json(table, 200);
    });
}
