import type { DateOrder } from '../download.js';
import { textDecoder } from '../fields/bytes.js';
import { DAY } from '../fields/civil.js';
import { CivilTime } from '../fields/civil-time.js';
import { NO_OFFSET } from '../fields/clock-text.js';

export type CellKind = 'empty' | 'datetime' | 'date' | 'clock' | 'number' | 'text';

const utf8 = textDecoder('utf-8');
const orders: readonly DateOrder[] = ['dmy', 'mdy', 'ymd'];
const readers = orders.map((order) => ({ order, time: new CivilTime({ order, yearDigits: 0 }, utf8) }));
const LONGEST_TIME = 48;
const NUMBER =
  /^[+\-\u2212]?(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:e[+-]?\d{1,3})?(?:[\s\u00a0\u202f]*(?:°|º|˚|deg\.?)?\s*[CFK])?$/i;

/** How one text reads as a time under one order of its numbers. */
export interface TimeReading {
  readonly order: DateOrder;
  readonly at: number;
  readonly hasClock: boolean;
  readonly orderMattered: boolean;
  readonly yearDigits: number;
  /** Minutes east of UTC, null where not stated. */
  readonly offset: number | null;
}

/** All ways to read a text as a date, with or without a clock; one way where the order of its numbers is plain. */
export function timeReadings(text: string): TimeReading[] {
  if (text.length > LONGEST_TIME || !/\d/.test(text)) return [];
  const bytes = new Uint8Array(Buffer.from(text, 'utf8'));
  const found: TimeReading[] = [];
  for (const { order, time } of readers) {
    if (!time.read(bytes, 0, bytes.length)) continue;
    const { hasClock } = time;
    const { orderMattered, yearDigits } = time.date;
    const at = time.day * DAY + time.millis;
    const offset = time.offset === NO_OFFSET ? null : time.offset;
    found.push({ order, at, hasClock, orderMattered, yearDigits, offset });
    if (!orderMattered) break;
  }
  return found;
}

/** Milliseconds since midnight, NaN where the text is no clock. */
export function clockReading(text: string): number {
  if (text.length > LONGEST_TIME) return Number.NaN;
  const bytes = new Uint8Array(Buffer.from(text, 'utf8'));
  const { time } = readers[0];
  return time.readClock(bytes, 0, bytes.length) ? time.millis : Number.NaN;
}

export function isNumber(text: string): boolean {
  return NUMBER.test(text);
}

/** What a cell looks like on its own. Digits without marks are numbers, whatever date they may turn out to be. */
export function cellKind(text: string): CellKind {
  const cell = text.trim();
  if (cell === '') return 'empty';
  if (isNumber(cell)) return 'number';
  const [time] = timeReadings(cell);
  if (time !== undefined) return time.hasClock ? 'datetime' : 'date';
  return Number.isNaN(clockReading(cell)) ? 'text' : 'clock';
}
