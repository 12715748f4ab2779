import { createRoute, z } from '@hono/zod-openapi';
import type { WindowAnswer } from '../../group/answers.js';
import { forecastAnswer } from '../../group/forecast-answer.js';
import { asFile, csvBody, csvText } from '../csv.js';
import { answers, apiPart, dateQuery, dayOf, next, pageOf, pageQuery, refusals, refuses } from './routing.js';
import { boxForecastSchema, boxSchema, forecastSchema } from './schemas.js';

const asked = z.object({ as_of: dateQuery, box: z.string().max(100).optional() });
const unknownBox = refuses('The season has no such box');

const forecastRoute = createRoute({
  method: 'get',
  path: '/forecast',
  summary: 'When the eggs of every box come to every stage',
  request: { query: asked },
  responses: { 200: answers(forecastSchema, 'The forecast'), 404: unknownBox, ...refusals },
});

const forecastCsvRoute = createRoute({
  method: 'get',
  path: '/forecast.csv',
  summary: 'The same as CSV: one row a lot and stage',
  request: { query: asked },
  responses: {
    200: { content: { 'text/csv': { schema: z.string() } }, description: 'The windows' },
    404: unknownBox,
    ...refusals,
  },
});

const boxesRoute = createRoute({
  method: 'get',
  path: '/boxes',
  summary: 'Every box of the season',
  request: { query: pageQuery },
  responses: { 200: answers(z.object({ boxes: z.array(boxSchema), next }), 'The boxes'), ...refusals },
});

const boxRoute = createRoute({
  method: 'get',
  path: '/boxes/{box}',
  summary: 'One box with its forecast',
  request: { params: z.object({ box: z.string().max(100) }), query: z.object({ as_of: dateQuery }) },
  responses: {
    200: answers(
      z.object({ asOf: z.string(), cautions: z.array(z.string()).readonly(), box: boxForecastSchema }),
      'The box',
    ),
    404: unknownBox,
    ...refusals,
  },
});

export function forecastRoutes() {
  return apiPart()
    .openapi(forecastRoute, async (c) => {
      const { as_of, box } = c.req.valid('query');
      const forecast = await c.var.group.forecast({ box: box ?? null, asOf: dayOf(as_of) });
      return c.json(forecastAnswer(forecast, c.var.language), 200);
    })
    .openapi(forecastCsvRoute, async (c) => {
      const { as_of, box } = c.req.valid('query');
      const forecast = await c.var.group.forecast({ box: box ?? null, asOf: dayOf(as_of) });
      const answer = forecastAnswer(forecast, c.var.language);
      return c.body(csvBody(forecastLines(answer)), 200, {
        'Content-Type': 'text/csv; charset=utf-8',
        'Content-Disposition': asFile(`forecast-${answer.asOf}.csv`),
      });
    })
    .openapi(boxesRoute, async (c) => {
      const season = await c.var.group.season();
      const boxes = season.boxes.map(({ id, site, fills, stations, lifted }) => ({
        box: id,
        site,
        eggs: fills.reduce((sum, { eggs }) => sum + eggs, 0),
        lots: fills.map(({ lot }) => lot),
        stations,
        lifted,
      }));
      const page = pageOf(boxes, c.req.valid('query'), ({ box }) => box);
      return c.json({ boxes: [...page.rows], next: page.next }, 200);
    })
    .openapi(boxRoute, async (c) => {
      const { box } = c.req.valid('param');
      const forecast = await c.var.group.forecast({ box, asOf: dayOf(c.req.valid('query').as_of) });
      const { asOf, cautions, boxes } = forecastAnswer(forecast, c.var.language);
      return c.json({ asOf, cautions, box: boxes[0]! }, 200);
    });
}

type ForecastAnswer = ReturnType<typeof forecastAnswer>;

/** `as_of,box,site,lot,eggs,stage,egg,p10,p50,p90,passed`: one row for the first, median and last egg of each window. */
function* forecastLines({ asOf, boxes }: ForecastAnswer): Generator<string> {
  yield 'as_of,box,site,lot,eggs,stage,egg,p10,p50,p90,passed';
  for (const { box, site, lots } of boxes) {
    for (const { lot, eggs, windows } of lots) {
      const begins = [asOf, csvText(box), csvText(site), csvText(lot), String(eggs)].join(',');
      for (const window of windows) for (const rest of windowLines(window)) yield `${begins},${rest}`;
    }
  }
}

function windowLines(window: WindowAnswer): string[] {
  return (['first', 'median', 'last'] as const).map((egg) => {
    const { p10, p50, p90 } = window[egg];
    return [csvText(window.stage), egg, p10 ?? '', p50 ?? '', p90 ?? '', String(window.passed)].join(',');
  });
}
