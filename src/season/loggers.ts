import type { z } from 'zod';
import {
  choice,
  count,
  figure,
  id,
  listOf,
  maybe,
  otherwise,
  text,
  thing,
  yesNo,
  zoneName,
} from './fields.js';
import { momentIn } from './moments.js';
import { correctionSchema } from './rulings.js';

/** An instrument. */
export const loggerSchema = thing({
  id,
  serial: maybe(text),
  /** Stated by its maker, °C: one error shared by a whole deployment. */
  accuracy: maybe(figure(0, 5)),
  /** Readings its memory holds. */
  memory: maybe(count(1, 100_000_000)),
  /** Minutes between readings. */
  interval: maybe(figure(0.01, 1440)),
  /** The zone its clock keeps: `UTC-03:30` stays on that offset, an IANA name follows summer time. */
  clock: maybe(zoneName),
  note: maybe(text),
});
export type Logger = z.infer<typeof loggerSchema>;

export const lay = choice('in-box', 'tied-to-box', 'gravel', 'stream', 'bank', 'tank', 'air');

/** The stretch of time one logger lay at one station. `to` is null while it lies there still, or was lost. */
export const deploymentSchema = (zone: string) =>
  thing({
    logger: id,
    station: id,
    lay: otherwise(lay, 'stream'),
    /** The box it lay in or was tied to. */
    box: maybe(id),
    from: momentIn(zone),
    to: maybe(momentIn(zone)),
    lost: otherwise(yesNo, false),
    /** Visits on which it was read and left lying: what it held is known from then on, not before. */
    read: listOf(momentIn(zone)),
    /** The zone its clock kept this time, where it differs from the logger's habit. */
    clock: maybe(zoneName),
    /** Its clock beside a true one: seconds fast (slow is negative) at a moment. */
    clockChecks: listOf(thing({ at: momentIn(zone), fast: figure(-40_000_000, 40_000_000) })),
    /** What it showed in melting ice, °C, when it was put in and when it was taken out: taken off its readings. */
    iceBath: maybe(thing({ before: maybe(figure(-5, 5)), after: maybe(figure(-5, 5)) })),
    /** What the checks offered and a person accepted. */
    corrections: listOf(correctionSchema(zone)),
    note: maybe(text),
  });
export type Deployment = z.infer<ReturnType<typeof deploymentSchema>>;
