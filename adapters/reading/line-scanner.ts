import { LF } from '../fields/bytes.js';

/** The longest line that is read, in bytes. A logger's line has tens; a table of 5000 stations stays under it. */
export const LONGEST_LINE = 256 * 1024;

/** Takes lines as stretches of bytes; nothing is copied that need not be. */
export interface LineTaker {
  /** Whole lines in `b[start, end)`; the last byte is a line end. The bytes are the taker's only until it returns. */
  lines(b: Uint8Array, start: number, end: number): void;
  /** What stands behind the last line end of the file. */
  lastLine(b: Uint8Array, start: number, end: number): void;
  /** A line longer than LONGEST_LINE was dropped. */
  overlong(): void;
}

/**
 * Cuts a stream of bytes into lines and never holds more than one piece and one line. A line too long is dropped
 * as it flows past, so that a file of one endless line costs no memory.
 */
export class LineScanner {
  private kept = new Uint8Array(4096);
  private length = 0;
  private dropping = false;

  constructor(
    private readonly taker: LineTaker,
    private readonly newline: number = LF,
  ) {}

  push(piece: Uint8Array): void {
    const last = piece.lastIndexOf(this.newline);
    if (last < 0) {
      this.keep(piece, 0);
      return;
    }
    let start = 0;
    if (this.length > 0 || this.dropping) {
      start = piece.indexOf(this.newline) + 1;
      this.closeKept(piece, start);
    }
    if (start <= last) this.taker.lines(piece, start, last + 1);
    this.keep(piece, last + 1);
  }

  end(): void {
    if (this.dropping) this.taker.overlong();
    else if (this.length > 0) this.taker.lastLine(this.kept, 0, this.length);
    this.length = 0;
    this.dropping = false;
  }

  private closeKept(piece: Uint8Array, end: number): void {
    if (!this.dropping) this.append(piece, 0, end);
    if (this.dropping) this.taker.overlong();
    else this.taker.lines(this.kept, 0, this.length);
    this.length = 0;
    this.dropping = false;
  }

  private keep(piece: Uint8Array, from: number): void {
    if (!this.dropping && from < piece.length) this.append(piece, from, piece.length);
  }

  private append(piece: Uint8Array, from: number, to: number): void {
    const length = this.length + to - from;
    if (length > LONGEST_LINE) {
      this.dropping = true;
      this.length = 0;
      return;
    }
    if (length > this.kept.length) {
      const larger = new Uint8Array(Math.min(LONGEST_LINE, Math.max(length, 2 * this.kept.length)));
      larger.set(this.kept.subarray(0, this.length));
      this.kept = larger;
    }
    this.kept.set(piece.subarray(from, to), this.length);
    this.length = length;
  }
}
