import { gzipSync } from 'node:zlib';
import iconv from 'iconv-lite';

export const windows1252 = (text: string): Uint8Array => iconv.encode(text, 'win1252');
export const utf16 = (text: string): Uint8Array => iconv.encode(text, 'utf16le', { addBOM: true });
export const utf8Marked = (text: string): Uint8Array => iconv.encode(text, 'utf8', { addBOM: true });
export const gzipped = (bytes: Uint8Array): Uint8Array => gzipSync(bytes, { level: 9 });
