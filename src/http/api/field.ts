import { createRoute, z } from '@hono/zod-openapi';
import {
  batchSchema,
  entryCautions,
  fieldsOf,
  keepPhotograph,
  MOST_PHOTO_MEGABYTES,
  photographBytes,
  preparedDay,
  type Receipt,
  readBatch,
  receiveEntries,
  settleEntry,
  whyWaiting,
} from '../../field/index.js';
import { type Language, say } from '../../words/index.js';
import { sayRefusal } from '../../words/refusals.js';
import { received } from '../received/bytes.js';
import { HttpRefused } from '../refused.js';
import { answers, apiPart, refusals, refuses } from './routing.js';

const id = z.string().max(64);
const receiptSchema = z.object({
  id,
  state: z.enum(['taken', 'waiting', 'before']),
  became: z.string().nullable(),
  /** Why it waits, in words. */
  why: z.string().nullable(),
  /** What is to be heard of a planting: handling, tempering, cold water. */
  cautions: z.array(z.string()),
});
const entrySchema = z.object({
  id,
  kind: z.string(),
  state: z.enum(['taken', 'waiting', 'left']),
  who: z.string().nullable(),
  phone: z.string().nullable(),
  entered: z.string(),
  received: z.string(),
  fast: z.number().nullable(),
  became: z.string().nullable(),
  why: z.string().nullable(),
  fields: z.record(z.string(), z.unknown()).nullable(),
});
const spans = {
  killsFrom: z.array(z.number().nullable()).readonly(),
  killsTo: z.array(z.number().nullable()).readonly(),
  coldBelow: z.number().nullable(),
  temperBeyond: z.number().nullable(),
};
const preparedSchema = z.object({
  group: z.string(),
  you: z.string(),
  version: z.number(),
  sites: z.array(z.object({ id, name: z.string(), access: z.string(), find: z.string() })),
  boxes: z.array(
    z.object({
      id,
      site: id,
      find: z.string(),
      planted: z.boolean(),
      eggs: z.number(),
      parts: z.array(z.string()),
      compartments: z.number().nullable(),
      latitude: z.number().nullable(),
      longitude: z.number().nullable(),
    }),
  ),
  lots: z.array(
    z.object({
      id,
      unplaced: z.number(),
      fertilised: z.number(),
      table: z.string(),
      ...spans,
    }),
  ),
  loggers: z.array(z.object({ id, lying: z.string() })),
  adults: z.array(z.object({ id, sex: z.string() })),
  crosses: z.array(z.object({ id, lot: z.string(), adults: z.array(z.string()) })),
  sheets: z.array(
    z.object({
      date: z.string(),
      site: id,
      boxes: z.array(id),
      draft: z.boolean(),
      stop: z.object({ en: z.string(), fr: z.string() }),
      title: z.object({ en: z.string(), fr: z.string() }),
    }),
  ),
  tables: z.array(z.object({ id, en: z.string(), fr: z.string(), ...spans })),
});

const preparedRoute = createRoute({
  method: 'get',
  path: '/field',
  summary: 'What a phone carries along for a day in the field',
  responses: { 200: answers(preparedSchema, 'Sites, boxes, lots, loggers and adults by name'), ...refusals },
});

const sendRoute = createRoute({
  method: 'post',
  path: '/entries',
  summary: 'Send what was written down in the field; an entry sent twice is taken once',
  request: { body: { content: { 'application/json': { schema: batchSchema } }, required: true } },
  responses: {
    200: answers(z.object({ entries: z.array(receiptSchema) }), 'What became of each entry'),
    413: refuses('Too much at once'),
    503: refuses('Others change the season all the time'),
    ...refusals,
  },
});

const listRoute = createRoute({
  method: 'get',
  path: '/entries',
  summary: 'Entries from the field: taken, waiting for a person (and why), left aside',
  responses: { 200: answers(z.object({ entries: z.array(entrySchema) }), 'The entries'), ...refusals },
});

const settleRoute = createRoute({
  method: 'post',
  path: '/entries/{id}/settle',
  summary: 'Take an entry that waits, as it is or with other fields, or leave it aside',
  request: {
    params: z.object({ id }),
    body: {
      content: {
        'application/json': {
          schema: z.object({
            how: z.enum(['take', 'leave']),
            fields: z.record(z.string(), z.unknown()).optional(),
          }),
        },
      },
      required: true,
    },
  },
  responses: { 204: { description: 'Settled' }, 404: refuses('No such entry'), ...refusals },
});

const photoRoute = createRoute({
  method: 'put',
  path: '/photographs',
  summary: 'Keep a photograph: drawn anew as JPEG, without its position unless asked for',
  request: {
    query: z.object({ position: z.enum(['true', 'false']).default('false') }),
    body: {
      content: { 'application/octet-stream': { schema: z.string().openapi({ format: 'binary' }) } },
      required: true,
    },
  },
  responses: {
    201: answers(z.object({ photograph: z.string() }), 'The name a visit or a box states'),
    400: refuses('The upload broke off'),
    413: refuses('Larger than a photograph is'),
    ...refusals,
  },
});

const photoBytesRoute = createRoute({
  method: 'get',
  path: '/photographs/{name}',
  summary: 'A kept photograph',
  request: { params: z.object({ name: z.string().max(100) }) },
  responses: {
    200: { content: { 'image/jpeg': { schema: z.string() } }, description: 'The picture' },
    404: refuses('There is none of that name'),
    ...refusals,
  },
});

export function fieldRoutes() {
  return apiPart()
    .openapi(preparedRoute, async (c) => {
      const { group, person } = c.var;
      const { sites, boxes, lots, loggers, adults, crosses, sheets, tables, ...rest } = await preparedDay(
        group,
        person.name,
      );
      const day = {
        ...rest,
        sites: [...sites],
        boxes: boxes.map((box) => ({ ...box, parts: [...box.parts] })),
        sheets: sheets.map((sheet) => ({ ...sheet, boxes: [...sheet.boxes] })),
        lots: [...lots],
        loggers: [...loggers],
        adults: [...adults],
        crosses: crosses.map((cross) => ({ ...cross, adults: [...cross.adults] })),
        tables: [...tables],
      };
      return c.json(day, 200);
    })
    .openapi(sendRoute, async (c) => {
      const { group, person, language } = c.var;
      const batch = readBatch(c.req.valid('json'));
      const receipts = await receiveEntries(group, batch, person.name, Date.now());
      const [season, tables] = [await group.season(), await group.tables()];
      const cautions = batch.entries.map((sent) =>
        entryCautions(season, tables, sent).map((caution) => say(language, caution)),
      );
      return c.json({ entries: receipts.map((one, i) => receipt(one, cautions[i] ?? [], language)) }, 200);
    })
    .openapi(listRoute, async (c) => {
      const season = await c.var.group.season();
      const entries = season.entries.map((entry) => {
        const { id, kind, state, who, phone, entered, received, fast, became } = entry;
        const refusal = state === 'waiting' ? whyWaiting(season, entry, Date.now()) : null;
        return {
          ...{ id, kind, state, who, phone, entered, received, fast, became },
          why: refusal === null ? null : sayRefusal(c.var.language, refusal),
          fields: entry.fields === null ? null : fieldsOf(entry),
        };
      });
      return c.json({ entries }, 200);
    })
    .openapi(settleRoute, async (c) => {
      const { how, fields } = c.req.valid('json');
      const { group, person } = c.var;
      const settle = how === 'leave' ? ('leave' as const) : { take: fields ?? null };
      await settleEntry(group, c.req.valid('param').id, settle, person.name, Date.now());
      return c.body(null, 204);
    })
    .openapi(photoRoute, async (c) => {
      const { body } = c.req.raw;
      if (body === null) throw new HttpRefused(400, { code: 'http-broken-off', with: {} });
      const chunks: Uint8Array[] = [];
      const limits = {
        bytes: MOST_PHOTO_MEGABYTES * 1_000_000,
        tooLarge: () =>
          new HttpRefused(413, { code: 'http-file-too-large', with: { megabytes: MOST_PHOTO_MEGABYTES } }),
        patienceSeconds: 120,
      };
      for await (const chunk of received(body, limits)) chunks.push(chunk);
      const position = c.req.valid('query').position === 'true';
      const photograph = await keepPhotograph(c.var.group.folder, Buffer.concat(chunks), position);
      return c.json({ photograph }, 201);
    })
    .openapi(photoBytesRoute, async (c) => {
      const bytes = await photographBytes(c.var.group.folder, c.req.valid('param').name);
      return c.body(new Uint8Array(bytes), 200, {
        'Content-Type': 'image/jpeg',
        'Cache-Control': 'private, max-age=31536000, immutable',
      });
    });
}

function receipt(
  { id, state, became, refusal }: Receipt,
  cautions: string[],
  language: Language,
): z.infer<typeof receiptSchema> {
  return { id, state, became, why: refusal === null ? null : sayRefusal(language, refusal), cautions };
}
