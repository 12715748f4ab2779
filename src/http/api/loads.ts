import { createRoute, z } from '@hono/zod-openapi';
import { saveLayoutOf } from '../../group/layouts.js';
import { loadAnswer, loadsAnswer } from '../../group/load-answer.js';
import { loadWaiting } from '../received/load-waiting.js';
import { HttpRefused } from '../refused.js';
import { mayActAs, type Person } from '../roles.js';
import { answers, apiPart, next, pageOf, pageQuery, refusals, refuses } from './routing.js';
import { loadAnswerSchema, loadRowSchema } from './schemas.js';
import { seriesAnswer } from './stations.js';

/** What a file does not say itself; absent where it does. */
export const notInFile = {
  station: z.string().max(100).optional(),
  zone: z.string().max(100).optional(),
  unit: z.enum(['C', 'F', 'K']).optional(),
  column: z.string().max(500).optional(),
  dateOrder: z.enum(['ymd', 'dmy', 'mdy']).optional(),
};

const loadRequest = z
  .object({
    files: z
      .array(z.object({ file: z.string().max(64), station: z.string().max(100).optional() }))
      .min(1)
      .max(10_000),
    ...notInFile,
    createStations: z.boolean().default(false),
    dryRun: z.boolean().default(false),
    keepLayout: z.string().trim().min(1).max(200).optional().openapi({
      description:
        'Keep how the one file was read, and what is answered here, under this name: a coordinator only',
    }),
  })
  .strict()
  .openapi('LoadRequest');

const loadRoute = createRoute({
  method: 'post',
  path: '/loads',
  summary: 'Load files that wait; with dryRun, say what is understood, ask what is open and store nothing',
  request: { body: { content: { 'application/json': { schema: loadRequest } }, required: true } },
  responses: {
    200: answers(loadAnswerSchema, 'What came of each file'),
    404: refuses('No such file is waiting'),
    ...refusals,
  },
});

const loadsRoute = createRoute({
  method: 'get',
  path: '/loads',
  summary: 'Every load, withdrawn ones too',
  request: { query: pageQuery },
  responses: { 200: answers(z.object({ loads: z.array(loadRowSchema), next }), 'The loads'), ...refusals },
});

const withdrawRoute = createRoute({
  method: 'post',
  path: '/loads/{load}/withdraw',
  summary: 'Take a load back: what it covered shows again',
  request: { params: z.object({ load: z.string().max(20) }) },
  responses: {
    200: answers(loadRowSchema, 'The load, withdrawn'),
    404: refuses('There is no such load'),
    409: refuses('It was withdrawn before'),
    ...refusals,
  },
});

export function loadRoutes() {
  return apiPart()
    .openapi(loadRoute, async (c) => {
      const { files, createStations, dryRun, keepLayout, ...asked } = c.req.valid('json');
      if (keepLayout !== undefined) mayKeep(c.var.person, files.length);
      const loaded = await loadWaiting(c.var.group, c.var.spool, {
        files: files.map(({ file, station }) => ({ file, ...(station === undefined ? {} : { station }) })),
        asked: definedOnly(asked),
        createStations,
        dryRun,
        who: c.var.person.name,
      });
      const answer = loadAnswer(
        loaded.map(({ outcome }) => outcome),
        c.var.language,
      );
      const [only] = loaded;
      if (keepLayout !== undefined && !dryRun && only?.outcome.refused === null)
        await saveLayoutOf(c.var.group, keepLayout, only.outcome, definedOnly(asked), c.var.person.name);
      if (!dryRun) return c.json(answer, 200);
      const previews = loaded.flatMap(({ waiting, brings }) =>
        brings.map((series) => ({ file: waiting, series: seriesAnswer(series) })),
      );
      return c.json({ ...answer, previews }, 200);
    })
    .openapi(loadsRoute, async (c) => {
      const { loads } = loadsAnswer(await c.var.group.loads());
      const page = pageOf(loads, c.req.valid('query'), ({ load }) => load);
      return c.json({ loads: [...page.rows], next: page.next }, 200);
    })
    .openapi(withdrawRoute, async (c) => {
      const row = await c.var.group.withdraw(c.req.valid('param').load, c.var.person.name);
      return c.json(loadsAnswer([row]).loads[0]!, 200);
    });
}

/** @throws HttpRefused where the person may not change the season, or several files would give one layout. */
function mayKeep({ role }: Person, files: number): void {
  if (!mayActAs(role, 'coordinator'))
    throw new HttpRefused(403, { code: 'http-role', with: { role, needed: 'coordinator' } });
  if (files > 1) throw new HttpRefused(422, { code: 'http-one-layout', with: { files } });
}

type Given<T> = { [Key in keyof T]?: Exclude<T[Key], undefined> };

/** What was given: a key that was not is not there at all. */
export function definedOnly<T extends object>(given: T): Given<T> {
  const defined: Given<T> = {};
  for (const key in given) {
    const value = given[key];
    if (isDefined(value)) defined[key] = value;
  }
  return defined;
}

function isDefined<T>(value: T): value is Exclude<T, undefined> {
  return value !== undefined;
}
