import { DateTime } from 'luxon';

/** What a wall clock in a zone shows, in luxon's format letters. */
export const shown = (at: number, zone: string, format: string, locale = 'en-CA'): string =>
  DateTime.fromMillis(at, { zone, locale }).toFormat(format);

/** The spreadsheet serial day of a wall clock: days since 30 December 1899. */
export function serialDay(at: number, zone: string): number {
  const wall = DateTime.fromMillis(at, { zone });
  return (at + wall.offset * 60_000) / 86_400_000 + 25_569;
}

/** The clock of this river: Atlantic time, an hour later in summer. */
export const RIVER_ZONE = 'America/Moncton';
