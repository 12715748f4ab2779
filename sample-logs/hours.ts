/** The invented record runs hour by hour over these moments; local standard time is four hours behind UTC. */
export const HOUR = 3_600_000;
export const DAY = 24 * HOUR;
export const STANDARD_OFFSET = -4 * HOUR;

/** Midnight local standard time of a date, epoch ms. */
export const midnight = (date: string): number => Date.parse(`${date}T00:00Z`) - STANDARD_OFFSET;

export const FIRST = midnight('2020-09-01');
export const LAST = midnight('2026-06-21');
export const HOURS = (LAST - FIRST) / HOUR;

/** One value an hour, the first at FIRST. */
export type Hourly = Float64Array;

/** The value at any moment of the record, straight between the hours. */
export function valueAt(hourly: Hourly, at: number): number {
  const position = (at - FIRST) / HOUR;
  const before = Math.floor(position);
  const share = position - before;
  const here = hourly[before];
  if (here === undefined) throw new RangeError(`the record holds no ${new Date(at).toISOString()}`);
  return share === 0 ? here : here + share * ((hourly[before + 1] ?? here) - here);
}

/** Moments from `from` up to and without `to`, `step` ms apart. */
export function moments(from: number, to: number, step: number): number[] {
  return Array.from({ length: Math.max(0, Math.ceil((to - from) / step)) }, (_, i) => from + i * step);
}
