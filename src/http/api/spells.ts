import { createRoute, z } from '@hono/zod-openapi';
import { fullSpellAnswer } from '../../spells/answers.js';
import { beginOfDay } from '../../spells/days.js';
import { certainty, severity, spellKind, spellState, waterOrigin } from '../../spells/kept.js';
import { isoInstant } from '../../words/index.js';
import { asFile, csvBody, csvText } from '../csv.js';
import { answers, apiPart, dateQuery, dayOf, refusals, refuses } from './routing.js';

const said = z.object({ by: z.string(), at: z.string(), note: z.string() });
const stages = z.array(z.object({ stage: z.string(), chance: z.number() })).readonly();

const spellSchema = z
  .object({
    id: z.string(),
    boxes: z.array(z.string()).readonly(),
    kind: spellKind,
    severity,
    stages: z.array(z.string()).readonly().openapi({ description: 'Possible stages, likeliest first' }),
    from: z.string().openapi({ description: 'ISO 8601 UTC' }),
    to: z.string(),
    peak_c: z.number().nullable(),
    hours: z.number(),
    certainty,
    state: spellState,
    eggs: z.number(),
    station: z.string(),
    origin: waterOrigin,
    degree_hours: z.number().nullable(),
    chance: z.number().nullable(),
    touched: z
      .array(z.object({ box: z.string(), lot: z.string(), eggs: z.number(), severity, stages }))
      .readonly(),
    found: z.string(),
    acknowledged: said.nullable(),
    settled: said.extend({ how: z.enum(['happened', 'did-not-happen']) }).nullable(),
    title: z.string(),
    sentences: z.array(z.string()),
    sources: z.array(z.string()).readonly(),
  })
  .openapi('Spell', { description: 'A run of harmful water, judged by the stage the eggs were in' });

const asked = z.object({ box: z.string().max(100).optional(), since: dateQuery });
const unknownBox = refuses('The season has no such box');

const spellsRoute = createRoute({
  method: 'get',
  path: '/spells',
  summary: 'Spells that harm eggs, open ones first, for ever',
  request: { query: asked },
  responses: {
    200: answers(z.object({ spells: z.array(spellSchema) }), 'The spells'),
    404: unknownBox,
    ...refusals,
  },
});

const spellsCsvRoute = createRoute({
  method: 'get',
  path: '/spells.csv',
  summary: 'The same as CSV: one row a spell and box',
  request: { query: asked },
  responses: {
    200: { content: { 'text/csv': { schema: z.string() } }, description: 'The spells' },
    404: unknownBox,
    ...refusals,
  },
});

const note = z.string().max(2000).default('');
const id = z.object({ spell: z.string().max(200) });
const one = answers(spellSchema, 'The spell as it stands now');
const unknownSpell = refuses('There is no such spell');

const acknowledgeRoute = createRoute({
  method: 'post',
  path: '/spells/{spell}/acknowledge',
  summary: 'Say that you have seen it, with a note',
  request: {
    params: id,
    body: { content: { 'application/json': { schema: z.object({ note }) } }, required: false },
  },
  responses: { 200: one, 404: unknownSpell, ...refusals },
});

const settleRoute = createRoute({
  method: 'post',
  path: '/spells/{spell}/settle',
  summary: 'Say what a possible exposure was: it is then confirmed or withdrawn',
  request: {
    params: id,
    body: {
      content: {
        'application/json': { schema: z.object({ how: z.enum(['happened', 'did-not-happen']), note }) },
      },
      required: true,
    },
  },
  responses: { 200: one, 404: unknownSpell, ...refusals },
});

export function spellRoutes() {
  return apiPart()
    .openapi(spellsRoute, async (c) => {
      const { box, since } = c.req.valid('query');
      const { zone } = (await c.var.group.season()).group;
      const rows = await c.var.group.spells({ box: box ?? null, since: begin(since, zone) });
      return c.json({ spells: rows.map((row) => fullSpellAnswer(row, c.var.language, zone)) }, 200);
    })
    .openapi(spellsCsvRoute, async (c) => {
      const { box, since } = c.req.valid('query');
      const { zone } = (await c.var.group.season()).group;
      const rows = await c.var.group.spells({ box: box ?? null, since: begin(since, zone) });
      return c.body(csvBody(lines(rows)), 200, {
        'Content-Type': 'text/csv; charset=utf-8',
        'Content-Disposition': asFile('spells.csv'),
      });
    })
    .openapi(acknowledgeRoute, async (c) => {
      const { group, person, language } = c.var;
      const told = c.req.valid('json')?.note ?? '';
      const row = await group.acknowledgeSpell(c.req.valid('param').spell, told, person.name);
      return c.json(fullSpellAnswer(row, language, (await group.season()).group.zone), 200);
    })
    .openapi(settleRoute, async (c) => {
      const { group, person, language } = c.var;
      const { how, note: told } = c.req.valid('json');
      const row = await group.settleExposure(c.req.valid('param').spell, how, told, person.name);
      return c.json(fullSpellAnswer(row, language, (await group.season()).group.zone), 200);
    });
}

function begin(since: string | undefined, zone: string): number | null {
  const day = dayOf(since);
  return day === null ? null : beginOfDay(day, zone);
}

type Rows = Awaited<ReturnType<import('../../group/index.js').Group['spells']>>;

function* lines(rows: Rows): Generator<string> {
  yield 'id,box,lot,eggs,kind,severity,stage,from,to,peak_c,hours,degree_hours,certainty,chance,state,station';
  for (const row of rows) {
    for (const { box, lot, eggs, severity: own, stages: those } of row.touched) {
      const figures = [row.peak, row.hours, row.degreeHours].map((value) => value ?? '');
      yield [
        csvText(row.id),
        csvText(box),
        csvText(lot),
        eggs,
        row.kind,
        own,
        csvText(those[0]?.stage ?? ''),
        isoInstant(row.from),
        isoInstant(row.to),
        ...figures,
        row.certainty,
        row.chance ?? '',
        row.state,
        csvText(row.station),
      ].join(',');
    }
  }
}
