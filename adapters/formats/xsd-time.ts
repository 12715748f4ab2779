import type { EpochMillis } from '../batch.js';

/** An xs:dateTime: its wall clock as if it were UTC, and the offset it states, in minutes east; null where none. */
export interface StatedTime {
  readonly wall: EpochMillis;
  readonly offset: number | null;
  /** A date alone: what stands beside it speaks of the whole day. */
  readonly wholeDay: boolean;
}

const DATE_TIME = /^\s*(\d{4})-(\d\d)-(\d\d)(?:T(\d\d):(\d\d)(?::(\d\d)(\.\d+)?)?)?(Z|[+-]\d\d:?\d\d)?\s*$/;
const DURATION = /^\s*P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?(?:(\d+(?:\.\d+)?)S)?)?\s*$/;
const MOST_OFFSET = 14 * 60;

/** Minutes east of UTC in `+05:45`, `-0330` or `Z`; null when it is none, or beyond the 14 h XML Schema allows. */
export function parseOffset(text: string): number | null {
  const trimmed = text.trim();
  if (trimmed === 'Z') return 0;
  const found = /^([+-])(\d\d):?(\d\d)$/.exec(trimmed);
  if (found === null || Number(found[3]) > 59) return null;
  const minutes = Number(found[2]) * 60 + Number(found[3]);
  if (minutes > MOST_OFFSET) return null;
  return found[1] === '-' ? -minutes : minutes;
}

const daysInMonth = (year: number, month: number): number => new Date(Date.UTC(year, month, 0)).getUTCDate();

/**
 * Reads an xs:dateTime or xs:date (XML Schema part 2; the year in four digits, 24:00:00 is the next midnight).
 *
 * @returns null when the text is no such time or names a day or hour that does not exist
 */
export function parseDateTime(text: string): StatedTime | null {
  const found = DATE_TIME.exec(text);
  if (found === null) return null;
  const [year, month, day, hour, minute, second] = [1, 2, 3, 4, 5, 6].map((i) => Number(found[i] ?? 0));
  const fraction = Number(`0${found[7] ?? ''}`);
  if (month! < 1 || month! > 12 || day! < 1 || day! > daysInMonth(year!, month!)) return null;
  if (minute! > 59 || second! > 59 || hour! > 24 || (hour === 24 && minute! + second! + fraction > 0))
    return null;
  const offset = found[8] === undefined ? null : parseOffset(found[8]);
  if (found[8] !== undefined && offset === null) return null;
  const wall = Date.UTC(year!, month! - 1, day, hour, minute, second, Math.round(fraction * 1000));
  return { wall, offset, wholeDay: found[4] === undefined };
}

/** An xs:duration of fixed length (days and below, no months) in milliseconds; null when it is none. */
export function parseDuration(text: string): EpochMillis | null {
  const found = DURATION.exec(text);
  if (found === null) return null;
  const [days, hours, minutes, seconds] = [1, 2, 3, 4].map((i) => Number(found[i] ?? 0));
  const length = (((days! * 24 + hours!) * 60 + minutes!) * 60 + seconds!) * 1000;
  return length > 0 ? length : null;
}
