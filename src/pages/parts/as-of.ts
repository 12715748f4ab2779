import type { Context } from 'hono';
import type { DayNumber } from '../../../forecasting/units.js';
import type { Environment } from '../../http/environment.js';

const DAY = 86_400_000;

/** The day a page is asked to look back at (`?as_of=2026-02-15`); null: today. What is no date is left aside. */
export function asOfAsked(c: Context<Environment>): DayNumber | null {
  const given = c.req.query('as_of') ?? '';
  const at = /^\d{4}-\d{2}-\d{2}$/.test(given) ? Date.parse(`${given}T00:00Z`) : Number.NaN;
  return Number.isNaN(at) ? null : at / DAY;
}
