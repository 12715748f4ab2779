import type { TextOf } from './bytes.js';
import { ClockText, NO_OFFSET } from './clock-text.js';
import { Cursor, SPACE } from './cursor.js';
import { type DateShape, DateText } from './date-text.js';

const T = 84;
const COMMA = 44;
const UNDERSCORE = 95;
/** Longest date that is remembered from row to row. */
const REMEMBERED = 24;

/**
 * Reads dates and clocks out of bytes: numbers in any of three orders, month names in English and French, ISO 8601,
 * 12- and 24-hour clocks, offsets and abbreviations of zones. `read` and `readClock` say whether the text was a time;
 * what they found stands in the fields until the next call. Rows of one day share their date's bytes, so a date is
 * worked out once a day.
 */
export class CivilTime {
  /** Days since 1970-01-01. */
  day = 0;
  /** Milliseconds since midnight; 0 where the text has no clock. */
  millis = 0;
  /** Minutes east of UTC that the text stated, or NO_OFFSET. */
  offset = NO_OFFSET;
  hasClock = false;
  /** What the reading of the date found out besides the day. */
  readonly date: DateText;
  private readonly clock = new ClockText();
  private readonly cursor: Cursor;
  private readonly known = new Uint8Array(REMEMBERED);
  private knownLength = 0;

  constructor(shape: DateShape, textOf: TextOf) {
    this.date = new DateText(shape);
    this.cursor = new Cursor(textOf);
  }

  /** A date with or without a clock. */
  read(b: Uint8Array, from: number, to: number): boolean {
    const { cursor, date } = this;
    cursor.begin(b, from, to);
    this.offset = NO_OFFSET;
    this.hasClock = false;
    this.millis = 0;
    if (!this.sameDate()) {
      this.knownLength = 0;
      const start = cursor.at;
      if (!date.read(cursor)) return false;
      this.day = date.day;
      this.remember(start);
    }
    if (date.clock >= 0) {
      this.hasClock = true;
      this.millis = date.clock;
      return cursor.done;
    }
    return cursor.done || (this.toClock() && this.takeClock());
  }

  /** A clock alone. */
  readClock(b: Uint8Array, from: number, to: number): boolean {
    this.cursor.begin(b, from, to);
    return !this.cursor.done && this.takeClock();
  }

  private takeClock(): boolean {
    if (!this.clock.read(this.cursor)) return false;
    this.millis = this.clock.millis;
    this.offset = this.clock.offset;
    this.hasClock = true;
    return true;
  }

  /** The bytes of the row before's date stand here again and no digit or letter goes on from them. */
  private sameDate(): boolean {
    const { known, knownLength: n, cursor } = this;
    const { b, at, end } = cursor;
    if (n === 0 || end - at < n) return false;
    for (let i = n - 1; i >= 0; i--) if (b[at + i] !== known[i]) return false;
    const next = at + n < end ? b[at + n] : SPACE;
    if (next !== SPACE && next !== T) return false;
    cursor.at = at + n;
    return true;
  }

  private remember(start: number): void {
    const { cursor } = this;
    const n = cursor.at - start;
    if (this.date.clock >= 0 || n > REMEMBERED || cursor.onDigit) return;
    for (let i = 0; i < n; i++) this.known[i] = cursor.b[start + i];
    this.knownLength = n;
  }

  /** Goes over what may stand between a date and its clock: a space, a T, a comma, "at", "à". */
  private toClock(): boolean {
    const c = this.cursor;
    const start = c.at;
    if (c.byte === COMMA) c.at++;
    if ((c.byte | 32) === (T | 32) || c.byte === UNDERSCORE) {
      c.at++;
      return c.onDigit;
    }
    c.spaces();
    if (c.onLetter) {
      const word = c.word();
      if (word !== 'a' && word !== 'at') return false;
      c.spaces();
    }
    return c.at > start && !c.done;
  }
}
