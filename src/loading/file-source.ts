import { createHash } from 'node:crypto';
import { createReadStream } from 'node:fs';
import type { ByteSource } from '../../adapters/index.js';

const CHUNK_BYTES = 256 * 1024;

/** A file that could not be read to its end. */
export class FileUnreadable extends Error {}

/** A file's bytes, as often as they are asked for; the first reading that reaches the end also gives its hash. */
export class FileSource implements ByteSource {
  private digest: string | null = null;

  constructor(
    readonly path: string,
    readonly name: string,
    readonly size: number,
  ) {}

  async *open(): AsyncIterable<Uint8Array> {
    const hash = this.digest === null ? createHash('sha256') : null;
    try {
      for await (const chunk of createReadStream(this.path, { highWaterMark: CHUNK_BYTES })) {
        hash?.update(chunk);
        yield chunk;
      }
    } catch (error) {
      if (error instanceof Error && 'syscall' in error) throw new FileUnreadable(error.message);
      throw error;
    }
    if (hash !== null) this.digest = hash.digest('hex');
  }

  /** SHA-256 of the bytes as stored, hexadecimal. Reads the file where nobody has read it to its end yet. */
  async sha256(): Promise<string> {
    if (this.digest === null) for await (const _ of this.open());
    return this.digest ?? '';
  }
}
