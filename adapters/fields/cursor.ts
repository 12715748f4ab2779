import { isLetter, type TextOf } from './bytes.js';
import { foldWord } from './words-of-time.js';

export const SPACE = 32;
const COMMA = 44;
const MINUS = 45;
const DOT = 46;
const SLASH = 47;

/**
 * A place in a field's bytes, from which numbers, words and marks are taken one after the other. One cursor serves
 * millions of fields; nothing is made for each. Functions return small whole numbers and truth values only: other
 * numbers would each be an object.
 */
export class Cursor {
  b: Uint8Array = new Uint8Array(0);
  at = 0;
  end = 0;
  /** Digits of the number taken last. */
  digits = 0;

  constructor(private readonly textOf: TextOf) {}

  /** Begins a field, without the spaces around it. */
  begin(b: Uint8Array, from: number, to: number): void {
    let s = from;
    let e = to;
    while (s < e && b[s] <= SPACE) s++;
    while (e > s && b[e - 1] <= SPACE) e--;
    this.b = b;
    this.at = s;
    this.end = e;
  }

  get done(): boolean {
    return this.at >= this.end;
  }

  /** The byte here, 0 at the end. */
  get byte(): number {
    return this.at < this.end ? this.b[this.at] : 0;
  }

  get onDigit(): boolean {
    const c = this.byte;
    return c >= 48 && c <= 57;
  }

  get onLetter(): boolean {
    return this.at < this.end && isLetter(this.b[this.at]);
  }

  /** Takes digits as a number; 0 with `digits` 0 where none stand. */
  number(): number {
    const { b, end } = this;
    let value = 0;
    let i = this.at;
    for (; i < end; i++) {
      const c = b[i];
      if (c < 48 || c > 57) break;
      value = value * 10 + (c - 48);
    }
    this.digits = i - this.at;
    this.at = i;
    return value;
  }

  /** A number of one or two digits, -1 otherwise. */
  shortNumber(): number {
    const value = this.number();
    return this.digits === 1 || this.digits === 2 ? value : -1;
  }

  /** A number of exactly two digits, -1 otherwise. */
  twoDigits(): number {
    const value = this.number();
    return this.digits === 2 ? value : -1;
  }

  /** Takes letters as a word, folded. */
  word(): string {
    const start = this.at;
    while (this.onLetter) this.at++;
    return foldWord(this.textOf(this.b, start, this.at));
  }

  /** Takes letters of ASCII alone, folded: what stands behind may be the real minus sign. */
  plainWord(): string {
    const start = this.at;
    while (this.onLetter && this.b[this.at] < 128) this.at++;
    return foldWord(this.textOf(this.b, start, this.at));
  }

  spaces(): void {
    while (this.byte === SPACE) this.at++;
  }

  /** Skips one mark between the parts of a date, and spaces; returns the mark, a space where only spaces stood. */
  gap(): number {
    let mark = 0;
    while (this.at < this.end) {
      const c = this.b[this.at];
      if (c === SPACE) mark = mark === 0 ? SPACE : mark;
      else if (c === MINUS || c === SLASH || c === DOT || c === COMMA) {
        if (mark !== 0 && mark !== SPACE && mark !== DOT) return mark;
        mark = c;
      } else break;
      this.at++;
    }
    return mark;
  }
}
