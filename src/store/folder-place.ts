import {
  accessSync,
  constants,
  existsSync,
  linkSync,
  readdirSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
} from 'node:fs';
import { join } from 'node:path';
import { madeFolder } from './made-folder.js';
import { StoreRefused } from './refused.js';

export const STORE_FILE = 'underice.duckdb';
const OURS = /^(underice\.|owner\.json|settings\.yaml$|backup)/;

/**
 * Makes the folder where it is absent and looks at it, before anything opens the store file.
 *
 * @returns its real path.
 * @throws StoreRefused where it cannot be made or written to, or holds other things.
 */
export function folderPlace(dir: string): string {
  try {
    madeFolder(dir);
    const folder = realpathSync(dir);
    if (!statSync(folder).isDirectory()) throw refusedPlace('ENOTDIR', dir);
    accessSync(folder, constants.R_OK | constants.W_OK | constants.X_OK);
    const file = join(folder, STORE_FILE);
    if (existsSync(file)) accessSync(file, constants.R_OK | constants.W_OK);
    else refuseOthers(folder);
    return folder;
  } catch (error) {
    if (error instanceof StoreRefused) throw error;
    throw refusedPlace(codeOf(error), dir, error);
  }
}

/** A folder with other people's files in it was most likely named by mistake. */
function refuseOthers(folder: string): void {
  const found = readdirSync(folder).find((name) => !OURS.test(name) && !name.startsWith('.'));
  if (found !== undefined) throw new StoreRefused({ code: 'folder-of-others', with: { folder, found } }, 2);
}

/** Nothing may be written there, or no folder can be there (ENOENT: `/proc`). */
const NOT_TO_BE_MADE = new Set(['EACCES', 'EPERM', 'EROFS', 'ENOENT']);

function refusedPlace(code: string, folder: string, cause?: unknown): StoreRefused {
  const options = { cause };
  if (NOT_TO_BE_MADE.has(code)) {
    return new StoreRefused({ code: 'folder-read-only', with: { folder } }, 1, options);
  }
  if (code === 'ENOSPC' || code === 'EDQUOT') {
    return new StoreRefused({ code: 'disk-full', with: { folder } }, 1, options);
  }
  if (code === 'ENOTDIR' || code === 'EEXIST') {
    return new StoreRefused({ code: 'folder-not-a-folder', with: { folder } }, 2, options);
  }
  return new StoreRefused({ code: 'store-failed', with: { folder, why: code } }, 1, options);
}

function codeOf(error: unknown): string {
  return error instanceof Error && 'code' in error && typeof error.code === 'string'
    ? error.code
    : String(error);
}

/** A store file is made under a name of its own, so that a process killed meanwhile leaves nothing half made. */
export function newStoreFile(folder: string): string {
  clearLeftOvers(folder);
  return join(folder, `underice.new.${process.pid}.duckdb`);
}

/** Takes away what processes that were killed left half made: new store files and backups. */
export function clearLeftOvers(folder: string): void {
  for (const name of readdirSync(folder)) {
    const maker = /^underice\.(?:new|backup)\.(\d+)\./.exec(name)?.[1];
    if (maker !== undefined && !isRunning(Number(maker))) rmSync(join(folder, name), { force: true });
  }
}

/** Gives a store file that is whole its name; leaves one that another process made meanwhile. */
export function nameStoreFile(fresh: string, folder: string): void {
  const path = join(folder, STORE_FILE);
  try {
    linkSync(fresh, path);
  } catch (error) {
    // Some file systems (FAT on a memory stick) know no second name for a file.
    if (codeOf(error) !== 'EEXIST' && !existsSync(path)) renameSync(fresh, path);
  }
  rmSync(fresh, { force: true });
}

function isRunning(pid: number): boolean {
  if (pid === process.pid) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return codeOf(error) === 'EPERM';
  }
}
