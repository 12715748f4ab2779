import { createHash } from 'node:crypto';
import { closeSync, openSync, readSync } from 'node:fs';
import { open } from 'node:fs/promises';
import type { ByteSource } from '../../adapters/index.js';

const CHUNK_BYTES = 256 * 1024;

/** A file that could not be read to its end. */
export class FileUnreadable extends Error {}

/**
 * A file's bytes, as often as they are asked for. Chunks share one piece of memory: each is good until the next is
 * asked for. Reads wait for the disk, so this is for a thread that has nothing else to do.
 */
export class FileSource implements ByteSource {
  constructor(
    readonly path: string,
    readonly name: string,
    readonly size: number,
  ) {}

  async *open(): AsyncIterable<Uint8Array> {
    const chunk = new Uint8Array(CHUNK_BYTES);
    const file = reading(() => openSync(this.path, 'r'));
    try {
      for (;;) {
        const length = reading(() => readSync(file, chunk));
        if (length === 0) return;
        yield chunk.subarray(0, length);
      }
    } finally {
      closeSync(file);
    }
  }
}

function reading<T>(read: () => T): T {
  try {
    return read();
  } catch (error) {
    throw new FileUnreadable(error instanceof Error ? error.message : String(error));
  }
}

/** SHA-256 of a file's bytes, hexadecimal. @throws FileUnreadable, also where it is told to stop */
export async function sha256Of(path: string, stop: AbortSignal): Promise<string> {
  const hash = createHash('sha256');
  const chunk = new Uint8Array(CHUNK_BYTES);
  try {
    const file = await open(path, 'r');
    try {
      for (;;) {
        stop.throwIfAborted();
        const { bytesRead } = await file.read(chunk);
        if (bytesRead === 0) return hash.digest('hex');
        hash.update(chunk.subarray(0, bytesRead));
      }
    } finally {
      await file.close();
    }
  } catch (error) {
    throw new FileUnreadable(error instanceof Error ? error.message : String(error));
  }
}
