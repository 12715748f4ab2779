import { z } from 'zod';
import { type Field, field, short } from './fields.js';
import type { Trouble } from './problem.js';
import { isoIn, momentsShowing, type WallClock, zoneNamed } from './zones.js';

/** A moment, ISO 8601 to the second with the offset the group's zone had then: 2025-11-04T14:30:00-03:30. */
export type Moment = string;
/** A day in the group's zone: 2025-11-04. */
export type LocalDate = string;

const DATE = /^(\d{4})-(\d{2})-(\d{2})$/;
const MOMENT = /^(\d{4}-\d{2}-\d{2})[T ](\d{2}):(\d{2})(?::(\d{2})(?:\.0+)?)? ?(Z|UTC|[+-]\d{2}:?\d{2})?$/i;
/** Salmon were planted before and will be after; a year outside is a slip of the pen. */
const FIRST_YEAR = 1900;
const LAST_YEAR = 2099;

function dayOf(given: string): { year: number; month: number; day: number } | Trouble {
  const digits = DATE.exec(given);
  if (!digits) return { code: 'season.not-a-date', with: { given: short(given) } };
  const [year, month, day] = [Number(digits[1]), Number(digits[2]), Number(digits[3])];
  const there = new Date(Date.UTC(year, month - 1, day));
  const exists = there.getUTCMonth() === month - 1 && there.getUTCDate() === day;
  if (!exists || year < FIRST_YEAR || year > LAST_YEAR)
    return { code: 'season.no-such-day', with: { given: short(given) } };
  return { year, month, day };
}

/** A day written YYYY-MM-DD. */
export const localDate: Field<LocalDate> = field(z.string(), (given) => {
  const day = dayOf(given);
  return 'code' in day ? day : { value: given };
});

/** A moment written `2025-11-04 14:30` in `zone`, or in ISO 8601 with an offset. */
export const momentIn = (zone: string): Field<Moment> =>
  field(z.string(), (given) => readMoment(given, zone));

function readMoment(given: string, zoneWritten: string): { value: Moment } | Trouble {
  const zone = zoneNamed(zoneWritten);
  if (zone === null) return { code: 'season.unknown-zone', with: { given: short(zoneWritten) } };
  const parts = MOMENT.exec(given);
  if (!parts) return { code: 'season.not-a-moment', with: { given: short(given) } };
  const day = dayOf(parts[1] ?? '');
  if ('code' in day) return day;
  const [hour, minute, second] = [Number(parts[2]), Number(parts[3]), Number(parts[4] ?? 0)];
  if (hour > 23 || minute > 59 || second > 59)
    return { code: 'season.not-a-moment', with: { given: short(given) } };
  const wall: WallClock = { ...day, hour, minute, second };
  if (parts[5] !== undefined) {
    const offset = offsetMinutes(parts[5]);
    if (offset === null) return { code: 'season.not-a-moment', with: { given: short(given) } };
    const at = Date.UTC(wall.year, wall.month - 1, wall.day, hour, minute, second) - offset * 60_000;
    return { value: isoIn(zone, at) };
  }
  const [first, again] = momentsShowing(wall, zone);
  if (first === undefined)
    return { code: 'season.skipped-hour', with: { given: short(given), zone: zoneWritten } };
  if (again !== undefined)
    return {
      code: 'season.repeated-hour',
      with: { given: short(given), first: isoIn(zone, first), second: isoIn(zone, again) },
    };
  return { value: isoIn(zone, first) };
}

function offsetMinutes(written: string): number | null {
  if (/^(z|utc)$/i.test(written)) return 0;
  const hours = Number(written.slice(1, 3));
  const minutes = Number(written.slice(-2));
  if (hours > 14 || minutes > 59) return null;
  return (written.startsWith('-') ? -1 : 1) * (hours * 60 + minutes);
}

/** Milliseconds since 1970 of a moment. */
export const epochMillis = (moment: Moment): number => Date.parse(moment);

/**
 * A moment as a person writes it in the season file: the wall clock of `zone` without an offset, unless that hour
 * came twice. Reading it back in the same zone gives the same moment.
 */
export function writtenMoment(moment: Moment, zone: string): string {
  const wall = moment.slice(0, 19).replace('T', ' ').replace(/:00$/, '');
  const read = readMoment(wall, zone);
  return 'value' in read && read.value === moment ? wall : moment;
}

/** The moment `at` (ms since 1970) as a clock in `zone` shows it. */
export function momentAt(at: number, zone: string): Moment {
  const known = zoneNamed(zone);
  if (known === null) throw new RangeError(`there is no zone ${zone}`);
  return isoIn(known, Math.floor(at / 1000) * 1000);
}

/** When something happened, to the day or to the minute. */
export interface When {
  /** The day in the group's zone. */
  readonly date: LocalDate;
  /** The moment, where it was written down. */
  readonly at: Moment | null;
}

/** A day, or a moment of that day, written in one field. */
export const whenIn = (zone: string): Field<When> =>
  field(z.object({ date: z.string(), at: z.string().nullable() }), (given) => {
    const day = DATE.test(given) ? dayOf(given) : readMoment(given, zone);
    if ('code' in day) return day;
    if ('value' in day) return { value: { date: day.value.slice(0, 10), at: day.value } };
    return { value: { date: given, at: null } };
  });

/** A day or moment as a person writes it in the season file. */
export const writtenWhen = (when: When, zone: string): string =>
  when.at === null ? when.date : writtenMoment(when.at, zone);
