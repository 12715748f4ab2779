import { CR, LF, textDecoder } from '../fields/bytes.js';
import { LONGEST_LINE } from '../reading/line-scanner.js';
import type { EncodingFound } from '../source/encoding.js';

/** The first part of a file, decompressed. */
export interface Head {
  readonly bytes: Uint8Array;
  /** There is no more. */
  readonly whole: boolean;
  readonly found: EncodingFound;
}

export interface HeadLines {
  readonly lines: readonly string[];
  /** The byte that ends lines: LF, or CR where no LF stands. */
  readonly newline: number;
}

function headText({ bytes, found }: Head): string {
  const rest = bytes.subarray(found.mark);
  if (found.encoding === 'utf-16le' || found.encoding === 'utf-16be')
    return new TextDecoder(found.encoding).decode(rest, { stream: true });
  return textDecoder(found.encoding)(rest, 0, rest.length);
}

/** A line without its carriage return; nothing in place of one too long to be read. */
function readable(line: string): string {
  if (line.length > LONGEST_LINE) return '';
  return line.endsWith('\r') ? line.slice(0, -1) : line;
}

/** Whole lines of a head; the last one only where the file ends with it. */
export function linesOf(head: Head): HeadLines {
  const text = headText(head);
  const newline = text.includes('\n') || !text.includes('\r') ? LF : CR;
  const lines = text.split(newline === LF ? '\n' : '\r').map(readable);
  const last = lines.pop() ?? '';
  if (head.whole && last !== '') lines.push(last);
  return { lines, newline };
}
