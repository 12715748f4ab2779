import { constants, copyFileSync, existsSync, linkSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname } from 'node:path';
import { madeFolder } from './made-folder.js';
import { StoreRefused } from './refused.js';

/** @throws StoreRefused 'backup-exists': a backup never takes the place of another. */
export function refuseTaken(file: string): void {
  if (existsSync(file)) throw new StoreRefused({ code: 'backup-exists', with: { file } }, 2);
}

/**
 * Gives a finished copy its own name, also on another disk; nobody ever sees half of it.
 *
 * @returns its bytes.
 */
export function placeBackup(copy: string, file: string): number {
  refuseTaken(file);
  const part = `${file}.part`;
  try {
    madeFolder(dirname(file));
    try {
      linkSync(copy, file);
    } catch {
      copyFileSync(copy, part, constants.COPYFILE_FICLONE);
      renameSync(part, file);
    }
    return statSync(file).size;
  } catch (error) {
    rmSync(part, { force: true });
    if (existsSync(file)) refuseTaken(file);
    const why = error instanceof Error && 'code' in error ? String(error.code) : String(error);
    if (why === 'ENOSPC' || why === 'EDQUOT')
      throw new StoreRefused({ code: 'disk-full', with: { folder: dirname(file) } }, 1, { cause: error });
    throw new StoreRefused({ code: 'backup-unwritable', with: { file, why } }, 2, { cause: error });
  }
}
