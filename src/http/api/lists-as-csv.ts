import { createRoute, z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { lotBalances, siteCards } from '../../autumn/index.js';
import { loadsAnswer } from '../../group/load-answer.js';
import { liftingAnswer, liftingState, outcomes, outcomesAnswer, talliesAnswer } from '../../lifting/index.js';
import { closedWinters } from '../../reports/index.js';
import { isoInstant } from '../../words/index.js';
import { asFile, csvBody, csvOf } from '../csv.js';
import type { Environment } from '../environment.js';
import { deliveriesOf, USUAL_LIMIT } from './messages.js';
import { apiPart, dateQuery, dayOf, refusals } from './routing.js';

type Rows = readonly object[];
type Asked = Context<Environment>;

const cardsOf = async ({ var: { group } }: Asked) =>
  siteCards(await group.season(), await closedWinters(group));

/** Lists whose JSON is a route of its own, as a spreadsheet takes them: a row each. */
const lists: readonly (readonly [
  path: string,
  summary: string,
  rows: (c: Asked, asOf: number | null) => Promise<Rows>,
])[] = [
  [
    '/lifting.csv',
    'Every candidate day of the lifting plan as CSV',
    async (c, asOf) => liftingAnswer(await liftingState(c.var.group, asOf), c.var.language).days,
  ],
  [
    '/lifting/outcome.csv',
    'What was found at lifting, beside what had been said, as CSV',
    async (c, asOf) => {
      const { outcomes: found } = outcomesAnswer(await outcomes(c.var.group, asOf), c.var.language);
      return found.flatMap(({ said, ...one }) => said.map((each) => ({ ...one, ...each })));
    },
  ],
  [
    '/tallies.csv',
    'Every tally as CSV',
    async (c) => talliesAnswer(await c.var.group.season(), c.var.language).tallies,
  ],
  [
    '/stations.csv',
    'Every station and record as CSV',
    async (c) =>
      (await c.var.group.stations()).flatMap(({ records, ...station }) =>
        records.length === 0
          ? [station]
          : records.map(({ first, last, ...record }) => ({
              ...station,
              ...record,
              first: isoInstant(first),
              last: isoInstant(last),
            })),
      ),
  ],
  [
    '/loads.csv',
    'Every load as CSV',
    async (c) =>
      loadsAnswer(await c.var.group.loads()).loads.map(({ battery, ...load }) => ({
        ...load,
        battery: battery.map(({ station, unit, last }) =>
          last === null ? station : `${station} ${last.value} ${unit}`,
        ),
      })),
  ],
  [
    '/messages.csv',
    'Every message, by what way it went, its state and the last answer, as CSV',
    (c) => deliveriesOf(c.var, USUAL_LIMIT),
  ],
  [
    '/sites.csv',
    'Past seasons of every site as CSV',
    async (c) =>
      (await cardsOf(c)).flatMap(({ site, past }) => past.map((one) => ({ site: site.id, ...one }))),
  ],
  [
    '/eggs.csv',
    'Where every egg of each lot is, as CSV',
    async (c) => lotBalances(await c.var.group.season()),
  ],
  [
    '/tables.csv',
    'Every development table as CSV: a row a stage, with its law and sources',
    async (c) =>
      (await c.var.group.tables()).flatMap(({ id, species, stages }) =>
        stages.map(({ sources, ...stage }) => ({
          table: id,
          species,
          ...stage,
          sources: sources.map(({ cite }) => cite),
        })),
      ),
  ],
];

const balance = z.object({
  lot: z.string(),
  eggs: z.number(),
  inBoxes: z.number(),
  control: z.number(),
  lost: z.number(),
  leftOver: z.number(),
  unplaced: z.number(),
});

const cardSchema = z.object({
  site: z.record(z.string(), z.unknown()),
  boxes: z.array(z.record(z.string(), z.unknown())),
  past: z.array(
    z.object({
      season: z.string(),
      source: z.enum(['closed', 'table']),
      boxes: z.number(),
      out: z.number().nullable(),
      from: z.number().nullable(),
      to: z.number().nullable(),
      thermalUnits: z.number().nullable(),
      atFreezing: z.number().nullable(),
    }),
  ),
});

const sitesRoute = createRoute({
  method: 'get',
  path: '/sites',
  summary:
    'The card of every site: how to get there, how to find each box, and what came of it in past seasons',
  responses: {
    200: {
      content: { 'application/json': { schema: z.object({ sites: z.array(cardSchema) }) } },
      description: 'The sites',
    },
    ...refusals,
  },
});

const eggsRoute = createRoute({
  method: 'get',
  path: '/eggs',
  summary: 'Where every egg of each lot is: in boxes, control, lost, left over, nowhere yet',
  responses: {
    200: {
      content: { 'application/json': { schema: z.object({ lots: z.array(balance) }) } },
      description: 'The lots',
    },
    ...refusals,
  },
});

export function listsAsCsv() {
  const part = apiPart().openapi(eggsRoute, async (c) =>
    c.json({ lots: lotBalances(await c.var.group.season()) }, 200),
  );
  part.openapi(sitesRoute, async (c) => {
    const sites = (await cardsOf(c)).map(({ site, boxes, past }) => ({
      site: { ...site },
      boxes: boxes.map((box) => ({ ...box })),
      past: [...past],
    }));
    return c.json({ sites }, 200);
  });
  for (const [path, summary, rows] of lists) {
    const route = createRoute({
      method: 'get',
      path,
      summary,
      request: { query: z.object({ as_of: dateQuery }) },
      responses: {
        200: { content: { 'text/csv': { schema: z.string() } }, description: 'A row each' },
        ...refusals,
      },
    });
    part.openapi(route, async (c) =>
      c.body(csvBody(csvOf(await rows(c, dayOf(c.req.valid('query').as_of)))), 200, {
        'Content-Type': 'text/csv; charset=utf-8',
        'Content-Disposition': asFile(path.slice(1).replace('/', '-')),
      }),
    );
  }
  return part;
}
