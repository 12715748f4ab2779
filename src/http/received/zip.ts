import { open as openFile } from 'node:fs/promises';
import type { Readable } from 'node:stream';
import { promisify } from 'node:util';
import yauzl from 'yauzl';

/** How every zip archive begins. */
const MAGIC = Buffer.from('PK\u0003\u0004', 'latin1');

export async function isZip(path: string): Promise<boolean> {
  const file = await openFile(path);
  try {
    const { buffer, bytesRead } = await file.read(Buffer.alloc(4), 0, 4, 0);
    return bytesRead === 4 && buffer.equals(MAGIC);
  } finally {
    await file.close();
  }
}

export interface ZipEntry {
  readonly name: string;
  /** As the archive states it; reading more than that fails. */
  readonly bytes: number;
  readonly locked: boolean;
  open(): Promise<Readable>;
}

/**
 * The entries of an archive, one after the other. Sizes stated and actual must agree, and names that climb out of the
 * archive are refused: a damaged archive throws.
 */
export async function* zipEntries(path: string): AsyncGenerator<ZipEntry> {
  const zip = await promisify<string, yauzl.Options, yauzl.ZipFile>(yauzl.open)(path, {
    lazyEntries: true,
    autoClose: false,
  });
  try {
    for (;;) {
      const entry = await nextEntry(zip);
      if (entry === null) return;
      yield {
        name: entry.fileName,
        bytes: entry.uncompressedSize,
        locked: entry.isEncrypted(),
        open: () => promisify<yauzl.Entry, Readable>(zip.openReadStream.bind(zip))(entry),
      };
    }
  } finally {
    zip.close();
  }
}

function nextEntry(zip: yauzl.ZipFile): Promise<yauzl.Entry | null> {
  return new Promise((resolve, reject) => {
    const settle = (settled: () => void) => {
      zip.off('entry', found).off('end', ended).off('error', failed);
      settled();
    };
    const found = (entry: yauzl.Entry) => settle(() => resolve(entry));
    const ended = () => settle(() => resolve(null));
    const failed = (error: Error) => settle(() => reject(error));
    zip.on('entry', found).on('end', ended).on('error', failed);
    zip.readEntry();
  });
}
