import { randomBytes } from 'node:crypto';
import { createReadStream, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import yazl from 'yazl';
import type { Group } from '../group/index.js';
import { streamOf } from './stream.js';

/** A backup as `underice backup` writes it, made beside the store and gone once it was sent or given up. */
export async function backupSent(group: Group): Promise<ReadableStream<Uint8Array<ArrayBuffer>>> {
  const copy = placeOf(group, 'backup');
  await group.backup(copy);
  return thenGone(copy, createReadStream(copy));
}

/** What `underice export --all` writes, as one ZIP archive; packed while it is sent. */
export async function exportSent(group: Group): Promise<ReadableStream<Uint8Array<ArrayBuffer>>> {
  const copy = placeOf(group, 'export');
  try {
    await group.exportAll(copy);
  } catch (error) {
    rmSync(copy, { recursive: true, force: true });
    throw error;
  }
  const archive = new yazl.ZipFile();
  for (const entry of readdirSync(copy, { recursive: true, withFileTypes: true })) {
    if (!entry.isFile()) continue;
    const path = join(entry.parentPath, entry.name);
    archive.addFile(path, path.slice(copy.length + 1).replaceAll('\\', '/'));
  }
  archive.end();
  const packed = Readable.from(archive.outputStream);
  archive.on('error', (error) => packed.destroy(error));
  return thenGone(copy, packed);
}

function placeOf(group: Group, what: string): string {
  return join(group.folder, `underice.${what}.${process.pid}.${randomBytes(8).toString('hex')}.sent`);
}

function thenGone(copy: string, read: Readable): ReadableStream<Uint8Array<ArrayBuffer>> {
  const whole = async function* () {
    try {
      for await (const chunk of read) yield new Uint8Array(chunk);
    } finally {
      read.destroy();
      rmSync(copy, { recursive: true, force: true });
    }
  };
  return streamOf(whole());
}
