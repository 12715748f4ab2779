import { z } from 'zod';
import type { JudgedSpell } from '../../forecasting/spells/spell.js';
import type { Mark, Source } from '../../forecasting/table.js';
import type { SpellEntry, SpellEventRow } from '../store/index.js';
import type { Settled, SpellEvent, SpellRow } from './contract.js';

/** What a spell may be called, for what is kept and for what is answered. */
export const severity = z.enum(['lethal', 'lowers-survival', 'watch', 'event']);
export const spellKind = z.enum([
  'too-warm',
  'freezing',
  'sudden-change',
  'too-cold',
  'exposure',
  'freshet',
  'break-up',
  'low-water',
]);
export const spellState = z.enum(['open', 'ended', 'past', 'confirmed', 'withdrawn']);
export const certainty = z.enum(['measured', 'estimated', 'possible']);
export const waterOrigin = z.enum(['measured', 'filled', 'projected', 'none']);
const mark: z.ZodType<Mark> = z.enum(['memory', 'abstract', 'common practice', 'ours', 'computed']);
const source: z.ZodType<Source> = z
  .object({
    cite: z.string(),
    inFrench: z.string().optional(),
    mark: mark.optional(),
    of: z.string().optional(),
  })
  .transform(({ cite, inFrench, mark: how, of }) => ({
    cite,
    ...(inFrench === undefined ? {} : { inFrench }),
    ...(how === undefined ? {} : { mark: how }),
    ...(of === undefined ? {} : { of }),
  }));

/** A spell as the catalogue keeps it, JSON. */
const judgedSchema: z.ZodType<JudgedSpell> = z.object({
  id: z.string(),
  state: spellState,
  kind: spellKind,
  severity,
  certainty,
  station: z.string(),
  origin: waterOrigin,
  boxes: z.array(z.string()),
  eggs: z.number(),
  stages: z.array(z.string()),
  from: z.number(),
  to: z.number(),
  peak: z.number().nullable(),
  hours: z.number(),
  degreeHours: z.number().nullable(),
  chance: z.number().nullable(),
  limit: z
    .object({
      value: z.number(),
      unit: z.enum(['celsius', 'celsius-per-hour', 'metres', 'times-usual', 'hours']),
      hours: z.number(),
      sources: z.array(source),
    })
    .nullable(),
  touched: z.array(
    z.object({
      box: z.string(),
      lot: z.string(),
      eggs: z.number(),
      severity,
      stages: z.array(z.object({ stage: z.string(), chance: z.number() })),
    }),
  ),
  mortality: z.array(
    z.object({
      from: z.number(),
      to: z.number(),
      conditions: z.object({ en: z.string(), fr: z.string() }),
      source,
    }),
  ),
  sign: z.enum(['in-air', 'in-snow', 'frozen-in', 'just-below-zero', 'not-damped']).nullable(),
});

const change = z.enum(['opened', 'worsened', 'ended', 'confirmed', 'withdrawn', 'past']);
const how: z.ZodType<Settled['how']> = z.enum(['happened', 'did-not-happen']);

export function judgedOf(text: string): JudgedSpell {
  return judgedSchema.parse(JSON.parse(text));
}

export function rowOf({ found, changed, judged, seen, settled }: SpellEntry): SpellRow {
  return {
    ...judgedOf(judged),
    found,
    changed,
    acknowledged: seen,
    settled: settled === null ? null : { ...settled, how: how.parse(settled.how) },
  };
}

export function entryOf({ found, changed, acknowledged, settled, ...spell }: SpellRow): SpellEntry {
  return { id: spell.id, found, changed, judged: JSON.stringify(spell), seen: acknowledged, settled };
}

export function eventOf(row: SpellEventRow): SpellEvent {
  const { number, judging, at } = row;
  return { number, judging, at, change: change.parse(row.change), spell: judgedOf(row.judged) };
}
