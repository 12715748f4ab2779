import { isLetter } from './bytes.js';
import { type Cursor, SPACE } from './cursor.js';
import { abbreviatedOffset } from './words-of-time.js';

/** `offset` where the text states none. */
export const NO_OFFSET = 99_999;

const COLON = 58;
const COMMA = 44;
const DOT = 46;
const PLUS = 43;
const MINUS = 45;
const Z = 90;
const LONGEST_OFFSET_HOURS = 14;

/** Reads the rest of a field as a clock: 9:05, 21:05:30.25, 9 h 05, 0905, 9:05:00 PM, with an offset or zone behind. */
export class ClockText {
  /** Milliseconds since midnight. */
  millis = 0;
  /** Minutes east of UTC that the text stated, or NO_OFFSET. */
  offset = NO_OFFSET;
  private minute = 0;
  private second = 0;
  private fraction = 0;

  read(c: Cursor): boolean {
    this.offset = NO_OFFSET;
    return this.plain(c) || this.any(c);
  }

  /** 10:05, 10:05:30 and 10:05:30.25, alone or with Z or ±hh:mm behind: how nearly every file writes it. */
  private plain({ b, at, end }: Cursor): boolean {
    if (end - at < 5 || b[at + 2] !== COLON) return false;
    const hour = pair(b, at);
    const minute = pair(b, at + 3);
    let second = 0;
    let fraction = 0;
    let i = at + 5;
    if (i + 3 <= end && b[i] === COLON) {
      second = pair(b, i + 1);
      i += 3;
      if (i + 1 < end && b[i] === DOT) {
        let scale = 1000;
        for (i++; i < end && b[i] >= 48 && b[i] <= 57; i++) {
          scale /= 10;
          fraction += (b[i] - 48) * scale;
        }
      }
    }
    if (hour < 0 || hour > 23 || minute < 0 || minute > 59 || second < 0 || second > 59) return false;
    if (i < end && !this.plainOffset(b, i, end)) return false;
    this.millis = ((hour * 60 + minute) * 60 + second) * 1000 + Math.round(fraction);
    return true;
  }

  private plainOffset(b: Uint8Array, i: number, end: number): boolean {
    if (b[i] === Z && i + 1 === end) {
      this.offset = 0;
      return true;
    }
    const colon = end - i === 6 && b[i + 3] === COLON;
    if ((b[i] !== PLUS && b[i] !== MINUS) || (!colon && end - i !== 5)) return false;
    const hours = pair(b, i + 1);
    const minutes = pair(b, colon ? i + 4 : i + 3);
    if (hours < 0 || hours > LONGEST_OFFSET_HOURS || minutes < 0 || minutes > 59) return false;
    this.offset = (b[i] === PLUS ? 1 : -1) * (hours * 60 + minutes);
    return true;
  }

  private any(c: Cursor): boolean {
    this.minute = 0;
    this.second = 0;
    this.fraction = 0;
    let hour = c.number();
    const { digits } = c;
    if (digits === 3 || digits === 4) {
      this.minute = hour % 100;
      hour = Math.floor(hour / 100);
    } else if (digits === 6) {
      this.second = hour % 100;
      this.minute = Math.floor(hour / 100) % 100;
      hour = Math.floor(hour / 10_000);
    } else if (digits === 0 || digits > 2 || !this.afterHour(c)) return false;
    if (this.minute > 59 || this.second > 59) return false;
    return this.afterClock(c, hour);
  }

  private afterHour(c: Cursor): boolean {
    if (c.byte === COLON || c.byte === DOT) {
      c.at++;
      this.minute = c.twoDigits();
    } else if (hourMark(c)) {
      this.minute = c.onDigit ? c.twoDigits() : 0;
      unitWord(c, 'min');
    } else return meridiemAhead(c);
    return this.minute >= 0 && this.seconds(c);
  }

  private seconds(c: Cursor): boolean {
    const mark = c.byte;
    if (c.onDigit) {
      // "10 h 05 min 30 s"
      this.second = c.twoDigits();
      unitWord(c, 's');
      return this.second >= 0;
    }
    if (mark !== COLON && !(mark === DOT && digitAt(c, c.at + 1))) return true;
    c.at++;
    this.second = c.twoDigits();
    if (this.second < 0) return false;
    if ((c.byte !== DOT && c.byte !== COMMA) || !digitAt(c, c.at + 1)) return true;
    c.at++;
    const fraction = c.number();
    this.fraction = Math.round((fraction / 10 ** c.digits) * 1000);
    return true;
  }

  private afterClock(c: Cursor, stated: number): boolean {
    let hour = stated;
    if (!c.done) {
      const half = meridiem(c);
      if (half !== '') {
        if (hour < 1 || hour > 12) return false;
        hour = (hour % 12) + (half === 'pm' ? 12 : 0);
      }
      if (!this.zone(c)) return false;
    }
    // 24:00 closes a day in ISO 8601 and in several agencies' files.
    if (hour > 23 && !(hour === 24 && this.minute === 0 && this.second === 0)) return false;
    this.millis = ((hour * 60 + this.minute) * 60 + this.second) * 1000 + this.fraction;
    return true;
  }

  /** What stands behind the clock must be an offset or a zone, or nothing. */
  private zone(c: Cursor): boolean {
    while (c.byte === SPACE || c.byte === 40 || c.byte === 91) c.at++;
    while (c.end > c.at && closes(c.b[c.end - 1])) c.end--;
    if (c.done) return true;
    if (c.onLetter) {
      const named = abbreviatedOffset(c.plainWord());
      if (named === null) return false;
      this.offset = named;
      c.spaces();
      if (c.done) return true;
      if (named !== 0) return false;
    }
    return this.signedOffset(c);
  }

  private signedOffset(c: Cursor): boolean {
    const sign = signAt(c);
    if (sign === 0) return false;
    let hours = c.number();
    const { digits } = c;
    let minutes = 0;
    if (digits === 4) {
      minutes = hours % 100;
      hours = Math.floor(hours / 100);
    } else if (digits === 0 || digits > 2) return false;
    else if (c.byte === COLON) {
      c.at++;
      minutes = c.twoDigits();
    }
    if (hours > LONGEST_OFFSET_HOURS || minutes < 0 || minutes > 59 || !c.done) return false;
    this.offset = sign * (hours * 60 + minutes);
    return true;
  }
}

function pair(b: Uint8Array, i: number): number {
  const tens = b[i] - 48;
  const ones = b[i + 1] - 48;
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : -1;
}

function digitAt(c: Cursor, i: number): boolean {
  return i < c.end && c.b[i] >= 48 && c.b[i] <= 57;
}

function closes(byte: number): boolean {
  return byte === 41 || byte === 93 || byte === SPACE;
}

/** Takes + (1), - or U+2212 (-1), 0 where neither stands. */
function signAt(c: Cursor): number {
  if (c.byte === PLUS || c.byte === MINUS) return c.b[c.at++] === PLUS ? 1 : -1;
  if (c.at + 2 >= c.end || c.byte !== 0xe2 || c.b[c.at + 1] !== 0x88 || c.b[c.at + 2] !== 0x92) return 0;
  c.at += 3;
  return -1;
}

/** Takes the h between hour and minute, and the spaces around it. */
function hourMark(c: Cursor): boolean {
  let i = c.at;
  while (i < c.end && c.b[i] === SPACE) i++;
  if (i >= c.end || (c.b[i] | 32) !== 104 || (i + 1 < c.end && isLetter(c.b[i + 1]))) return false;
  c.at = i + 1;
  c.spaces();
  return true;
}

function unitWord(c: Cursor, unit: string): void {
  const before = c.at;
  c.spaces();
  if (c.onLetter && c.word() === unit) c.spaces();
  else c.at = before;
}

function meridiemAhead(c: Cursor): boolean {
  const before = c.at;
  const found = meridiem(c) !== '';
  c.at = before;
  return found;
}

/** Takes AM, p.m., "P. M."; '' where none stands. */
function meridiem(c: Cursor): '' | 'am' | 'pm' {
  const { b, end } = c;
  let i = c.at;
  while (i < end && b[i] === SPACE) i++;
  const letter = i < end ? b[i] | 32 : 0;
  if (letter !== 97 && letter !== 112) return '';
  i++;
  while (i < end && (b[i] === DOT || b[i] === SPACE)) i++;
  if (i >= end || (b[i] | 32) !== 109) return '';
  i++;
  if (i < end && b[i] === DOT) i++;
  if (i < end && isLetter(b[i])) return '';
  c.at = i;
  return letter === 112 ? 'pm' : 'am';
}
