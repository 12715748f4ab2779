import { z } from 'zod';
import { choice, count, figure, id, listOf, maybe, oneOrMore, text, thing } from './fields.js';
import { localDate, momentIn, whenIn } from './moments.js';

/** An adult the eggs or milt came from. */
export const broodstockSchema = (zone: string) =>
  thing({
    id,
    when: maybe(whenIn(zone)),
    where: maybe(text),
    sex: maybe(choice('female', 'male')),
    origin: maybe(choice('wild', 'hatchery')),
    lengthCm: maybe(figure(1, 250)),
    sample: maybe(text),
    fate: maybe(choice('released', 'kept', 'died')),
    note: maybe(text),
  });
export type Broodstock = z.infer<ReturnType<typeof broodstockSchema>>;

/** One female's eggs with the milt of one male or several. */
export const crossSchema = (zone: string) =>
  thing({
    id,
    female: id,
    males: oneOrMore(id),
    when: maybe(whenIn(zone)),
    lot: maybe(id),
    eggs: maybe(count(1, 100_000_000)),
    note: maybe(text),
  });
export type Cross = z.infer<ReturnType<typeof crossSchema>>;

/** Counted samples and what the whole lot measured, in one unit: mL displaced, or g. */
const eggCountSchema = thing({
  samples: listOf(thing({ eggs: count(1, 1_000_000), amount: figure(0.001, 1_000_000) })),
  total: figure(0.001, 10_000_000),
});

const disinfectedSchema = (zone: string) =>
  thing({ with: text, minutes: maybe(figure(0, 1440)), at: maybe(momentIn(zone)) });

/** Eggs that stay in the hatchery to learn the fertilisation rate: so many fertilised of so many looked at. */
const controlSchema = thing({
  eggs: count(1, 10_000_000),
  where: maybe(text),
  looked: maybe(localDate),
  fertilised: maybe(count(0, 10_000_000)),
  of: maybe(count(1, 10_000_000)),
});

/**
 * Where eggs were between fertilisation and the box: planted at once, at a hatchery station's recorded water, at a
 * stated temperature, or kept with another lot.
 */
const beforeSchema = z
  .preprocess(
    (given) => (given === undefined || given === null || given === '' || given === 'none' ? {} : given),
    thing({ station: maybe(id), celsius: maybe(figure(-2, 30)), with: maybe(id) }),
  )
  .transform((before, ctx): Before => {
    const said = [before.station, before.celsius, before.with].filter((one) => one !== null);
    if (said.length > 1) {
      ctx.addIssue({ code: 'custom', params: { trouble: { code: 'season.before-what', with: {} } } });
      return z.NEVER;
    }
    if (before.station !== null) return { kind: 'station', station: before.station };
    if (before.celsius !== null) return { kind: 'stated', celsius: before.celsius };
    if (before.with !== null) return { kind: 'lot', lot: before.with };
    return { kind: 'none' };
  });
export type Before =
  | { kind: 'none' }
  | { kind: 'station'; station: string }
  | { kind: 'stated'; celsius: number }
  | { kind: 'lot'; lot: string };

/** Eggs fertilised together. */
export const lotSchema = (zone: string) =>
  thing({
    id,
    fertilised: momentIn(zone),
    /** Broodstock it came from. */
    parents: oneOrMore(id),
    eggs: count(1, 100_000_000),
    counted: maybe(choice('displacement', 'weight', 'by-hand', 'machine', 'estimate')),
    measured: maybe(eggCountSchema),
    disinfected: maybe(disinfectedSchema(zone)),
    control: maybe(controlSchema),
    /** Eggs lost before or at planting, and eggs left over that went elsewhere. */
    lost: maybe(count(0, 100_000_000)),
    leftOver: maybe(count(0, 100_000_000)),
    /** The development table, shipped or the group's own. */
    table: id,
    before: beforeSchema,
    /** Eggs of this lot kept elsewhere, as a control or lost on the way, and why. */
    note: maybe(text),
  });
export type Lot = z.infer<ReturnType<typeof lotSchema>>;
