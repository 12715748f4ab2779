import type { DateOrder } from '../download.js';
import { dayNumber, fullYear } from './civil.js';
import type { Cursor } from './cursor.js';
import { isWeekday, monthNamed } from './words-of-time.js';

/** What the dates of a file look like, so that a cut or foreign one is not taken for another date. */
export interface DateShape {
  /** Decides dates of three numbers whose year does not stand first with four digits. */
  readonly order: DateOrder;
  /** Digits of the year when the file always writes as many; 0 where either will do. */
  readonly yearDigits: 0 | 2 | 4;
}

/** Reads a date at a cursor: three numbers, month names in English and French, or digits without marks. */
export class DateText {
  /** Days since 1970-01-01. */
  day = 0;
  /** Milliseconds since midnight where the digits hold a clock as well (202601151030), else -1. */
  clock = -1;
  /** The date was three numbers whose order is a matter of custom. */
  orderMattered = false;
  /** The date fails in the given order and would pass in the other of dmy and mdy. */
  passesSwapped = false;
  yearDigits = 4;

  constructor(private readonly shape: DateShape) {}

  read(c: Cursor): boolean {
    this.clock = -1;
    this.orderMattered = false;
    this.passesSwapped = false;
    return c.onLetter ? this.fromWord(c) : this.fromNumber(c);
  }

  private fromNumber(c: Cursor): boolean {
    const first = c.number();
    const { digits } = c;
    if (digits === 8 || digits === 12 || digits === 14) return this.compact(first, digits);
    if (digits === 0 || digits === 3 || digits > 4) return false;
    if (digits < 3 && c.onLetter) ordinal(c);
    const mark = c.gap();
    if (c.onLetter) return this.withMonthName(c, first, digits);
    const second = c.shortNumber();
    if (second < 0 || mark === 0 || c.gap() !== mark) return false;
    const third = c.number();
    if (digits === 4) return (c.digits === 1 || c.digits === 2) && this.settle(first, 4, second, third);
    return this.threeNumbers(first, second, third, c.digits);
  }

  private threeNumbers(first: number, second: number, third: number, digits: number): boolean {
    const { order } = this.shape;
    this.orderMattered = true;
    // A four-digit year at the end leaves day and month: only the other two orders can tell them apart.
    if (order === 'ymd') return (digits === 1 || digits === 2) && this.settle(first, 2, second, third);
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
    const number = dayNumber(digits === 2 ? fullYear(year) : year, month, day);
    if (Number.isNaN(number)) return false;
    this.day = number;
    return true;
  }

  /** 20260115, 202601151030, 20260115103000 */
  private compact(value: number, digits: number): boolean {
    let rest = value;
    if (digits > 8) {
      const seconds = digits === 14 ? rest % 100 : 0;
      if (digits === 14) rest = Math.floor(rest / 100);
      const minute = rest % 100;
      const hour = Math.floor(rest / 100) % 100;
      rest = Math.floor(rest / 10_000);
      if (hour > 23 || minute > 59 || seconds > 59) return false;
      this.clock = ((hour * 60 + minute) * 60 + seconds) * 1000;
    }
    return this.settle(Math.floor(rest / 10_000), 4, Math.floor(rest / 100) % 100, rest % 100);
  }

  /** "15 janv. 2026", "15-Jan-26", "2026-Jan-15": the first number is read, the month's name comes next. */
  private withMonthName(c: Cursor, first: number, digits: number): boolean {
    const month = monthNamed(c.word());
    if (month === 0) return false;
    c.gap();
    const last = c.number();
    if (digits === 4) return (c.digits === 1 || c.digits === 2) && this.settle(first, 4, month, last);
    return (c.digits === 2 || c.digits === 4) && this.settle(last, c.digits, month, first);
  }

  /** "Jan 15, 2026", "mardi 15 janvier 2026": a month's name or a weekday stands first. */
  private fromWord(c: Cursor): boolean {
    const word = c.word();
    const month = monthNamed(word);
    c.gap();
    if (month === 0) return isWeekday(word) && !c.done && this.read(c);
    const start = c.at;
    const day = c.shortNumber();
    if (day < 0) return false;
    if (c.onLetter) ordinal(c);
    c.gap();
    if (c.onLetter) {
      // "mar. 15 janv. 2026": the first word was a weekday after all.
      c.at = start;
      return isWeekday(word) && this.read(c);
    }
    const year = c.number();
    return (c.digits === 2 || c.digits === 4) && this.settle(year, c.digits, month, day);
  }
}

/** "1er", "2nd", "15th" */
function ordinal(c: Cursor): void {
  const before = c.at;
  const word = c.word();
  if (word !== 'er' && word !== 'st' && word !== 'nd' && word !== 'rd' && word !== 'th') c.at = before;
}
