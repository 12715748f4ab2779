import { z } from 'zod';
import { count, figure, id, latitude, listOf, longitude, maybe, oneOrMore, text, thing } from './fields.js';
import { momentIn } from './moments.js';
import { photograph } from './photographs.js';

/** How the eggs came to the site: temperatures of the transport and of the site, °C, and the minutes between them. */
const plantingSchema = thing({
  transportC: maybe(figure(-2, 30)),
  siteC: maybe(figure(-2, 30)),
  temperedMinutes: maybe(figure(0, 1440)),
  who: oneOrMore(text),
});

/** Eggs of one lot in one box, or in a part of it as the group names its parts. */
export const fillSchema = (zone: string) =>
  thing({
    lot: id,
    part: maybe(text),
    eggs: count(1, 10_000_000),
    planted: momentIn(zone),
    /** Compartments left empty, and compartments that got two eggs. */
    unfilled: maybe(count(0, 1_000_000)),
    doubled: maybe(count(0, 1_000_000)),
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
    /** The mark on the bank it is found by, and what it is tied to. */
    bankMark: maybe(text),
    tiedTo: maybe(text),
    photographs: listOf(photograph),
    compartments: maybe(count(1, 1_000_000)),
    depthM: maybe(figure(0, 20)),
    latitude: maybe(latitude),
    longitude: maybe(longitude),
    planting: maybe(plantingSchema),
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
