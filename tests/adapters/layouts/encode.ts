import { gzipSync } from 'node:zlib';
import iconv from 'iconv-lite';
import type { Style } from './style.js';

/** A text as the bytes of a file. */
export function encode(text: string, encoding: Style['encoding'], gzipped: boolean): Uint8Array {
  const bytes = plainBytes(text, encoding);
  // No time and no name in the gzip header: the same text gives the same bytes on every machine.
  return new Uint8Array(gzipped ? gzipSync(bytes, { level: 9 }) : bytes);
}

function plainBytes(text: string, encoding: Style['encoding']): Buffer {
  switch (encoding) {
    case 'utf-8':
      return Buffer.from(text, 'utf8');
    case 'utf-8-bom':
      return Buffer.from(`\uFEFF${text}`, 'utf8');
    case 'utf-16le':
      return Buffer.from(`\uFEFF${text}`, 'utf16le');
    case 'utf-16be':
      return Buffer.from(`\uFEFF${text}`, 'utf16le').swap16();
    case 'windows-1252':
      return iconv.encode(text, 'windows-1252');
    case 'cp850':
      return iconv.encode(text, 'cp850');
  }
}
