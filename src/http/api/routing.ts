import { OpenAPIHono, z } from '@hono/zod-openapi';
import type { DayNumber } from '../../../forecasting/units.js';
import type { Environment } from '../environment.js';
import { HttpRefused } from '../refused.js';
import { problemSchema } from './schemas.js';

/** A part of the API: what does not fit its schemas is refused in one sentence that names the places. */
export function apiPart(): OpenAPIHono<Environment> {
  return new OpenAPIHono<Environment>({
    defaultHook: (read) => {
      if (read.success) return undefined;
      const places = read.error.issues.map(({ path }) => path.map(String).join('.') || read.target);
      throw new HttpRefused(422, {
        code: 'http-not-these-values',
        with: { places: [...new Set(places)].slice(0, 10) },
      });
    },
  });
}

export function answers<Schema extends z.ZodType>(schema: Schema, description: string) {
  return { content: { 'application/json': { schema } }, description };
}

export const refuses = (description: string) => ({
  content: { 'application/problem+json': { schema: problemSchema } },
  description,
});

/** Refusals every route may answer with; the sentences are in `detail`. */
export const refusals = {
  401: refuses('Sign in first, or send an API token'),
  403: refuses('The role does not allow this, or the request is forged'),
  422: refuses('A value does not fit'),
};

export const dateQuery = z.iso
  .date()
  .optional()
  .openapi({ example: '2026-02-15', description: 'Local date, year-month-day' });

export function dayOf(date: string | undefined): DayNumber | null {
  return date === undefined ? null : Date.parse(`${date}T00:00Z`) / 86_400_000;
}

export const pageQuery = z.object({
  cursor: z.string().max(200).optional().openapi({ description: 'As `next` of the page before said' }),
  limit: z.coerce.number().int().min(1).max(1000).default(100),
});

export const next = z
  .string()
  .nullable()
  .openapi({ description: 'The cursor of the next page; null at the end' });

/** One page of a list whose order stands: a cursor names the last thing of the page before. */
export function pageOf<Row>(
  rows: readonly Row[],
  { cursor, limit }: z.infer<typeof pageQuery>,
  name: (row: Row) => string,
): { readonly rows: readonly Row[]; readonly next: string | null } {
  const after = cursor === undefined ? -1 : rows.findIndex((row) => cursorOf(name(row)) === cursor);
  if (cursor !== undefined && after === -1) throw new HttpRefused(422, { code: 'http-bad-cursor', with: {} });
  const page = rows.slice(after + 1, after + 1 + limit);
  const last = page.at(-1);
  const more = after + 1 + limit < rows.length;
  return { rows: page, next: more && last !== undefined ? cursorOf(name(last)) : null };
}

function cursorOf(name: string): string {
  return Buffer.from(name).toString('base64url');
}
