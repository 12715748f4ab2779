import { pipeline, Readable } from 'node:stream';
import { createGunzip } from 'node:zlib';
import type { ByteSource } from '../batch.js';
import { DownloadRefused } from '../download.js';
import type { EncodingFound } from './encoding.js';

/** Pieces handed on are never longer, so that what is kept of one stays small whatever the source gives. */
const LONGEST_PIECE = 64 * 1024;

type Bytes = AsyncIterable<Uint8Array>;

/** The bytes of a source, decompressed when its first two bytes are gzip's (RFC 1952: 1f 8b). */
export async function* decompressed(source: ByteSource, progress?: (bytesRead: number) => void): Bytes {
  const compressed = await beginsWithGzip(source);
  const counted = count(source.open(), progress);
  if (!compressed) {
    for await (const chunk of counted) yield* pieces(chunk);
    return;
  }
  const gunzip = createGunzip();
  pipeline(Readable.from(copies(counted)), gunzip, () => {});
  try {
    for await (const chunk of gunzip) yield* pieces(chunk);
  } catch (error) {
    if (error instanceof Error && 'code' in error && String(error.code).startsWith('Z_'))
      throw new DownloadRefused({ code: 'damaged-gzip', with: {} });
    throw error;
  }
}

async function beginsWithGzip(source: ByteSource): Promise<boolean> {
  const first: number[] = [];
  for await (const chunk of source.open()) {
    for (let i = 0; i < chunk.length && first.length < 2; i++) first.push(chunk[i]);
    if (first.length === 2) break;
  }
  return first[0] === 0x1f && first[1] === 0x8b;
}

async function* count(bytes: Bytes, progress?: (bytesRead: number) => void): Bytes {
  let read = 0;
  for await (const chunk of bytes) {
    yield chunk;
    read += chunk.length;
    progress?.(read);
  }
}

/** The stream below reads ahead, and the source may use a chunk's bytes again once the next is asked for. */
async function* copies(bytes: Bytes): Bytes {
  for await (const chunk of bytes) yield Uint8Array.from(chunk);
}

function* pieces(chunk: Uint8Array): Generator<Uint8Array> {
  // Plain Uint8Array views: mixing them with Buffer makes every loop over bytes slower.
  for (let i = 0; i < chunk.length; i += LONGEST_PIECE)
    yield new Uint8Array(chunk.buffer, chunk.byteOffset + i, Math.min(LONGEST_PIECE, chunk.length - i));
}

/** The first bytes, at most `limit`, and whether that was all. */
export async function headOf(
  source: ByteSource,
  limit: number,
): Promise<{ bytes: Uint8Array; whole: boolean }> {
  const parts: Uint8Array[] = [];
  let length = 0;
  let whole = true;
  for await (const piece of decompressed(source)) {
    parts.push(Uint8Array.from(piece));
    length += piece.length;
    if (length > limit) {
      whole = false;
      break;
    }
  }
  return { bytes: new Uint8Array(Buffer.concat(parts).subarray(0, limit)), whole };
}

/** Strips the mark and turns UTF-16 into UTF-8, so that lines, delimiters and digits are single bytes everywhere. */
export async function* singleBytes(bytes: Bytes, found: EncodingFound): Bytes {
  const wide = found.encoding === 'utf-16le' || found.encoding === 'utf-16be';
  const decoder = wide ? new TextDecoder(found.encoding) : null;
  const encoder = new TextEncoder();
  // The decoder of UTF-16 drops the mark itself.
  let skip: number = wide ? 0 : found.mark;
  for await (const piece of bytes) {
    if (decoder !== null) yield encoder.encode(decoder.decode(piece, { stream: true }));
    else if (skip === 0) yield piece;
    else {
      const dropped = Math.min(skip, piece.length);
      skip -= dropped;
      yield piece.subarray(dropped);
    }
  }
  if (decoder !== null) yield encoder.encode(decoder.decode());
}
