import { createRoute, z } from '@hono/zod-openapi';
import { speech } from '../../pages/speech.js';
import {
  beginNext,
  closeSeason,
  lateChanges,
  mapWays,
  type NextSeason,
  NOBODY,
  nextSeason,
  type ReportFigures,
  reportFiles,
  type SeasonReported,
  seasonReport,
  survivalSentences,
} from '../../reports/index.js';
import type { ClosedSeasonRow } from '../../store/index.js';
import type { Survival } from '../../survival/index.js';
import { isoInstant, type Language, say } from '../../words/index.js';
import { HttpRefused } from '../refused.js';
import { answers, apiPart, refusals, refuses } from './routing.js';

const season = z.string().max(40).optional().openapi({
  example: '2024-2025',
  description: 'A season, the years of fertilisation and lifting; the one in force where absent',
});
const closedSeason = z
  .object({
    season: z.string(),
    version: z.number().int().openapi({ description: 'Version of the season document' }),
    method: z.number().int().openapi({ description: 'Method of the report' }),
    by: z.string().nullable().openapi({ description: 'Who closed it; null where nobody was named' }),
    at: z.string().openapi({ description: 'ISO 8601 UTC' }),
  })
  .openapi('ClosedSeason');
/** Figures are described column by column in the data package (/report/files/datapackage.json). */
const figures = z.custom<ReportFigures & Pick<SeasonReported, 'closed'>>().openapi('ReportFigures', {
  type: 'object',
  description:
    'Every figure of the report; shares 0 to 1, days as days since 1970-01-01. See datapackage.json',
});
const survival = z.custom<Survival & { season: string; inWords: string[] }>().openapi('Survival', {
  type: 'object',
  description: 'Boxes, groups with 95% intervals, comparisons, and the same in words (inWords)',
});
const next = z
  .object({
    after: z.string(),
    applied: z.boolean(),
    text: z.string().openapi({ description: 'The season file it is, or would be' }),
    carried: z.record(z.string(), z.number()),
    left: z.record(z.string(), z.number()),
    people: z.array(z.string()),
    due: z.array(z.string()),
  })
  .openapi('NextSeason');
const unknown = refuses('There is no such season');

const survivalRoute = createRoute({
  method: 'get',
  path: '/survival',
  summary: 'What survived, by box, site, lot, parent and season',
  request: { query: z.object({ season }) },
  responses: {
    200: answers(survival, 'Survival; from empty compartments, an upper figure'),
    404: unknown,
    ...refusals,
  },
});
const reportRoute = createRoute({
  method: 'get',
  path: '/report',
  summary: 'The figures of a season’s report: as they stand, or as they were kept when it was closed',
  request: { query: z.object({ season }) },
  responses: { 200: answers(figures, 'The figures'), 404: unknown, ...refusals },
});
const fileRoute = createRoute({
  method: 'get',
  path: '/report/files/{file}',
  summary: 'A file of the report: report.html, funder.html, permits.html, the CSVs, datapackage.json',
  request: {
    params: z.object({ file: z.string().max(60) }),
    query: z.object({ season, map: z.enum(mapWays).default('none') }),
  },
  responses: {
    200: { content: { 'text/plain': { schema: z.string() } }, description: 'The file' },
    404: unknown,
    ...refusals,
  },
});
const closedRoute = createRoute({
  method: 'get',
  path: '/seasons/closed',
  summary: 'Seasons that were closed',
  responses: { 200: answers(z.object({ closed: z.array(closedSeason) }), 'Oldest first'), ...refusals },
});
const closeRoute = createRoute({
  method: 'post',
  path: '/seasons/close',
  summary: 'Close the season in force: its figures, tables and reports are kept as they stand',
  request: {
    body: {
      content: {
        'application/json': {
          schema: z.object({
            by: z.string().trim().max(100).optional().openapi({
              example: 'the coordinator',
              description:
                'Who closes it, as the report is to name them; the account where absent, nobody where there is none',
            }),
          }),
        },
      },
      required: false,
    },
  },
  responses: { 200: answers(closedSeason, 'It is closed'), ...refusals },
});
const lateRoute = createRoute({
  method: 'get',
  path: '/seasons/{season}/late',
  summary: 'What was loaded since a season was closed would have changed',
  request: { params: z.object({ season: z.string().max(40) }) },
  responses: {
    200: answers(
      z.object({ season: z.string(), changes: z.array(z.string()) }),
      'In sentences; empty where nothing',
    ),
    404: unknown,
    ...refusals,
  },
});
const nextRoute = createRoute({
  method: 'get',
  path: '/seasons/next',
  summary: 'What the season after the closed one would be; nothing is changed',
  responses: { 200: answers(next, 'The next season'), ...refusals },
});
const beginRoute = createRoute({
  method: 'post',
  path: '/seasons/next',
  summary: 'Begin the season after the closed one',
  responses: { 200: answers(next, 'The next season'), ...refusals },
});

const closedAnswer = ({ by, at, ...rest }: ClosedSeasonRow) => ({
  ...rest,
  by: by === NOBODY ? null : by,
  at: isoInstant(at),
});

const nextAnswer = (made: NextSeason, applied: boolean, language: Language) => ({
  ...made,
  applied,
  carried: { ...made.carried },
  left: { ...made.left },
  people: [...made.people],
  due: made.due.map((one) => say(language, one)),
});

export function reportApiRoutes() {
  return apiPart()
    .openapi(survivalRoute, async (c) => {
      const reported = await seasonReport(c.var.group, c.req.valid('query').season ?? null);
      const inWords = survivalSentences(reported.figures.survival, speech(c.var.language));
      return c.json({ season: reported.season, inWords, ...reported.figures.survival }, 200);
    })
    .openapi(reportRoute, async (c) => {
      const reported = await seasonReport(c.var.group, c.req.valid('query').season ?? null);
      return c.json({ ...reported.figures, closed: reported.closed }, 200);
    })
    .openapi(fileRoute, async (c) => {
      const { season: asked, map } = c.req.valid('query');
      const { documents } = await seasonReport(c.var.group, asked ?? null);
      const files = reportFiles(documents, c.var.language, c.var.today, map);
      const { file } = c.req.valid('param');
      const text = Object.hasOwn(files, file) ? files[file] : undefined;
      if (text === undefined) throw new HttpRefused(404, { code: 'http-not-found', with: { path: file } });
      return c.text(text, 200);
    })
    .openapi(closedRoute, async (c) => {
      const closed = await c.var.group.closedSeasons();
      return c.json({ closed: closed.map(closedAnswer) }, 200);
    })
    .openapi(closeRoute, async (c) => {
      const by = c.req.valid('json')?.by || c.var.person.name;
      return c.json(closedAnswer(await closeSeason(c.var.group, by)), 200);
    })
    .openapi(lateRoute, async (c) => {
      const late = await lateChanges(c.var.group, c.req.valid('param').season);
      return c.json({ ...late, changes: late.changes.map((one) => say(c.var.language, one)) }, 200);
    })
    .openapi(nextRoute, async (c) =>
      c.json(nextAnswer(await nextSeason(c.var.group), false, c.var.language), 200),
    )
    .openapi(beginRoute, async (c) =>
      c.json(nextAnswer(await beginNext(c.var.group, c.var.person.name), true, c.var.language), 200),
    );
}
