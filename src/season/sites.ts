import type { z } from 'zod';
import { choice, figure, id, latitude, listOf, longitude, maybe, text, thing } from './fields.js';
import { photograph } from './photographs.js';

/** A place in the river where boxes lie. */
export const siteSchema = thing({
  id,
  name: maybe(text),
  /** How to get there, and with whose consent. */
  access: maybe(text),
  consent: maybe(text),
  /** How to find what lies there: bank mark, distances, what it is tied to. */
  find: maybe(text),
  bankMark: maybe(text),
  photographs: listOf(photograph),
  depthM: maybe(figure(0, 20)),
  velocityMs: maybe(figure(0, 10)),
  bed: maybe(text),
  iceRisk: maybe(choice('low', 'moderate', 'high')),
  latitude: maybe(latitude),
  longitude: maybe(longitude),
  /** Where the water of this site is recorded: its boxes and visits mean this station unless they name another. */
  station: maybe(id),
  note: maybe(text),
});
export type Site = z.infer<typeof siteSchema>;
