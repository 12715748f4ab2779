import type { DayNumber } from '../../forecasting/units.js';
import { CommandRefused } from './refused.js';

/** A date option as a day number; null where it was not given. @throws CommandRefused when it is no date. */
export function dayOption(option: string, value: string | undefined): DayNumber | null {
  if (value === undefined) return null;
  const at = /^\d{4}-\d{2}-\d{2}$/.test(value) ? Date.parse(`${value}T00:00Z`) : Number.NaN;
  // Date.parse takes 30 February for 2 March: a date is one only if it comes back as it was written.
  if (Number.isNaN(at) || new Date(at).toISOString().slice(0, 10) !== value) {
    throw new CommandRefused({ code: 'cli-not-a-date', with: { option, value } });
  }
  return at / 86_400_000;
}
