import { randomBytes } from 'node:crypto';
import { createWriteStream } from 'node:fs';
import { mkdir, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Readable } from 'node:stream';
import { pipeline } from 'node:stream/promises';
import { z } from 'zod';
import { HttpRefused } from '../refused.js';

const spooledSchema = z.object({
  id: z.string(),
  /** What the person calls it: shown and remembered, never opened. */
  name: z.string(),
  bytes: z.number(),
  at: z.number(),
  by: z.string(),
});
export type SpooledFile = z.infer<typeof spooledSchema>;

export interface SpoolLimits {
  readonly files: number;
  readonly megabytes: number;
  /** Files that nobody accepted or left are thrown away after so long. */
  readonly keepHours: number;
}

const ID = /^[0-9a-f]{32}$/;

/**
 * Files received and not yet accepted, in a folder of their own under names of our own: a name from outside is
 * never part of a path. They survive a restart; those nobody came back for are thrown away.
 */
export class Spool {
  private readonly files = new Map<string, SpooledFile>();

  private constructor(
    private readonly folder: string,
    private readonly limits: SpoolLimits,
    private readonly now: () => number,
  ) {}

  /** `name` tells one spool of a data folder from another. */
  static async in(
    dataFolder: string,
    limits: SpoolLimits,
    { name = 'spool', now = Date.now }: { name?: string; now?: () => number } = {},
  ): Promise<Spool> {
    const spool = new Spool(join(dataFolder, `underice.${name}`), limits, now);
    await mkdir(spool.folder, { recursive: true, mode: 0o700 });
    await spool.remember();
    return spool;
  }

  /** Takes in a file as it streams. @throws HttpRefused where too much is waiting already, and what `bytes` throws. */
  async receive(name: string, by: string, bytes: AsyncIterable<Uint8Array>): Promise<SpooledFile> {
    await this.sweep();
    if (this.files.size >= this.limits.files)
      throw new HttpRefused(429, { code: 'http-too-many-waiting', with: { files: this.limits.files } });
    const id = randomBytes(16).toString('hex');
    const arriving = `${this.path(id)}.part`;
    try {
      const room = this.room();
      let length = 0;
      const counted = async function* (chunks: AsyncIterable<Uint8Array>) {
        for await (const chunk of chunks) {
          length += chunk.byteLength;
          if (length > room.bytes) throw room.refusal;
          yield chunk;
        }
      };
      await pipeline(Readable.from(counted(bytes)), createWriteStream(arriving, { mode: 0o600 }));
      return await this.keep(arriving, { id, name: shownName(name), bytes: length, at: this.now(), by });
    } catch (error) {
      await rm(arriving, { force: true });
      throw error;
    }
  }

  list(): readonly SpooledFile[] {
    return [...this.files.values()];
  }

  /** @throws HttpRefused 404 where nothing of that id is waiting. */
  file(id: string): SpooledFile & { readonly path: string } {
    const found = this.files.get(id);
    if (found === undefined || !ID.test(id))
      throw new HttpRefused(404, { code: 'http-unknown-file', with: { file: id.slice(0, 40) } });
    return { ...found, path: this.path(id) };
  }

  /** Lets go of a file; nothing where it is not there. */
  async drop(id: string): Promise<void> {
    if (!this.files.delete(id)) return;
    await Promise.all([rm(this.path(id), { force: true }), rm(`${this.path(id)}.json`, { force: true })]);
  }

  private async keep(arrived: string, file: SpooledFile): Promise<SpooledFile> {
    await rename(arrived, this.path(file.id));
    await writeFile(`${this.path(file.id)}.json`, JSON.stringify(file), { mode: 0o600 });
    this.files.set(file.id, file);
    return file;
  }

  private room(): { bytes: number; refusal: HttpRefused } {
    const waiting = this.list().reduce((sum, { bytes }) => sum + bytes, 0);
    const { megabytes } = this.limits;
    return {
      bytes: megabytes * 1_000_000 - waiting,
      refusal: new HttpRefused(507, { code: 'http-waiting-too-large', with: { megabytes } }),
    };
  }

  private async sweep(): Promise<void> {
    const oldest = this.now() - this.limits.keepHours * 3_600_000;
    for (const { id, at } of this.list()) if (at < oldest) await this.drop(id);
  }

  private async remember(): Promise<void> {
    for (const name of await readdir(this.folder)) {
      const file = name.endsWith('.json') ? await this.remembered(name) : null;
      if (file !== null) this.files.set(file.id, file);
    }
    for (const name of await readdir(this.folder)) {
      if (!this.files.has(name.replace(/\.json$/, ''))) await rm(join(this.folder, name), { force: true });
    }
    await this.sweep();
  }

  private async remembered(name: string): Promise<SpooledFile | null> {
    try {
      const file = spooledSchema.parse(JSON.parse(await readFile(join(this.folder, name), 'utf8')));
      return ID.test(file.id) && name === `${file.id}.json` ? file : null;
    } catch {
      return null;
    }
  }

  private path(id: string): string {
    return join(this.folder, id);
  }
}

/** A file's name as it is shown: the last piece of a path, without characters that cannot be printed. */
export function shownName(name: string): string {
  const last = name.split(/[\\/]/).at(-1) ?? '';
  return last.replace(/\p{C}/gu, '').trim().slice(0, 200) || '-';
}
