import { z } from 'zod';
import { type Field, field, short } from './fields.js';

/** The name a photograph is kept by: the hash of its bytes. */
const NAME = /^[0-9a-f]{40}\.jpg$/;

/** A photograph kept beside the season, by its name. */
export const photograph: Field<string> = field(z.string(), (given) =>
  NAME.test(given) ? { value: given } : { code: 'season.not-a-photograph', with: { given: short(given) } },
);
