import { existsSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { EmbeddedFolder } from './embedded/embedded-folder.js';
import { migrate } from './embedded/migrations.js';
import { type FileSettings, openStoreFile, refusalOf, type StoreFile } from './embedded/open-file.js';
import type { Folder, FolderOptions, StoreChoice } from './folder.js';
import { clearLeftOvers, folderPlace, nameStoreFile, newStoreFile, STORE_FILE } from './folder-place.js';
import { newOwner, readOwner, writeOwner } from './owner.js';
import { readingsOf } from './reading-place.js';
import type { ReadingStore } from './reading-store.js';
import { StoreRefused } from './refused.js';

/** Folders this process has open. The file lock keeps other processes out, not a second opening in this one. */
const openHere = new Set<string>();

/** Least memory with which three million readings load as fast as with more. */
const MEMORY_MEGABYTES = 96;
const THREADS = 2;

/**
 * Opens a group's data folder for this process alone, and makes it where it is absent or empty.
 *
 * @throws StoreRefused in one sentence's worth of figures: held by another process, no permission to write, disk
 *   full, a store file that is newer, cut short or none at all. The folder is then as it was.
 */
export async function openFolder(dir: string, options: FolderOptions = {}): Promise<Folder> {
  const folder = folderPlace(dir);
  const now = options.now ?? Date.now;
  if (openHere.has(folder)) throw heldBy(folder, process.pid);
  openHere.add(folder);
  const settings: FileSettings = {
    memoryMegabytes: options.memoryMegabytes ?? MEMORY_MEGABYTES,
    threads: options.threads ?? THREADS,
  };
  try {
    const path = join(folder, STORE_FILE);
    if (!existsSync(path)) await makeStoreFile(folder, settings);
    const open = () => openMigrated(path, folder, settings);
    const file = await open();
    const readings = await readingsOrClose(file, folder, options.store ?? AS_IT_STANDS);
    clearLeftOvers(folder);
    const owner = newOwner(now());
    writeOwner(folder, owner);
    return new EmbeddedFolder(folder, owner, file, open, now, () => openHere.delete(folder), readings);
  } catch (error) {
    openHere.delete(folder);
    const refusal = refusalOf(folder, error);
    throw refusal.remark.code === 'folder-held' ? heldBy(folder, refusal.remark.with.pid) : refusal;
  }
}

const AS_IT_STANDS: StoreChoice = { kind: null, server: null };

async function readingsOrClose(file: StoreFile, folder: string, choice: StoreChoice): Promise<ReadingStore> {
  const connection = await file.connect();
  try {
    return await readingsOf(connection, folder, choice);
  } catch (error) {
    connection.closeSync();
    await file.close(true);
    throw error;
  } finally {
    connection.closeSync();
  }
}

/** The file is made under another name and takes its own when it is whole. */
async function makeStoreFile(folder: string, settings: FileSettings): Promise<void> {
  const fresh = newStoreFile(folder);
  try {
    const file = await openMigrated(fresh, folder, settings);
    await file.close();
    nameStoreFile(fresh, folder);
  } catch (error) {
    for (const rest of [fresh, `${fresh}.wal`]) rmSync(rest, { force: true });
    throw error;
  }
}

async function openMigrated(path: string, folder: string, settings: FileSettings): Promise<StoreFile> {
  const file = await openStoreFile(path, settings);
  const connection = await file.connect();
  try {
    await migrate(connection, folder);
    connection.closeSync();
    return file;
  } catch (error) {
    connection.closeSync();
    await file.close(true);
    throw error;
  }
}

function heldBy(folder: string, pid: number | null): StoreRefused {
  const owner = readOwner(folder);
  const known = owner !== null && (pid === null || owner.pid === pid) ? owner : null;
  return new StoreRefused({
    code: 'folder-held',
    with: { folder, pid, since: known?.started ?? '', address: known?.address ?? '' },
  });
}
