import { createRoute, z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import type { Series } from '../../group/index.js';
import { loadAnswer } from '../../group/load-answer.js';
import { isoInstant } from '../../words/index.js';
import { asFile, csvBody, csvOf } from '../csv.js';
import type { Environment } from '../environment.js';
import { loadWaiting, type WaitingOutcome } from '../received/load-waiting.js';
import { waiting } from './files.js';
import { definedOnly, notInFile } from './loads.js';
import { answers, apiPart, refusals, refuses } from './routing.js';
import { fileAnswerSchema, seriesSchema, spooledSchema } from './schemas.js';
import { figure, seriesAnswer } from './stations.js';

const asked = z.object({ ...notInFile, createStations: z.enum(['true', 'false']).optional() });
const oneFile = z.object({ file: z.string().max(64) });

const understoodRoute = createRoute({
  method: 'get',
  path: '/files/{file}',
  summary:
    'A file that waits: what is understood of it, what it asks, what it would bring; nothing is stored',
  request: { params: oneFile, query: asked },
  responses: {
    200: answers(
      z.object({ waiting: spooledSchema, understood: fileAnswerSchema, brings: z.array(seriesSchema) }),
      'The file',
    ),
    404: refuses('No such file is waiting'),
    ...refusals,
  },
});

const bringsRoute = createRoute({
  method: 'get',
  path: '/files/{file}/readings.csv',
  summary:
    'What a file that waits would bring, as CSV: its readings, or the lowest, mean and highest of each step where they are many',
  request: { params: oneFile, query: asked },
  responses: {
    200: { content: { 'text/csv': { schema: z.string() } }, description: 'A row each' },
    404: refuses('No such file is waiting'),
    ...refusals,
  },
});

export function waitingFileRoutes() {
  return apiPart()
    .openapi(understoodRoute, async (c) => {
      const { file } = c.req.valid('param');
      const { outcome, brings } = await tried(c, file, c.req.valid('query'));
      const [understood] = loadAnswer([outcome], c.var.language).files;
      return c.json(
        {
          waiting: waiting(c.var.spool.file(file)),
          understood: understood!,
          brings: brings.map(seriesAnswer),
        },
        200,
      );
    })
    .openapi(bringsRoute, async (c) => {
      const { file } = c.req.valid('param');
      const { outcome, brings } = await tried(c, file, c.req.valid('query'));
      return c.body(csvBody(csvOf(brings.flatMap(rowsOf))), 200, {
        'Content-Type': 'text/csv; charset=utf-8',
        'Content-Disposition': asFile(`${outcome.file}.csv`),
      });
    });
}

/** What would come of a file that waits. */
async function tried(
  c: Context<Environment>,
  file: string,
  { createStations, ...given }: z.infer<typeof asked>,
): Promise<WaitingOutcome> {
  const [made] = await loadWaiting(c.var.group, c.var.spool, {
    files: [{ file }],
    asked: definedOnly(given),
    createStations: createStations === 'true',
    dryRun: true,
    who: c.var.person.name,
  });
  if (made === undefined) throw new Error('a file that waits came to nothing');
  return made;
}

function rowsOf({ station, quantity, step, at, min, mean, max }: Series): object[] {
  return Array.from(at, (instant, i) => ({
    station,
    quantity,
    time: isoInstant(instant),
    ...(step === 0
      ? { value: figure(mean[i]!, 4) }
      : { value: figure(mean[i]!, 4), lowest: figure(min[i]!, 4), highest: figure(max[i]!, 4) }),
  }));
}
