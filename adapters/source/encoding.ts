import type { Encoding } from '../download.js';

export interface EncodingFound {
  readonly encoding: Encoding;
  /** Bytes of the byte order mark. */
  readonly mark: 0 | 2 | 3;
}

/** Letters of French and its apostrophe where windows-1252 and code page 850 put them. */
const french1252 = new Set([
  0xc0, 0xc7, 0xc8, 0xc9, 0xca, 0xe0, 0xe2, 0xe7, 0xe8, 0xe9, 0xea, 0xeb, 0xee, 0xef, 0xf4, 0xf9, 0xfb, 0x92,
  0x9c, 0xa0, 0xb3,
]);
const french850 = new Set([
  0x82, 0x83, 0x85, 0x87, 0x88, 0x89, 0x8a, 0x8b, 0x8c, 0x90, 0x93, 0x96, 0x97, 0xd4, 0xfc,
]);

const DEGREE_1252 = 0xb0;
const DEGREE_850 = 0xf8;

/** Whether `bytes` are UTF-8, forgiving a character cut at the end. */
export function isUtf8(bytes: Uint8Array): boolean {
  try {
    new TextDecoder('utf-8', { fatal: true }).decode(bytes, { stream: true });
    return true;
  } catch {
    return false;
  }
}

/** UTF-16 without a mark: ASCII text leaves every other byte zero. */
function zeroPattern(head: Uint8Array): Encoding | null {
  const n = Math.min(head.length & ~1, 4096);
  let even = 0;
  let odd = 0;
  for (let i = 0; i < n; i += 2) {
    if (head[i] === 0) even++;
    if (head[i + 1] === 0) odd++;
  }
  const pairs = n / 2;
  if (pairs < 2) return null;
  if (odd > 0.7 * pairs && even < 0.05 * pairs) return 'utf-16le';
  if (even > 0.7 * pairs && odd < 0.05 * pairs) return 'utf-16be';
  return null;
}

function singleByte(head: Uint8Array): Encoding {
  let windows = 0;
  let dos = 0;
  for (const byte of head) {
    if (byte < 0x80) continue;
    if (french1252.has(byte)) windows++;
    if (french850.has(byte)) dos++;
    // Hardly a download is without the degree sign.
    if (byte === DEGREE_1252) windows += 2;
    if (byte === DEGREE_850) dos += 2;
  }
  return dos > windows ? 'cp850' : 'windows-1252';
}

/** Finds the encoding from a file's first bytes: mark, zero pattern, validity as UTF-8, then where accents lie. */
export function encodingOf(head: Uint8Array): EncodingFound {
  if (head[0] === 0xef && head[1] === 0xbb && head[2] === 0xbf) return { encoding: 'utf-8', mark: 3 };
  if (head[0] === 0xff && head[1] === 0xfe) return { encoding: 'utf-16le', mark: 2 };
  if (head[0] === 0xfe && head[1] === 0xff) return { encoding: 'utf-16be', mark: 2 };
  const wide = zeroPattern(head);
  if (wide !== null) return { encoding: wide, mark: 0 };
  return { encoding: isUtf8(head) ? 'utf-8' : singleByte(head), mark: 0 };
}
