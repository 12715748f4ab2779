import { createRoute, z } from '@hono/zod-openapi';
import type { Settings } from '../../settings/index.js';
import { isoInstant } from '../../words/index.js';
import { received } from '../received/bytes.js';
import { fileTooLarge } from '../received/posted.js';
import type { SpooledFile } from '../received/spool.js';
import { unpacked } from '../received/unpack.js';
import { HttpRefused } from '../refused.js';
import { answers, apiPart, refusals, refuses } from './routing.js';
import { spooledSchema } from './schemas.js';

const filesAnswer = z.object({ files: z.array(spooledSchema) });

const receiveRoute = createRoute({
  method: 'put',
  path: '/files/{name}',
  summary: 'Send a file, streamed; an archive comes apart into its files, a workbook into one sheet',
  request: {
    params: z.object({ name: z.string().max(1000) }),
    query: z.object({ sheet: z.string().max(200).optional() }),
    body: {
      content: { 'application/octet-stream': { schema: z.string().openapi({ format: 'binary' }) } },
      required: true,
    },
  },
  responses: {
    201: answers(filesAnswer, 'The files now waiting to be accepted'),
    400: refuses('The upload broke off'),
    408: refuses('Hardly anything arrived any more'),
    413: refuses('Larger than this service takes'),
    429: refuses('Too many files are waiting already'),
    507: refuses('The waiting files would take too much room'),
    ...refusals,
  },
});

const waitingRoute = createRoute({
  method: 'get',
  path: '/files',
  summary: 'Files received and not yet accepted',
  responses: { 200: answers(filesAnswer, 'The files'), ...refusals },
});

const leaveRoute = createRoute({
  method: 'delete',
  path: '/files/{file}',
  summary: 'Leave a file: it is thrown away',
  request: { params: z.object({ file: z.string().max(64) }) },
  responses: {
    204: { description: 'Left' },
    404: refuses('No such file is waiting'),
    ...refusals,
  },
});

export function fileRoutes(settings: Settings) {
  return apiPart()
    .openapi(receiveRoute, async (c) => {
      const { body } = c.req.raw;
      if (body === null) throw new HttpRefused(400, { code: 'http-broken-off', with: {} });
      const bytes = received(body, {
        bytes: settings.uploadMegabytes * 1_000_000,
        tooLarge: () => fileTooLarge(settings),
        patienceSeconds: settings.patienceSeconds,
      });
      refuseStatedTooLarge(c.req.header('Content-Length'), settings);
      const file = await c.var.spool.receive(c.req.valid('param').name, c.var.person.name, bytes);
      const files = await unpacked(file, c.var.spool, settings, c.req.valid('query').sheet ?? null);
      return c.json({ files: files.map(waiting) }, 201);
    })
    .openapi(waitingRoute, (c) => c.json({ files: c.var.spool.list().map(waiting) }, 200))
    .openapi(leaveRoute, async (c) => {
      const { id } = c.var.spool.file(c.req.valid('param').file);
      await c.var.spool.drop(id);
      return c.body(null, 204);
    });
}

/** Who says beforehand that too much is coming is told so beforehand. */
function refuseStatedTooLarge(length: string | undefined, settings: Settings): void {
  if (Number(length ?? 0) > settings.uploadMegabytes * 1_000_000) throw fileTooLarge(settings);
}

export function waiting({ id, name, bytes, at, by }: SpooledFile): z.infer<typeof spooledSchema> {
  return { file: id, name, bytes, at: isoInstant(at), by };
}
