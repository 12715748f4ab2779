import { randomBytes } from 'node:crypto';
import { readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';

const ownerSchema = z.object({
  pid: z.number().int(),
  started: z.string(),
  /** Where the owner's pages and API answer; null where it serves none. */
  address: z.string().nullable(),
  /** Lets a command of the same user through to the owner; the file is readable by that user only. */
  token: z.string(),
});
export type Owner = z.infer<typeof ownerSchema>;

const FILE = 'owner.json';

export function newOwner(startedAt: number): Owner {
  return {
    pid: process.pid,
    started: new Date(startedAt).toISOString(),
    address: null,
    token: randomBytes(32).toString('hex'),
  };
}

/** Says who owns the folder, for commands to find. The lock itself is the store file's. */
export function writeOwner(folder: string, owner: Owner): void {
  const path = join(folder, FILE);
  const fresh = `${path}.${process.pid}`;
  try {
    writeFileSync(fresh, `${JSON.stringify(owner)}\n`, { mode: 0o600 });
    renameSync(fresh, path);
  } catch {
    // A full disk must not keep a group from its record: then a second process is told the pid only.
    rmSync(fresh, { force: true });
  }
}

/** null where the file is missing or was not written by this program. */
export function readOwner(folder: string): Owner | null {
  try {
    return ownerSchema.parse(JSON.parse(readFileSync(join(folder, FILE), 'utf8')));
  } catch {
    return null;
  }
}

export function removeOwner(folder: string): void {
  rmSync(join(folder, FILE), { force: true });
}
