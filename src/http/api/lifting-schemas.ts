import { z } from '@hono/zod-openapi';
import { foundWays } from '../../season/index.js';

const day = z.iso.date().openapi({ description: 'Local date', example: '2026-06-12' });
const list = <Item extends z.ZodType>(item: Item) => z.array(item).readonly();
const interval = z
  .tuple([z.number(), z.number()])
  .readonly()
  .openapi({ type: 'array', items: { type: 'number' }, description: '80% interval' });

const dayOfPlan = z
  .object({
    date: day,
    stillInBox: z.number().openapi({ description: 'Expected share of alevins still in the box, 0 to 1' }),
    stillInBoxInterval: interval,
    emerged: z.number().openapi({ description: 'Expected share of fry out of the gravel, 0 to 1' }),
    emergedInterval: interval,
    chance: z.number().openapi({ description: 'Chance that both stay within the levels' }),
    blocked: z.string().nullable(),
  })
  .readonly()
  .openapi('LiftingDay');

export const liftingSchema = z
  .object({
    asOf: day,
    cautions: list(z.string()),
    rule: z.string(),
    levels: z.object({ stillInBox: z.number(), emerged: z.number() }).readonly(),
    days: list(dayOfPlan),
    sites: list(z.object({ site: z.string(), days: list(dayOfPlan) }).readonly()),
    boxes: list(
      z
        .object({ box: z.string(), site: z.string(), planned: day.nullable(), days: list(dayOfPlan) })
        .readonly(),
    ),
    recommended: list(day),
    plan: list(z.object({ date: day, sites: list(z.string()), boxes: list(z.string()) }).readonly()),
    chance: z.number(),
    why: z.string(),
    costs: list(
      z
        .object({ days: z.number(), chance: z.number(), stillInBox: z.number(), emerged: z.number() })
        .readonly(),
    ),
    wouldHelp: list(z.string()),
    lookAgainBy: day.nullable(),
    state: z.enum(['draft', 'approved']),
    approved: z
      .object({ by: z.string(), at: z.string(), days: list(day) })
      .readonly()
      .nullable(),
    standing: list(z.string()),
  })
  .readonly()
  .openapi('Lifting');

const text = z.string().max(4000).optional();
/** Numbers may come as text, as forms send them: the season says what is wrong with them, in a sentence. */
const number = z.union([z.number(), z.string().max(40)]).optional();
const entry = z.string().max(80).optional().openapi({
  description: 'Made by the sender, 4 to 80 letters and digits: sent twice, kept once',
});
const when = z.string().max(40).optional().openapi({ description: 'Day or moment; today where absent' });

export const tallyEntered = z
  .strictObject({
    entry,
    when,
    part: text,
    counter: text,
    found: z.enum(foundWays).optional(),
    foundAt: text,
    empty: number,
    dead: number,
    alive: number,
    aliveEggs: number,
    kinds: z.record(z.string().max(40), number).optional(),
    siltMm: number,
    damage: text,
    countStands: z.boolean().optional(),
    note: text,
  })
  .openapi('TallyEntered');

export const putBackEntered = z
  .strictObject({
    entry,
    when,
    who: text,
    alive: number,
    aliveEggs: number,
    empty: number,
    dead: number,
    note: text,
  })
  .openapi('PutBackEntered');

const counted = z.number().nullable();
export const talliesSchema = z
  .object({
    tallies: list(
      z
        .object({
          entry: z.string().nullable(),
          box: z.string(),
          part: z.string().nullable(),
          date: day,
          counter: z.string().nullable(),
          found: z.string(),
          empty: counted,
          dead: counted,
          alive: counted,
          aliveEggs: counted,
          kinds: z.record(z.string(), z.number().nullable()).nullable(),
          siltMm: counted,
          damage: z.string().nullable(),
          planted: z.number(),
          counted,
          difference: counted,
          remarks: list(z.string()),
          note: z.string().nullable(),
        })
        .readonly(),
    ),
    checkedAndPutBack: list(
      z
        .object({
          entry: z.string().nullable(),
          box: z.string(),
          date: day,
          who: z.string().nullable(),
          alive: z.number(),
          aliveEggs: counted,
          empty: counted,
          dead: counted,
          note: z.string().nullable(),
        })
        .readonly(),
    ),
    caution: z.string(),
  })
  .readonly()
  .openapi('Tallies');

export const outcomesSchema = z
  .object({
    outcomes: list(
      z
        .object({
          box: z.string(),
          date: day,
          found: z.string(),
          share: counted,
          most: counted,
          said: list(
            z
              .object({
                asOf: day,
                share: z.number(),
                interval: list(z.number()),
                inWords: z.string(),
                within: z.boolean(),
              })
              .readonly(),
          ),
        })
        .readonly(),
    ),
  })
  .readonly()
  .openapi('LiftingOutcomes');
