import { createRoute, z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { UnknownName } from '../../group/unknown-name.js';
import { renderSeason, seasonDocument, seasonFrom } from '../../season/index.js';
import { say } from '../../words/index.js';
import type { Environment } from '../environment.js';
import { HttpRefused } from '../refused.js';
import { answers, apiPart, next, pageOf, pageQuery, refusals, refuses } from './routing.js';
import { documentSchema, seasonAppliedSchema } from './schemas.js';
import { AS_IT_IS, ifMatch, matched, tagOf } from './season.js';

/** What people enter on a visit: stages seen, and visits themselves. Both stand in the season document. */
const lists = {
  observed: 'stages seen on a day',
  visits: 'visits: hand-thermometer readings, ice, level, clock checks',
} as const;
type List = keyof typeof lists;
type Entry = Record<string, unknown>;

const place = z.object({ index: z.string().regex(/^\d{1,6}$/) });
const body = { content: { 'application/json': { schema: documentSchema } }, required: true };
const etag = z.object({ ETag: z.string().openapi({ example: '"season-3"' }) });
const none = refuses('There is no such entry');
const moved = refuses('Somebody else changed the season meanwhile: nothing was overwritten');
const precondition = {
  400: refuses('If-Match is malformed'),
  404: none,
  412: moved,
  428: refuses('If-Match is missing'),
};

/** Tries again where somebody else wrote in between: what is added takes nothing away. */
const TRIES = 5;

export function entryRoutes() {
  const app = apiPart();
  for (const list of ['observed', 'visits'] as const) app.route('/', listRoutes(list));
  return app;
}

function listRoutes(list: List) {
  return apiPart()
    .openapi(
      createRoute({
        method: 'get',
        path: `/${list}`,
        summary: `Every one of the ${lists[list]}, each with its place in the list`,
        request: { query: pageQuery },
        responses: {
          200: {
            ...answers(
              z.object({
                entries: z.array(z.object({ index: z.number(), entry: documentSchema })),
                next,
              }),
              'The entries',
            ),
            headers: etag,
          },
          ...refusals,
        },
      }),
      async (c) => {
        const { version, entries } = await standing(c, list);
        const rows = entries.map((entry, index) => ({ index, entry }));
        const page = pageOf(rows, c.req.valid('query'), ({ index }) => String(index));
        c.header('ETag', tagOf(version));
        c.header('Cache-Control', AS_IT_IS);
        return c.json({ entries: [...page.rows], next: page.next }, 200);
      },
    )
    .openapi(
      createRoute({
        method: 'post',
        path: `/${list}`,
        summary: `Add one to the ${lists[list]}, as the season file would state it`,
        request: { body },
        responses: { 201: answers(seasonAppliedSchema, 'What changed'), 412: moved, ...refusals },
      }),
      async (c) => {
        const entry = c.req.valid('json');
        return c.json(await added(c, list, entry), 201);
      },
    )
    .openapi(
      createRoute({
        method: 'put',
        path: `/${list}/{index}`,
        summary: 'State one anew',
        request: { params: place, headers: ifMatch, body },
        responses: { 200: answers(seasonAppliedSchema, 'What changed'), ...precondition, ...refusals },
      }),
      async (c) => {
        const { index } = c.req.valid('param');
        const entry = c.req.valid('json');
        const expected = matched(c.req.valid('header')['if-match']);
        return c.json(
          await changed(c, list, expected, (entries) => entries.with(known(c, entries, index), entry)),
          200,
        );
      },
    )
    .openapi(
      createRoute({
        method: 'delete',
        path: `/${list}/{index}`,
        summary: 'Take one out; the version before keeps it',
        request: { params: place, headers: ifMatch },
        responses: { 200: answers(seasonAppliedSchema, 'What changed'), ...precondition, ...refusals },
      }),
      async (c) => {
        const { index } = c.req.valid('param');
        const expected = matched(c.req.valid('header')['if-match']);
        return c.json(
          await changed(c, list, expected, (entries) => entries.toSpliced(known(c, entries, index), 1)),
          200,
        );
      },
    );
}

interface Standing {
  readonly version: number;
  readonly document: Entry;
  readonly entries: readonly Entry[];
}

async function standing(c: Context<Environment>, list: List): Promise<Standing> {
  const { group } = c.var;
  const version = (await group.seasonVersions())[0]?.version ?? 0;
  const document = seasonDocument(await group.season());
  const entries = z.array(z.record(z.string(), z.unknown())).parse(document[list] ?? []);
  return { version, document, entries };
}

async function changed(
  c: Context<Environment>,
  list: List,
  expected: number | null,
  edit: (entries: readonly Entry[]) => readonly Entry[],
) {
  const { group, person, language } = c.var;
  const { version, document, entries } = await standing(c, list);
  const text = renderSeason(seasonFrom({ ...document, [list]: edit(entries) }, 'season'));
  const changes = await group.applySeason(text, 'season', person.name, expected ?? version);
  const now = (await group.seasonVersions())[0]?.version ?? 0;
  c.header('ETag', tagOf(now));
  c.header('Cache-Control', AS_IT_IS);
  return { applied: true, changes: changes.map((one) => say(language, one)), version: now };
}

async function added(c: Context<Environment>, list: List, entry: Entry) {
  for (let tried = 1; ; tried++) {
    try {
      return await changed(c, list, null, (entries) => [...entries, entry]);
    } catch (error) {
      const again = error instanceof UnknownName && error.remark.code === 'season-moved' && tried < TRIES;
      if (!again) throw error;
    }
  }
}

/** @throws HttpRefused 404 */
function known(c: Context<Environment>, entries: readonly Entry[], given: string): number {
  const index = Number(given);
  if (index < entries.length) return index;
  throw new HttpRefused(404, { code: 'http-not-found', with: { path: c.req.path.slice(0, 200) } });
}
