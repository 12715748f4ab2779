import type { z } from 'zod';
import { checkKinds } from '../../forecasting/quality/finding.js';
import { choice, figure, id, otherwise, text, thing } from './fields.js';
import { momentIn } from './moments.js';
import { quantity } from './stations.js';

/** What a check is called in the season file. */
export const check = choice(...checkKinds);

/** What a person rules of the readings a check spoke about. */
export const verdicts = ['good', 'suspect', 'fail'] as const;
export type Verdict = (typeof verdicts)[number];

/** A person overrules what a check says of a stretch of a record. The check's own words stay to be read. */
export const rulingSchema = (zone: string) =>
  thing({
    station: id,
    quantity: otherwise(quantity, 'temperature'),
    check,
    from: momentIn(zone),
    to: momentIn(zone),
    verdict: choice(...verdicts),
    reason: text,
    by: text,
    at: momentIn(zone),
  });
export type Ruling = z.infer<ReturnType<typeof rulingSchema>>;

/**
 * A correction of a logger that a check offered and a person accepted: °C, or seconds, to add. `check`: at `from` this
 * is what is added, in a straight line from and to other checks; `step`: added from `from` on; `rising`: from nothing
 * at `from` in a straight line to `add` at `to`.
 */
export const correctionSchema = (zone: string) =>
  thing({
    quantity: choice('temperature', 'clock'),
    course: choice('check', 'step', 'rising'),
    from: momentIn(zone),
    to: momentIn(zone),
    add: figure(-40_000_000, 40_000_000),
    check,
    by: text,
    at: momentIn(zone),
  });
export type Correction = z.infer<ReturnType<typeof correctionSchema>>;
