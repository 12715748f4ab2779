import type { z } from 'zod';
import { choice, count, figure, id, listOf, maybe, oneOrMore, otherwise, text, thing } from './fields.js';
import { localDate, momentIn } from './moments.js';

/** Shares that a lifting day may not pass where the group states no others (ours; see forecasting/lifting). */
export const USUAL_STILL_IN_BOX = 0.02;
export const USUAL_EMERGED = 0.05;

/** How the boxes are to be lifted: the biologist's rule, the crew's limits, and the plan a person approved. */
export const liftingSchema = (zone: string) =>
  thing({
    rule: otherwise(choice('before-emergence', 'after-emergence'), 'before-emergence'),
    /** Shares from 0 to 1: alevins still in the box, fry already out of the gravel. */
    stillInBox: otherwise(figure(0, 1), USUAL_STILL_IN_BOX),
    emerged: otherwise(figure(0, 1), USUAL_EMERGED),
    boxesADay: maybe(count(1, 100_000)),
    /** Sites worked on one trip: [[upper-pool, ford], [braid]]. */
    trips: listOf(oneOrMore(id)),
    /** Above this at a station that records it, nobody wades: m, or m³/s. */
    gauge: maybe(
      thing({ station: id, quantity: choice('level', 'discharge'), most: figure(-1000, 1_000_000) }),
    ),
    /** Living alevins in the box opened first, above which the site's boxes go back; 2 % of its eggs where not stated. */
    stopAbove: maybe(count(0, 1_000_000)),
    approved: maybe(
      thing({
        by: text,
        at: momentIn(zone),
        /** The day whose forecast it rests on. */
        asOf: localDate,
        chance: figure(0, 1),
        days: listOf(thing({ date: localDate, boxes: oneOrMore(id) })),
      }),
    ),
    note: maybe(text),
  });
export type Lifting = z.infer<ReturnType<typeof liftingSchema>>;
