import { z } from 'zod';
import {
  choice,
  count,
  field,
  figure,
  id,
  maybe,
  oneOrMore,
  otherwise,
  short,
  text,
  thing,
  yesNo,
} from './fields.js';
import { whenIn } from './moments.js';

/** What the one who entered something called it before it was sent, so that sent twice it is there once. */
const ENTRY = /^[A-Za-z0-9][A-Za-z0-9._:-]{3,79}$/;
export const entryId = field(z.string(), (given) =>
  ENTRY.test(given) ? { value: given } : { code: 'season.bad-entry', with: { given: short(given) } },
);

const MOST = 10_000_000;
const number = maybe(count(0, MOST));

/** What the dead in a lifted box had died of, as far as it can be told. */
export const deadKinds = [
  'neverFertilised',
  'beforeEyeUp',
  'eyedDied',
  'hatchedDied',
  'fungus',
  'silted',
  'cannotTell',
] as const;
export type DeadKind = (typeof deadKinds)[number];

/**
 * Kinds of dead that tell how far an egg had come, in the order of its life, each with the stage it had not reached
 * any more; the others may have died at any time.
 */
export const diedBefore = [
  ['neverFertilised', 'eye-up'],
  ['beforeEyeUp', 'eye-up'],
  ['eyedDied', 'hatch'],
  ['hatchedDied', 'out'],
] as const satisfies readonly (readonly [DeadKind, string])[];

/** Stages that a tally tells apart, as far as the kinds of its dead do, in order. */
export const talliedStages = ['eye-up', 'hatch'] as const satisfies readonly Exclude<
  (typeof diedBefore)[number][1],
  'out'
>[];
export type TalliedStage = (typeof talliedStages)[number];

/** Where a box was when the crew came for it. */
export const foundWays = ['in-place', 'not-found', 'carried-away', 'found-elsewhere'] as const;
export type Found = (typeof foundWays)[number];

/** What one person counted in a lifted box, or in a part of it; another person's count of it is an entry of its own. */
export const tallySchema = (zone: string) =>
  thing({
    entry: maybe(entryId),
    box: id,
    part: maybe(text),
    when: whenIn(zone),
    counter: maybe(text),
    found: otherwise(choice(...foundWays), 'in-place'),
    foundAt: maybe(text),
    /** Compartments whose egg or alevin has left, or is gone. */
    empty: number,
    dead: number,
    alive: number,
    /** Of the living, eggs that have not hatched. */
    aliveEggs: number,
    kinds: maybe(
      thing({
        neverFertilised: number,
        beforeEyeUp: number,
        eyedDied: number,
        hatchedDied: number,
        fungus: number,
        silted: number,
        cannotTell: number,
      }),
    ),
    siltMm: maybe(figure(0, 1000)),
    damage: maybe(text),
    photographs: oneOrMore(text),
    /** More came out than was written down going in, and the counter stands by it. */
    countStands: otherwise(yesNo, false),
    note: maybe(text),
  });
export type Tally = z.infer<ReturnType<typeof tallySchema>>;

/** A box that was opened, found still occupied, closed and put back: not a lifting. */
export const putBackSchema = (zone: string) =>
  thing({
    entry: maybe(entryId),
    box: id,
    when: whenIn(zone),
    who: maybe(text),
    /** Living eggs and alevins still in it. */
    alive: count(0, MOST),
    /** Of them, eggs that have not hatched. */
    aliveEggs: number,
    empty: number,
    dead: number,
    note: maybe(text),
  });
export type PutBack = z.infer<ReturnType<typeof putBackSchema>>;

/** What can be wrong with a count; words in src/words/<lang>/counts. */
export interface CountProblemWords {
  'season.bad-entry': { given: string };
  'season.same-entry': { entry: string };
  'season.counted-more': { box: string; counted: number; planted: number };
  'season.counted-before-planted': { box: string; counted: string; planted: string };
  'season.kinds-more-than-dead': { kinds: number; dead: number };
  'season.eggs-more-than-alive': { box: string; eggs: number; alive: number };
  'season.no-such-part': { box: string; part: string; known: string };
  'season.nothing-counted': { box: string };
  'season.counted-though-gone': { box: string };
  'season.gauge-has-no': { station: string; quantity: string };
}
