import { createRoute, z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import { UnknownName } from '../../group/unknown-name.js';
import { compareSeasons, readSeason, renderSeason, seasonDocument, seasonFrom } from '../../season/index.js';
import { isoInstant, say } from '../../words/index.js';
import type { Environment } from '../environment.js';
import { HttpRefused } from '../refused.js';
import { answers, apiPart, next, pageOf, pageQuery, refusals, refuses } from './routing.js';
import { documentSchema, seasonAppliedSchema, versionSchema } from './schemas.js';

const yaml = { 'application/yaml': { schema: z.string() } };
export const ifMatch = z.object({
  'if-match': z
    .string()
    .max(200)
    .optional()
    .openapi({ example: '"season-3"', description: 'ETag of the season you changed' }),
});
const moved = refuses('Somebody else changed the season meanwhile: nothing was overwritten');
const unstated = refuses('If-Match is missing');
const etagHeader = z.object({ ETag: z.string().openapi({ example: '"season-3"' }) });

const seasonRoute = createRoute({
  method: 'get',
  path: '/season',
  summary: 'The season document, with the ETag that a change states',
  responses: {
    200: {
      content: { 'application/json': { schema: documentSchema } },
      headers: etagHeader,
      description: 'The season in the shape of its file',
    },
    304: { description: 'Not changed since' },
    ...refusals,
  },
});

const seasonYamlRoute = createRoute({
  method: 'get',
  path: '/season.yaml',
  summary: 'The season file as it stands',
  responses: { 200: { content: yaml, headers: etagHeader, description: 'The file' }, ...refusals },
});

const applyRoute = createRoute({
  method: 'put',
  path: '/season',
  summary: 'Take over a season document (JSON) or file (YAML); with dry_run, say what it would change',
  request: {
    headers: ifMatch,
    query: z.object({ dry_run: z.enum(['true', 'false']).default('false') }),
    body: { content: { 'application/json': { schema: documentSchema }, ...yaml }, required: true },
  },
  responses: {
    200: answers(seasonAppliedSchema, 'What changed'),
    400: refuses('If-Match is malformed'),
    412: moved,
    413: refuses('Larger than a season can be'),
    428: unstated,
    ...refusals,
  },
});

const versionsRoute = createRoute({
  method: 'get',
  path: '/season/versions',
  summary: 'Every version of the season, newest first: who, when',
  request: { query: pageQuery },
  responses: {
    200: answers(z.object({ versions: z.array(versionSchema), next }), 'The versions'),
    ...refusals,
  },
});

const versionRoute = createRoute({
  method: 'get',
  path: '/season/versions/{version}',
  summary: 'One version, as a season file, and what it changed',
  request: { params: z.object({ version: z.coerce.number().int().min(1) }) },
  responses: {
    200: answers(
      z.object({ version: z.number(), changes: z.array(z.string()), text: z.string() }),
      'The version',
    ),
    404: refuses('There is no such version'),
    ...refusals,
  },
});

const undoRoute = createRoute({
  method: 'post',
  path: '/season/undo',
  summary: 'Go back to the version before, or to the one named; the change back is a version too',
  request: {
    headers: ifMatch,
    body: {
      content: { 'application/json': { schema: z.object({ version: z.number().int().min(1).optional() }) } },
      required: false,
    },
  },
  responses: {
    200: answers(seasonAppliedSchema, 'What changed'),
    400: refuses('If-Match is malformed'),
    404: refuses('There is no such version'),
    409: refuses('There is no earlier version'),
    412: moved,
    428: unstated,
    ...refusals,
  },
});

export function seasonRoutes() {
  return apiPart()
    .openapi(seasonRoute, async (c) => {
      const etag = await currentTag(c);
      c.header('ETag', etag);
      c.header('Cache-Control', AS_IT_IS);
      if (c.req.header('If-None-Match') === etag) return c.body(null, 304);
      return c.json(seasonDocument(await c.var.group.season()), 200);
    })
    .openapi(seasonYamlRoute, async (c) => {
      c.header('ETag', await currentTag(c));
      c.header('Cache-Control', AS_IT_IS);
      return c.body(await c.var.group.seasonText(), 200, {
        'Content-Type': 'application/yaml; charset=utf-8',
      });
    })
    .openapi(applyRoute, async (c) => {
      const text = await documentText(c);
      const { group, language, person } = c.var;
      if (c.req.valid('query').dry_run === 'true') {
        const changes = await group.previewSeason(text, DOCUMENT);
        const version = await currentVersion(c);
        return c.json({ applied: false, changes: changes.map((one) => say(language, one)), version }, 200);
      }
      const expected = matched(c.req.valid('header')['if-match']);
      const changes = await group.applySeason(text, DOCUMENT, person.name, expected);
      c.header('ETag', await currentTag(c));
      c.header('Cache-Control', AS_IT_IS);
      const version = await currentVersion(c);
      return c.json({ applied: true, changes: changes.map((one) => say(language, one)), version }, 200);
    })
    .openapi(versionsRoute, async (c) => {
      const all = await c.var.group.seasonVersions();
      const page = pageOf(all, c.req.valid('query'), ({ version }) => String(version));
      const versions = page.rows.map(({ version, by, at }) => ({ version, by, at: isoInstant(at) }));
      return c.json({ versions, next: page.next }, 200);
    })
    .openapi(versionRoute, async (c) => {
      const { version } = c.req.valid('param');
      const text = await c.var.group.seasonAt(version);
      const changes = version === 1 ? [] : await changesSince(c, version - 1, text);
      return c.json({ version, changes, text }, 200);
    })
    .openapi(undoRoute, async (c) => {
      const expected = matched(c.req.valid('header')['if-match']);
      const to = c.req.valid('json')?.version ?? expected - 1;
      if (to < 1) throw new UnknownName({ code: 'nothing-to-undo', with: {} });
      const text = await c.var.group.seasonAt(to);
      const changes = await c.var.group.applySeason(text, DOCUMENT, c.var.person.name, expected);
      c.header('ETag', await currentTag(c));
      c.header('Cache-Control', AS_IT_IS);
      const version = await currentVersion(c);
      return c.json({ applied: true, changes: changes.map((one) => say(c.var.language, one)), version }, 200);
    });
}

/** Packed on its way, a document would have a weak ETag, and a weak one is good for no If-Match (RFC 9110, 13.1.1). */
export const AS_IT_IS = 'private, no-cache, no-transform';

/** What a season that came by the API is called in a sentence. */
const DOCUMENT = 'season';

/** The document as the text of a season file, whatever it came as. */
async function documentText(c: Context<Environment>): Promise<string> {
  const text = await c.req.text();
  const type = c.req.header('Content-Type')?.split(';')[0]?.trim().toLowerCase();
  return type === 'application/json' ? renderSeason(seasonFrom(JSON.parse(text), DOCUMENT)) : text;
}

async function changesSince(c: Context<Environment>, version: number, text: string): Promise<string[]> {
  const before = readSeason(await c.var.group.seasonAt(version), DOCUMENT);
  return compareSeasons(before, readSeason(text, DOCUMENT)).map((change) => say(c.var.language, change));
}

async function currentVersion(c: Context<Environment>): Promise<number> {
  return (await c.var.group.seasonVersions())[0]?.version ?? 0;
}

async function currentTag(c: Context<Environment>): Promise<string> {
  return tagOf(await currentVersion(c));
}

export function tagOf(version: number): string {
  return `"season-${version}"`;
}

/** The version If-Match names. @throws HttpRefused 428 where it is missing, 400 where it is none of our tags. */
export function matched(given: string | undefined): number {
  if (given === undefined) throw new HttpRefused(428, { code: 'http-if-match-missing', with: {} });
  const version = /^"season-(\d{1,9})"$/.exec(given.trim())?.[1];
  if (version === undefined)
    throw new HttpRefused(400, { code: 'http-if-match-malformed', with: { given: given.slice(0, 60) } });
  return Number(version);
}
