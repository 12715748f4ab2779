import { createRoute, z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { UnknownName } from '../../group/unknown-name.js';
import { readSeason, renderSeason, seasonDocument, seasonFrom } from '../../season/index.js';
import { say } from '../../words/index.js';
import type { Environment } from '../environment.js';
import { HttpRefused } from '../refused.js';
import { answers, apiPart, next, pageOf, pageQuery, refusals, refuses } from './routing.js';
import { documentSchema, seasonAppliedSchema } from './schemas.js';
import { AS_IT_IS, ifMatch, matched, tagOf } from './season.js';

/** Lists of the season document whose things have an id: each is a resource of its own, over the one document. */
export const thingLists = ['stations', 'loggers', 'sites', 'lots', 'boxes', 'tables'] as const;
export type ThingList = (typeof thingLists)[number];

const etagHeader = z.object({ ETag: z.string().openapi({ example: '"season-3"' }) });
const id = z.object({ id: z.string().min(1).max(100) });
const gone = refuses('The season has none of that id');
const changing = {
  400: refuses('If-Match is malformed'),
  412: refuses('Somebody else changed the season meanwhile: nothing was overwritten'),
  428: refuses('If-Match is missing'),
  ...refusals,
};
const changed = { ...answers(seasonAppliedSchema, 'What changed'), headers: etagHeader };
const shape = { 'application/json': { schema: documentSchema } };

const routesOf = (list: ThingList) => ({
  all: createRoute({
    method: 'get',
    path: `/season/${list}`,
    summary: `The season's ${list}, as the season file states them, with the ETag that a change states`,
    request: { query: pageQuery },
    responses: {
      200: {
        ...answers(z.object({ things: z.array(documentSchema), next }), `The ${list}`),
        headers: etagHeader,
      },
      ...refusals,
    },
  }),
  one: createRoute({
    method: 'get',
    path: `/season/${list}/{id}`,
    summary: `One of the season's ${list}`,
    request: { params: id },
    responses: {
      200: { ...answers(documentSchema, 'As the season file states it'), headers: etagHeader },
      404: gone,
      ...refusals,
    },
  }),
  put: createRoute({
    method: 'put',
    path: `/season/${list}/{id}`,
    summary: `Put one among the season's ${list}, new or in place of the one with this id`,
    request: { params: id, headers: ifMatch, body: { content: shape, required: true } },
    responses: { 200: changed, ...changing },
  }),
  remove: createRoute({
    method: 'delete',
    path: `/season/${list}/{id}`,
    summary: `Take one out of the season's ${list}; what names it must be gone first`,
    request: { params: id, headers: ifMatch },
    responses: { 200: changed, 404: gone, ...changing },
  }),
});

/** Boxes, lots, stations and the others one by one: each change is a version of the season, undone like any other. */
export function thingRoutes() {
  const app = apiPart();
  for (const list of thingLists) {
    const { all, one, put, remove } = routesOf(list);
    app.openapi(all, async (c) => {
      const standing = await standingSeason(c);
      const page = pageOf(thingsIn(standing.document, list), c.req.valid('query'), idOf);
      tagged(c, standing.version);
      return c.json({ things: [...page.rows], next: page.next }, 200);
    });
    app.openapi(one, async (c) => {
      const standing = await standingSeason(c);
      tagged(c, standing.version);
      return c.json(thingNamed(standing.document, list, c.req.valid('param').id), 200);
    });
    app.openapi(put, async (c) => {
      const { id } = c.req.valid('param');
      const given = c.req.valid('json');
      if (given.id !== undefined && !same(String(given.id), id))
        throw new HttpRefused(422, { code: 'http-not-these-values', with: { places: ['id'] } });
      const thing = { ...given, id: given.id ?? id };
      const said = await change(c, c.req.valid('header')['if-match'], (document) => {
        const things = thingsIn(document, list);
        const there = things.some((other) => same(idOf(other), id));
        const put = things.map((other) => (same(idOf(other), id) ? thing : other));
        return { ...document, [list]: there ? put : [...put, thing] };
      });
      return c.json(said, 200);
    });
    app.openapi(remove, async (c) => {
      const { id } = c.req.valid('param');
      const said = await change(c, c.req.valid('header')['if-match'], (document) => {
        thingNamed(document, list, id);
        return { ...document, [list]: thingsIn(document, list).filter((other) => !same(idOf(other), id)) };
      });
      return c.json(said, 200);
    });
  }
  return app;
}

type Thing = z.infer<typeof documentSchema>;

interface Standing {
  readonly version: number;
  readonly document: Thing;
}

/** The document with the version it is, of the same moment whoever writes meanwhile. */
async function standingSeason(c: Context<Environment>): Promise<Standing> {
  const { group } = c.var;
  const version = await versionNow(c);
  const season = version === 0 ? await group.season() : readSeason(await group.seasonAt(version), SHOWN_AS);
  return { version, document: seasonDocument(season) };
}

async function versionNow(c: Context<Environment>): Promise<number> {
  return (await c.var.group.seasonVersions())[0]?.version ?? 0;
}

/** Takes the edited document over, if the version that If-Match names still stands. */
async function change(
  c: Context<Environment>,
  given: string | undefined,
  edit: (document: Thing) => Thing,
): Promise<z.infer<typeof seasonAppliedSchema>> {
  const { group, person, language } = c.var;
  const expected = matched(given);
  const { version, document } = await standingSeason(c);
  // Where another version stands it is refused as such, whatever the edit would have found.
  const edited = version === expected ? edit(document) : document;
  const text = renderSeason(seasonFrom(edited, SHOWN_AS));
  const changes = await group.applySeason(text, SHOWN_AS, person.name, expected);
  const now = await versionNow(c);
  tagged(c, now);
  return { applied: true, changes: changes.map((one) => say(language, one)), version: now };
}

const SHOWN_AS = 'season';

function tagged(c: Context<Environment>, version: number): void {
  c.header('ETag', tagOf(version));
  c.header('Cache-Control', AS_IT_IS);
}

function thingsIn(document: Thing, list: ThingList): readonly Thing[] {
  const things = document[list];
  return Array.isArray(things) ? things.filter(isThing) : [];
}

function isThing(value: unknown): value is Thing {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function thingNamed(document: Thing, list: ThingList, id: string): Thing {
  const things = thingsIn(document, list);
  const found = things.find((thing) => same(idOf(thing), id));
  if (found !== undefined) return found;
  throw new UnknownName({ code: 'unknown-thing', with: { id, ids: things.map(idOf) } });
}

const idOf = (thing: Thing): string => String(thing.id ?? '');

/** The season's ids are told apart whatever their case. */
const same = (one: string, other: string): boolean => one.trim().toLowerCase() === other.trim().toLowerCase();
