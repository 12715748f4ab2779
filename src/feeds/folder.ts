import { lstat, readdir } from 'node:fs/promises';
import { join } from 'node:path';

/** A file that is still being written is left until it has rested so long, milliseconds. */
const REST = 5000;
/** Most files of a folder that are remembered, and taken in one go. */
const MOST = 5000;
const AT_ONCE = 50;

/** What of a folder was taken already: size and time of each file, by name. */
export type FolderSeen = Readonly<Record<string, string>>;

export interface FolderNews {
  /** Paths of files that are new or have changed, oldest first. */
  readonly files: readonly { readonly path: string; readonly name: string; readonly stamp: string }[];
  /** What is there now: what went away is forgotten. */
  readonly there: FolderSeen;
}

/** Plain files in a folder that were not taken yet. Links, hidden files and half-written ones are left alone. */
export async function newFiles(folder: string, seen: FolderSeen, now: number): Promise<FolderNews> {
  const names = (await readdir(folder))
    .filter((name) => !/^[.~]|\.(part|tmp|crdownload)$/i.test(name))
    .sort();
  const found: { path: string; name: string; stamp: string; at: number }[] = [];
  for (const name of names.slice(0, MOST)) {
    const path = join(folder, name);
    const stat = await lstat(path).catch(() => null);
    if (stat === null || !stat.isFile() || stat.size === 0) continue;
    if (now - stat.mtimeMs < REST) continue;
    found.push({ path, name, stamp: `${stat.size} ${Math.floor(stat.mtimeMs)}`, at: stat.mtimeMs });
  }
  const there = Object.fromEntries(
    found.filter(({ name }) => seen[name] !== undefined).map(({ name }) => [name, seen[name] ?? '']),
  );
  const files = found.filter(({ name, stamp }) => seen[name] !== stamp).sort((a, b) => a.at - b.at);
  return { files: files.slice(0, AT_ONCE), there };
}
