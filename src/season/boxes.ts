import { z } from 'zod';
import { count, figure, id, latitude, longitude, maybe, oneOrMore, text, thing } from './fields.js';
import { momentIn } from './moments.js';

/** Eggs of one lot in one box, or in a part of it as the group names its parts. */
export const fillSchema = (zone: string) =>
  thing({
    lot: id,
    part: maybe(text),
    eggs: count(1, 10_000_000),
    planted: momentIn(zone),
  });
export type Fill = z.infer<ReturnType<typeof fillSchema>>;

/**
 * One incubator at one site. `planted` may stand once at the box for all its fills; `stations` are the places whose
 * water is the box's, in order of trust, the site's station where none is named.
 */
export const boxSchema = (zone: string) =>
  thing({
    id,
    site: id,
    fills: z.preprocess((given) => given ?? [], z.array(fillSchema(zone))),
    lifted: maybe(momentIn(zone)),
    stations: oneOrMore(id),
    /** How to find this box. */
    find: maybe(text),
    compartments: maybe(count(1, 1_000_000)),
    depthM: maybe(figure(0, 20)),
    latitude: maybe(latitude),
    longitude: maybe(longitude),
    note: maybe(text),
  });
export type Box = z.infer<ReturnType<typeof boxSchema>>;

/** Puts a box's own `planted` into its fills that have none, before they are checked. */
export function spreadPlanted(written: unknown): unknown {
  if (typeof written !== 'object' || written === null || !('planted' in written)) return written;
  const { planted, ...box } = written;
  if (!('fills' in box) || !Array.isArray(box.fills)) return written;
  const fills = box.fills.map((fill: unknown) =>
    typeof fill === 'object' && fill !== null && !('planted' in fill) ? { ...fill, planted } : fill,
  );
  return { ...box, fills };
}
