import type { DateOrder } from '../download.js';
import { isDigit, isLetter, type TextOf } from './bytes.js';
import { DAY, dayNumber, fullYear, HOUR, MINUTE } from './civil.js';
import { abbreviatedOffset, foldWord, isWeekday, monthNamed } from './words-of-time.js';

/** `CivilTime.offset` where the text states none. */
export const NO_OFFSET = 99_999;

const PM = 1;
const AM = 2;
const T = 84;
const SPACE = 32;
const COLON = 58;
const COMMA = 44;
const DOT = 46;
const MINUS = 45;
const PLUS = 43;

/** What the dates of a file look like, so that a cut or foreign one is not taken for another date. */
export interface DateShape {
  /** Decides dates of three numbers whose year does not stand first with four digits. */
  readonly order: DateOrder;
  /** Digits of the year when the file always writes as many; 0 where either will do. */
  readonly yearDigits: 0 | 2 | 4;
}

/**
 * Reads dates and clocks out of bytes: numbers in any of three orders, month names in English and French, ISO 8601,
 * 12- and 24-hour clocks, offsets and abbreviations of zones. `read` and `readClock` return milliseconds (of the
 * wall clock as if it were UTC, and of the day), NaN where the text is no time; further findings stand in the
 * fields until the next call. One object reads millions of rows without making another.
 */
export class CivilTime {
  /** Minutes east of UTC that the text stated, or NO_OFFSET. */
  offset = NO_OFFSET;
  hasClock = false;
  /** The date was three numbers whose order is a matter of custom. */
  orderMattered = false;
  /** The date fails in the given order and would pass in the other of dmy and mdy. */
  passesSwapped = false;
  yearDigits = 4;

  private at = 0;
  private day = 0;
  private clockInDate = -1;
  private readonly dateBytes = new Uint8Array(24);
  private dateLength = 0;

  constructor(
    private readonly shape: DateShape,
    private readonly textOf: TextOf,
  ) {}

  /** A date with or without a clock. */
  read(b: Uint8Array, from: number, to: number): number {
    let s = from;
    let e = to;
    while (s < e && b[s] <= SPACE) s++;
    while (e > s && b[e - 1] <= SPACE) e--;
    this.offset = NO_OFFSET;
    this.hasClock = false;
    if (!this.sameDate(b, s, e)) {
      this.dateLength = 0;
      if (!this.date(b, s, e)) return Number.NaN;
      this.remember(b, s, e);
    }
    if (this.clockInDate >= 0) {
      this.hasClock = true;
      return this.at === e ? this.day * DAY + this.clockInDate : Number.NaN;
    }
    if (this.at === e) return this.day * DAY;
    if (!this.separator(b, e)) return Number.NaN;
    return this.day * DAY + this.clock(b, e);
  }

  /** A clock alone: milliseconds since midnight. */
  readClock(b: Uint8Array, from: number, to: number): number {
    let s = from;
    let e = to;
    while (s < e && b[s] <= SPACE) s++;
    while (e > s && b[e - 1] <= SPACE) e--;
    this.offset = NO_OFFSET;
    this.at = s;
    return s === e ? Number.NaN : this.clock(b, e);
  }

  /** The bytes of the row before's date stand here again and no digit or letter goes on from them. */
  private sameDate(b: Uint8Array, s: number, e: number): boolean {
    const n = this.dateLength;
    if (n === 0 || e - s < n) return false;
    const known = this.dateBytes;
    for (let i = n - 1; i >= 0; i--) if (b[s + i] !== known[i]) return false;
    const next = s + n < e ? b[s + n] : SPACE;
    if (next !== SPACE && next !== T) return false;
    this.at = s + n;
    return true;
  }

  private remember(b: Uint8Array, s: number, e: number): void {
    const n = this.at - s;
    if (this.clockInDate >= 0 || n > this.dateBytes.length || (this.at < e && isDigit(b[this.at]))) return;
    for (let i = 0; i < n; i++) this.dateBytes[i] = b[s + i];
    this.dateLength = n;
  }

  private date(b: Uint8Array, s: number, e: number): boolean {
    this.at = s;
    this.clockInDate = -1;
    this.orderMattered = false;
    this.passesSwapped = false;
    if (s < e && isLetter(b[s])) return this.dateFromWord(b, e);
    const first = this.number(b, e);
    const digits = this.at - s;
    if (digits === 8 || digits === 12 || digits === 14) return this.compactDate(first, digits);
    if (digits === 0 || digits === 3 || digits > 4) return false;
    if (digits < 3 && this.at < e && isLetter(b[this.at])) this.ordinal(b, e);
    const separator = this.gap(b, e);
    if (this.at < e && isLetter(b[this.at])) return this.dateWithMonthName(b, e, first, digits);
    const second = this.shortNumber(b, e);
    if (second < 0 || separator === 0 || this.gap(b, e) !== separator) return false;
    const start = this.at;
    const third = this.number(b, e);
    const thirdDigits = this.at - start;
    if (digits === 4) return thirdDigits >= 1 && thirdDigits <= 2 && this.settle(first, 4, second, third);
    return this.threeNumbers(first, second, third, thirdDigits);
  }

  private threeNumbers(first: number, second: number, third: number, digits: number): boolean {
    const { order } = this.shape;
    this.orderMattered = true;
    if (order === 'ymd') {
      // A four-digit year at the end leaves day and month: only the other two orders can tell them apart.
      return digits === 4 || digits < 1 || digits > 2 ? false : this.settle(first, 2, second, third);
    }
    if (digits !== 2 && digits !== 4) return false;
    const month = order === 'mdy' ? first : second;
    const day = order === 'mdy' ? second : first;
    if (this.settle(third, digits, month, day)) return true;
    this.passesSwapped = this.settle(third, digits, day, month);
    return false;
  }

  private settle(year: number, digits: number, month: number, day: number): boolean {
    if (this.shape.yearDigits !== 0 && digits !== this.shape.yearDigits) return false;
    this.yearDigits = digits;
    this.day = dayNumber(digits === 2 ? fullYear(year) : year, month, day);
    return !Number.isNaN(this.day);
  }

  /** 20260115, 202601151030, 20260115103000 */
  private compactDate(value: number, digits: number): boolean {
    let rest = value;
    if (digits > 8) {
      const unit = digits === 14 ? 1e6 : 1e4;
      const clock = rest % unit;
      rest = Math.floor(rest / unit);
      const seconds = digits === 14 ? clock % 100 : 0;
      const hhmm = digits === 14 ? Math.floor(clock / 100) : clock;
      const hour = Math.floor(hhmm / 100);
      if (hour > 23 || hhmm % 100 > 59 || seconds > 59) return false;
      this.clockInDate = hour * HOUR + (hhmm % 100) * MINUTE + seconds * 1000;
    }
    return this.settle(Math.floor(rest / 10_000), 4, Math.floor(rest / 100) % 100, rest % 100);
  }

  /** "15 janv. 2026", "15-Jan-26", "2026-Jan-15": the first number is read, the month's name comes next. */
  private dateWithMonthName(b: Uint8Array, e: number, first: number, digits: number): boolean {
    const month = monthNamed(this.word(b, e));
    if (month === 0) return false;
    this.gap(b, e);
    const start = this.at;
    const last = this.number(b, e);
    const lastDigits = this.at - start;
    if (digits === 4) return lastDigits >= 1 && lastDigits <= 2 && this.settle(first, 4, month, last);
    return (lastDigits === 2 || lastDigits === 4) && this.settle(last, lastDigits, month, first);
  }

  /** "Jan 15, 2026", "mardi 15 janvier 2026": a month's name or a weekday stands first. */
  private dateFromWord(b: Uint8Array, e: number): boolean {
    const word = this.word(b, e);
    const month = monthNamed(word);
    this.gap(b, e);
    if (month === 0) return isWeekday(word) && this.at < e && this.date(b, this.at, e);
    const start = this.at;
    const day = this.shortNumber(b, e);
    if (day < 0) return false;
    if (this.at < e && isLetter(b[this.at])) this.ordinal(b, e);
    this.gap(b, e);
    // "mar. 15 janv. 2026": the first word was a weekday after all.
    if (this.at < e && isLetter(b[this.at])) return isWeekday(word) && this.date(b, start, e);
    const yearStart = this.at;
    const year = this.number(b, e);
    const digits = this.at - yearStart;
    return (digits === 2 || digits === 4) && this.settle(year, digits, month, day);
  }

  /** Clock from `at` to the end: 9:05, 21:05:30.25, 9 h 05, 0905, 9:05:00 PM, with an offset or a zone behind. */
  private clock(b: Uint8Array, e: number): number {
    const start = this.at;
    let hour = this.number(b, e);
    const digits = this.at - start;
    let minute = 0;
    let seconds = 0;
    if (digits === 4 || digits === 3) {
      minute = hour % 100;
      hour = Math.floor(hour / 100);
    } else if (digits === 6) {
      seconds = hour % 100;
      minute = Math.floor(hour / 100) % 100;
      hour = Math.floor(hour / 10_000);
    } else if (digits === 0 || digits > 2) return Number.NaN;
    else {
      const mark = this.at < e ? b[this.at] : 0;
      if (mark === COLON || mark === DOT) {
        this.at++;
        minute = this.twoDigits(b, e);
      } else if (this.hourMark(b, e)) {
        minute = this.at < e && isDigit(b[this.at]) ? this.twoDigits(b, e) : 0;
        this.unitWord(b, e, 'min');
      } else if (this.at === e || !this.meridiemAhead(b, e)) return Number.NaN;
      if (minute < 0) return Number.NaN;
      seconds = this.secondsPart(b, e);
    }
    if (!(minute < 60) || !(seconds >= 0 && seconds < 60.0000001)) return Number.NaN;
    return this.afterClock(b, e, hour, minute, seconds);
  }

  private afterClock(b: Uint8Array, e: number, hour24: number, minute: number, seconds: number): number {
    let hour = hour24;
    if (this.at < e) {
      const half = this.meridiem(b, e);
      if (half !== 0) {
        if (hour < 1 || hour > 12) return Number.NaN;
        hour = (hour % 12) + (half === PM ? 12 : 0);
      }
      if (!this.zone(b, e)) return Number.NaN;
    }
    // 24:00 closes a day in ISO 8601 and in several agencies' files.
    if (hour > 23 && !(hour === 24 && minute === 0 && seconds === 0)) return Number.NaN;
    this.hasClock = true;
    return hour * HOUR + minute * MINUTE + Math.round(seconds * 1000);
  }

  private secondsPart(b: Uint8Array, e: number): number {
    if (this.at >= e) return 0;
    const mark = b[this.at];
    if (mark !== COLON && !(mark === DOT && this.at + 1 < e && isDigit(b[this.at + 1]))) {
      if (!isDigit(mark)) return 0;
      // "10 h 05 min 30 s"
      const value = this.twoDigits(b, e);
      this.unitWord(b, e, 's');
      return value;
    }
    this.at++;
    let value = this.twoDigits(b, e);
    if (value < 0) return Number.NaN;
    if (this.at + 1 < e && (b[this.at] === DOT || b[this.at] === COMMA) && isDigit(b[this.at + 1])) {
      this.at++;
      const start = this.at;
      const fraction = this.number(b, e);
      value += fraction / 10 ** (this.at - start);
    }
    return value;
  }

  private hourMark(b: Uint8Array, e: number): boolean {
    let i = this.at;
    while (i < e && b[i] === SPACE) i++;
    if (i >= e || (b[i] !== 104 && b[i] !== 72)) return false;
    if (i + 1 < e && isLetter(b[i + 1])) return false;
    i++;
    while (i < e && b[i] === SPACE) i++;
    this.at = i;
    return true;
  }

  private unitWord(b: Uint8Array, e: number, unit: string): void {
    const before = this.at;
    while (this.at < e && b[this.at] === SPACE) this.at++;
    if (this.at < e && isLetter(b[this.at]) && this.word(b, e) === unit) {
      while (this.at < e && b[this.at] === SPACE) this.at++;
    } else this.at = before;
  }

  private meridiemAhead(b: Uint8Array, e: number): boolean {
    const before = this.at;
    const found = this.meridiem(b, e) !== 0;
    this.at = before;
    return found;
  }

  /** AM, p.m., "P. M." */
  private meridiem(b: Uint8Array, e: number): 0 | typeof AM | typeof PM {
    let i = this.at;
    while (i < e && b[i] === SPACE) i++;
    const letter = i < e ? b[i] | 32 : 0;
    if (letter !== 97 && letter !== 112) return 0;
    i++;
    while (i < e && (b[i] === DOT || b[i] === SPACE)) i++;
    if (i >= e || (b[i] | 32) !== 109) return 0;
    i++;
    if (i < e && b[i] === DOT) i++;
    if (i < e && isLetter(b[i])) return 0;
    this.at = i;
    return letter === 112 ? PM : AM;
  }

  /** What stands behind the clock must be an offset or a zone, or nothing. */
  private zone(b: Uint8Array, e: number): boolean {
    let end = e;
    while (this.at < end && (b[this.at] === SPACE || b[this.at] === 40 || b[this.at] === 91)) this.at++;
    while (end > this.at && (b[end - 1] === 41 || b[end - 1] === 93 || b[end - 1] === SPACE)) end--;
    if (this.at === end) return true;
    if (isLetter(b[this.at])) {
      const named = abbreviatedOffset(this.word(b, end));
      if (named === null) return false;
      this.offset = named;
      while (this.at < end && b[this.at] === SPACE) this.at++;
      if (this.at === end) return true;
      if (named !== 0) return false;
    }
    return this.signedOffset(b, end);
  }

  private signedOffset(b: Uint8Array, e: number): boolean {
    const sign = b[this.at] === PLUS ? 1 : -1;
    if (sign === -1 && !this.minus(b, e)) return false;
    if (sign === 1) this.at++;
    const start = this.at;
    let hours = this.number(b, e);
    const digits = this.at - start;
    let minutes = 0;
    if (digits === 4) {
      minutes = hours % 100;
      hours = Math.floor(hours / 100);
    } else if (digits === 0 || digits > 2) return false;
    else if (this.at < e && b[this.at] === COLON) {
      this.at++;
      minutes = this.twoDigits(b, e);
    }
    if (hours > 14 || minutes < 0 || minutes > 59 || this.at !== e) return false;
    this.offset = sign * (hours * 60 + minutes);
    return true;
  }

  /** The hyphen, or U+2212 as UTF-8 writes it. */
  private minus(b: Uint8Array, e: number): boolean {
    if (b[this.at] === MINUS) this.at++;
    else if (this.at + 2 < e && b[this.at] === 0xe2 && b[this.at + 1] === 0x88 && b[this.at + 2] === 0x92)
      this.at += 3;
    else return false;
    return true;
  }

  /** What may stand between a date and its clock. */
  private separator(b: Uint8Array, e: number): boolean {
    const start = this.at;
    let c = b[this.at];
    if (c === COMMA) c = b[++this.at];
    if (c === T || c === 116 || c === 95) {
      this.at++;
      return this.at < e && isDigit(b[this.at]);
    }
    while (this.at < e && b[this.at] === SPACE) this.at++;
    if (this.at < e && isLetter(b[this.at])) {
      const word = this.word(b, e);
      if (word !== 'a' && word !== 'at' && word !== 'à') return false;
      while (this.at < e && b[this.at] === SPACE) this.at++;
    }
    return this.at > start && this.at < e;
  }

  /** Skips one mark between the numbers of a date, and spaces; returns the mark, a space where only spaces stood. */
  private gap(b: Uint8Array, e: number): number {
    let mark = 0;
    while (this.at < e) {
      const c = b[this.at];
      if (c === SPACE) mark = mark === 0 ? SPACE : mark;
      else if (c === MINUS || c === 47 || c === DOT || c === COMMA) {
        if (mark !== 0 && mark !== SPACE && mark !== DOT) return mark;
        mark = c;
      } else break;
      this.at++;
    }
    return mark;
  }

  /** "1er", "2nd", "15th" */
  private ordinal(b: Uint8Array, e: number): void {
    const before = this.at;
    const word = this.word(b, e);
    if (word !== 'er' && word !== 'st' && word !== 'nd' && word !== 'rd' && word !== 'th') this.at = before;
  }

  private word(b: Uint8Array, e: number): string {
    const start = this.at;
    while (this.at < e && isLetter(b[this.at])) this.at++;
    return foldWord(this.textOf(b, start, this.at));
  }

  private number(b: Uint8Array, e: number): number {
    let value = 0;
    let i = this.at;
    for (; i < e; i++) {
      const c = b[i];
      if (c < 48 || c > 57) break;
      value = value * 10 + (c - 48);
    }
    this.at = i;
    return value;
  }

  private shortNumber(b: Uint8Array, e: number): number {
    const start = this.at;
    const value = this.number(b, e);
    return this.at === start || this.at - start > 2 ? -1 : value;
  }

  private twoDigits(b: Uint8Array, e: number): number {
    const start = this.at;
    const value = this.number(b, e);
    return this.at - start === 2 ? value : -1;
  }
}
