import type { z } from 'zod';
import {
  choice,
  count,
  figure,
  id,
  listOf,
  maybe,
  oneOrMore,
  otherwise,
  text,
  thing,
  yesNo,
} from './fields.js';
import { lay } from './loggers.js';
import { localDate, momentIn, whenIn } from './moments.js';
import { photograph } from './photographs.js';

/** A hand thermometer held in running water reads to about half a degree (ours). */
export const HAND_ACCURACY = 0.5;

/** People at a site on a day, and what they saw. */
export const visitSchema = (zone: string) =>
  thing({
    site: id,
    /** Whose water they measured; the site's station where none is named. */
    station: maybe(id),
    when: whenIn(zone),
    who: oneOrMore(text),
    /** Hours at the site, all people together counted once. */
    hours: maybe(figure(0, 72)),
    hand: listOf(
      thing({
        celsius: figure(-2, 35),
        accuracy: otherwise(figure(0.01, 5), HAND_ACCURACY),
        station: maybe(id),
        at: maybe(momentIn(zone)),
      }),
    ),
    /** on: ice had just closed; out: it had just gone; under: the water was under ice; none: open water. */
    ice: maybe(choice('on', 'out', 'under', 'none')),
    /** Gauge board, m. */
    levelM: maybe(figure(-100, 10_000)),
    /** Each logger's clock beside the phone's, seconds fast. */
    clockChecks: listOf(thing({ logger: id, fast: figure(-40_000_000, 40_000_000) })),
    /** What was done with each logger; its deployment follows from it. */
    loggers: listOf(
      thing({
        logger: id,
        did: choice('in', 'out', 'read', 'checked'),
        station: maybe(id),
        lay: maybe(lay),
        box: maybe(id),
        fast: maybe(figure(-40_000_000, 40_000_000)),
        /** What it showed in melting ice, °C. */
        iceBath: maybe(figure(-5, 5)),
      }),
    ),
    photographs: listOf(photograph),
    /** The boxes were looked at and put back as they lay. */
    putBack: maybe(yesNo),
    note: maybe(text),
    /** The entry it came from. */
    entry: maybe(id),
  });
export type Visit = z.infer<ReturnType<typeof visitSchema>>;

/** A stage seen on a day: so many of so many looked at. */
export const observedSchema = thing({
  date: localDate,
  box: maybe(id),
  lot: maybe(id),
  stage: id,
  seen: maybe(count(0, 10_000_000)),
  of: maybe(count(1, 10_000_000)),
  note: maybe(text),
});
export type Observed = z.infer<typeof observedSchema>;

/** Days on which no box may be opened or lifted: ice, high water, no crew, no permit. */
export const blockedSchema = thing({
  from: localDate,
  to: localDate,
  /** Every site where none is named. */
  site: maybe(id),
  reason: text,
});
export type Blocked = z.infer<typeof blockedSchema>;
