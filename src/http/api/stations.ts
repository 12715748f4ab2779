import { createRoute, z } from '@hono/zod-openapi';
import { Origin } from '../../../forecasting/day-series.js';
import type { Series } from '../../group/index.js';
import { isoDay, isoInstant } from '../../words/index.js';
import { asFile, csvBody } from '../csv.js';
import { answers, apiPart, dateQuery, dayOf, next, pageOf, pageQuery, refusals, refuses } from './routing.js';
import { daysSchema, seriesSchema, stationSchema } from './schemas.js';

const station = z.object({ station: z.string().max(100) });
const unknownStation = refuses('There is no such station');
const instantQuery = z
  .union([z.iso.datetime({ offset: true }), z.iso.date()])
  .optional()
  .openapi({ example: '2026-01-01T00:00:00Z' });

const stationsRoute = createRoute({
  method: 'get',
  path: '/stations',
  summary: 'Every station, and how far its record reaches',
  request: { query: pageQuery },
  responses: {
    200: answers(z.object({ stations: z.array(stationSchema), next }), 'The stations'),
    ...refusals,
  },
});

const seriesRoute = createRoute({
  method: 'get',
  path: '/stations/{station}/record',
  summary:
    'A stretch of a record for drawing: single readings, or min, mean and max of the steps they fall in',
  request: {
    params: station,
    query: z.object({
      from: instantQuery,
      to: instantQuery,
      quantity: z.enum(['temperature', 'level', 'discharge']).default('temperature'),
      points: z.coerce.number().int().min(10).max(4000).default(2000),
    }),
  },
  responses: { 200: answers(seriesSchema, 'The record'), 404: unknownStation, ...refusals },
});

const recordCsvRoute = createRoute({
  method: 'get',
  path: '/stations/{station}/record.csv',
  summary: 'A record as CSV, as `underice record` prints it',
  request: {
    params: station,
    query: z.object({ from: dateQuery, to: dateQuery, daily: z.enum(['true', 'false']).default('false') }),
  },
  responses: {
    200: {
      content: { 'text/csv': { schema: z.string() } },
      description: 'Readings, or days with their origin',
    },
    404: unknownStation,
    ...refusals,
  },
});

const daysRoute = createRoute({
  method: 'get',
  path: '/stations/{station}/days',
  summary: 'Days of a station: measured, filled and projected',
  request: { params: station, query: z.object({ from: dateQuery, to: dateQuery }) },
  responses: { 200: answers(daysSchema, 'The days'), 404: unknownStation, ...refusals },
});

export function stationRoutes() {
  return apiPart()
    .openapi(stationsRoute, async (c) => {
      const page = pageOf(await c.var.group.stations(), c.req.valid('query'), (row) => row.station);
      const stations = page.rows.map(({ records, ...row }) => ({
        ...row,
        records: records.map((one) => ({ ...one, first: isoInstant(one.first), last: isoInstant(one.last) })),
      }));
      return c.json({ stations, next: page.next }, 200);
    })
    .openapi(seriesRoute, async (c) => {
      const { from, to, quantity, points } = c.req.valid('query');
      const series = await c.var.group.series({
        station: c.req.valid('param').station,
        quantity,
        from: from === undefined ? null : Date.parse(from),
        to: to === undefined ? null : Date.parse(to),
        points,
      });
      return c.json(seriesAnswer(series), 200);
    })
    .openapi(recordCsvRoute, async (c) => {
      const { station } = c.req.valid('param');
      const { from, to, daily } = c.req.valid('query');
      const lines = c.var.group.record({
        station,
        from: dayOf(from),
        to: dayOf(to),
        daily: daily === 'true',
      });
      return c.body(csvBody(await begun(lines)), 200, {
        'Content-Type': 'text/csv; charset=utf-8',
        'Content-Disposition': asFile(`${station}.csv`),
      });
    })
    .openapi(daysRoute, async (c) => {
      const { station } = c.req.valid('param');
      const { from, to } = c.req.valid('query');
      const days = await c.var.group.days({ station, from: dayOf(from), to: dayOf(to) });
      const column = (values: Float64Array) => Array.from(values, (value) => figure(value, 3));
      return c.json(
        {
          station,
          date: Array.from(days.mean, (_, i) => isoDay(days.firstDay + i)),
          mean_c: column(days.mean),
          min_c: column(days.min),
          max_c: column(days.max),
          coverage: Array.from(days.coverage, (value) => figure(value, 3) ?? 0),
          origin: Array.from(days.origin, originName),
          spread_c: column(days.spread),
        },
        200,
      );
    });
}

export function seriesAnswer(series: Series): z.infer<typeof seriesSchema> {
  const column = (values: Float64Array) => Array.from(values, (value) => figure(value, 4) ?? 0);
  return {
    station: series.station,
    quantity: series.quantity,
    from: isoInstant(series.from),
    to: isoInstant(series.to),
    step_seconds: series.step / 1000,
    time: Array.from(series.at),
    min: column(series.min),
    mean: column(series.mean),
    max: column(series.max),
    flag: Array.from(series.flag),
  };
}

/** Asks for the first line before the answer's status is sent: a refusal can still be one. */
async function begun(lines: AsyncIterable<string>): Promise<AsyncIterable<string>> {
  const iterator = lines[Symbol.asyncIterator]();
  const first = await iterator.next();
  return (async function* () {
    if (first.done === true) return;
    yield first.value;
    yield* { [Symbol.asyncIterator]: () => iterator };
  })();
}

function originName(origin: number): string {
  return Object.entries(Origin).find(([, number]) => number === origin && number !== Origin.none)?.[0] ?? '';
}

export function figure(value: number, digits: number): number | null {
  const scale = 10 ** digits;
  return Number.isFinite(value) ? Math.round(value * scale) / scale : null;
}
