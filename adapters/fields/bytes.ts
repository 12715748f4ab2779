import iconv from 'iconv-lite';
import type { Encoding } from '../download.js';

export const LF = 10;
export const CR = 13;
export const QUOTE = 34;

export function isDigit(byte: number): boolean {
  return byte >= 48 && byte <= 57;
}

/** ASCII letter, or a byte of a letter outside ASCII in any of the encodings. */
export function isLetter(byte: number): boolean {
  return (byte >= 97 && byte <= 122) || (byte >= 65 && byte <= 90) || byte >= 128;
}

/** Turns bytes of a field into text. UTF-16 never comes here: it is turned into UTF-8 on the way in. */
export type TextOf = (bytes: Uint8Array, start: number, end: number) => string;

function utf8(bytes: Uint8Array, start: number, end: number): string {
  return Buffer.from(bytes.buffer, bytes.byteOffset + start, end - start).toString('utf8');
}

function windows1252(bytes: Uint8Array, start: number, end: number): string {
  // Without `stream` Node 20 takes a Latin-1 path that leaves 0x80-0x9F untranslated.
  return new TextDecoder('windows-1252').decode(bytes.subarray(start, end), { stream: true });
}

function codePage850(bytes: Uint8Array, start: number, end: number): string {
  return iconv.decode(Buffer.from(bytes.buffer, bytes.byteOffset + start, end - start), 'cp850');
}

export function textDecoder(encoding: Encoding): TextOf {
  if (encoding === 'windows-1252') return windows1252;
  if (encoding === 'cp850') return codePage850;
  return utf8;
}

/** Turns text into bytes that `textDecoder` of the same encoding reads back. */
export type BytesOf = (text: string) => Uint8Array;

export function textEncoder(encoding: Encoding): BytesOf {
  if (encoding !== 'windows-1252' && encoding !== 'cp850') return (text) => new TextEncoder().encode(text);
  return (text) => new Uint8Array(iconv.encode(text, encoding));
}
