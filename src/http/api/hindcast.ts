import { createRoute, z } from '@hono/zod-openapi';
import type { HindcastReport } from '../../../forecasting/hindcast/index.js';
import { askHindcast, CASES, type HindcastAsked, hindcastLines } from '../../hindcast/index.js';
import { asFile, csvBody, csvText } from '../csv.js';
import { answers, apiPart, refusals, refuses } from './routing.js';

const monthDay = z.string().max(5).openapi({ example: '12-15', description: 'Month-day' });
const several = <Item extends z.ZodType>(item: Item) =>
  z.preprocess(
    (given) => (Array.isArray(given) || given === undefined ? given : [given]),
    z.array(item).max(12).optional(),
  );

const question = z.object({
  case: several(z.enum(CASES)).openapi({ description: 'What was known; all where absent' }),
  lead: several(monthDay).openapi({ description: 'Days the forecast is made on, month-day' }),
  gap: several(z.string().max(3)).openapi({ description: 'Lengths of hidden gaps, days' }),
  fertilised: monthDay.optional(),
  table: z.string().max(100).default('atlantic-salmon'),
  stage: z.string().max(100).optional(),
  visits: z.enum(['yes', 'no']).default('no'),
  rows: z.enum(['yes', 'no']).default('no').openapi({ description: 'Also every winter at every station' }),
});

const figure = { type: ['number', 'null'] as ('number' | 'null')[] };
const resultShape = {
  type: 'object' as const,
  required: [
    'case',
    'lead',
    'stage',
    'n',
    'mae',
    'bias',
    'p90',
    'coverage80',
    'width80',
    'crps',
    'reference',
  ],
  properties: {
    case: { type: 'string' as const, enum: [...CASES] },
    lead: { type: 'string' as const },
    stage: { type: 'string' as const },
    n: { type: 'integer' as const, description: 'Winters with a date and a forecast' },
    notReached: { type: 'integer' as const, description: 'Winters whose record ends before the stage' },
    neverForecast: { type: 'integer' as const },
    mae: { ...figure, description: 'Mean absolute error, days' },
    bias: figure,
    p90: figure,
    coverage80: figure,
    width80: figure,
    crps: figure,
    standardError: { type: 'object' as const },
    reference: {
      type: 'object' as const,
      description: 'Each plain method on the same winters: n, mae, bias, ownMae',
    },
  },
};
const list = <Item extends object>(items: Item) => ({ type: 'array' as const, items });
const thing = { type: 'object' as const };
const reportSchema = z.custom<HindcastReport>().openapi('Hindcast', {
  type: 'object',
  required: ['table', 'fertilised', 'results', 'gaps', 'icy', 'pastOnly', 'rows', 'notes'],
  properties: {
    table: { type: 'string' },
    fertilised: { type: 'string' },
    results: list(resultShape),
    gaps: list(thing),
    icy: { type: 'object', description: 'The same for icy winters alone' },
    alreadyPassed: list(resultShape),
    stillToCome: list(resultShape),
    pastOnly: list(resultShape),
    byStation: { ...list(resultShape), description: 'The same for each `station`' },
    rows: list(thing),
    notes: list(thing),
  },
});

const unknownTable = refuses('There is no such table');
const route = createRoute({
  method: 'get',
  path: '/hindcast',
  summary: "How good the forecast would have been in the past winters of the group's own stations",
  description:
    'The first answer after a write takes some seconds or minutes; the same question again is at hand.',
  request: { query: question },
  responses: {
    200: answers(reportSchema, 'Errors and intervals, beside the plain methods'),
    404: unknownTable,
    ...refusals,
  },
});

const csvRoute = createRoute({
  method: 'get',
  path: '/hindcast.csv',
  summary: 'Every hidden winter as a line',
  request: { query: question.omit({ rows: true }) },
  responses: {
    200: {
      content: { 'text/csv': { schema: z.string() } },
      description: 'A line for each winter, case and lead',
    },
    404: unknownTable,
    ...refusals,
  },
});

function askedOf(query: Omit<z.infer<typeof question>, 'rows' | 'table'>): HindcastAsked {
  return {
    cases: query.case ?? [],
    fertilised: query.fertilised ?? null,
    leads: query.lead ?? [],
    gaps: query.gap ?? [],
    stage: query.stage ?? null,
    visits: query.visits === 'yes',
  };
}

export function hindcastRoutes() {
  return apiPart()
    .openapi(route, async (c) => {
      const query = c.req.valid('query');
      const { report } = await askHindcast(c.var.group, askedOf(query), query.table);
      const found = await report;
      return c.json(query.rows === 'yes' ? found : { ...found, rows: [] }, 200);
    })
    .openapi(csvRoute, async (c) => {
      const query = c.req.valid('query');
      const { report } = await askHindcast(c.var.group, askedOf(query), query.table);
      return c.body(csvBody(hindcastLines(await report, csvText)), 200, {
        'Content-Type': 'text/csv; charset=utf-8',
        'Content-Disposition': asFile('hindcast.csv'),
      });
    });
}
