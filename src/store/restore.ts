import { constants, copyFileSync, existsSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { OneConnection } from './embedded/connections.js';
import { migrate } from './embedded/migrations.js';
import { openStoreFile, type StoreFile } from './embedded/open-file.js';
import { embeddedReadings } from './embedded/readings.js';
import { StoredWrite } from './embedded/write.js';
import { takeExport } from './export.js';
import { folderPlace, nameStoreFile, newStoreFile, STORE_FILE } from './folder-place.js';
import { dropFiles, layOut, takeAway, takePhotographs } from './kept-files.js';
import { StoreRefused } from './refused.js';

const SETTINGS = { memoryMegabytes: 96, threads: 2 };

/**
 * Makes a data folder from a backup file, or from a folder that `export --all` wrote.
 *
 * @returns the folder's real path.
 * @throws StoreRefused where the folder holds a group already, or the backup is missing, cut short, newer or none.
 */
export async function restoreFolder(from: string, dir: string): Promise<string> {
  if (!existsSync(from)) throw new StoreRefused({ code: 'backup-missing', with: { file: from } }, 2);
  const folder = folderPlace(dir);
  if (existsSync(join(folder, STORE_FILE)))
    throw new StoreRefused({ code: 'restore-not-empty', with: { folder } }, 2);
  const fresh = newStoreFile(folder);
  const written: string[] = [];
  try {
    const isExport = statSync(from).isDirectory();
    if (!isExport) copyFileSync(from, fresh, constants.COPYFILE_EXCL);
    const file = await openStoreFile(fresh, SETTINGS);
    await fill(file, folder, isExport ? from : null, written);
    await file.close();
    nameStoreFile(fresh, folder);
    return folder;
  } catch (error) {
    for (const rest of [fresh, `${fresh}.wal`]) rmSync(rest, { force: true });
    takeAway(written);
    throw ofBackup(error, from, folder);
  }
}

/** What is written beside the store file is added to `written`. */
async function fill(
  file: StoreFile,
  folder: string,
  exported: string | null,
  written: string[],
): Promise<void> {
  const connection = await file.connect();
  try {
    await migrate(connection, folder);
    if (exported === null) {
      await layOut(connection, folder, 'all', written);
      await dropFiles(connection);
      return;
    }
    await connection.run('BEGIN');
    await takeExport(exported, connection);
    const write = new StoredWrite(new OneConnection(connection), embeddedReadings, 'restore', Date.now());
    for (const { id } of await write.stations()) await write.renewStation(id);
    await connection.run('COMMIT');
    takePhotographs(exported, folder, written);
  } catch (error) {
    connection.closeSync();
    await file.close(true);
    throw error;
  } finally {
    connection.closeSync();
  }
}

/** What is wrong with a store file is wrong with the backup it was copied from. */
function ofBackup(error: unknown, file: string, folder: string): unknown {
  if (!(error instanceof StoreRefused))
    return /ENOSPC|EDQUOT/.test(String(error))
      ? new StoreRefused({ code: 'disk-full', with: { folder } }, 1, { cause: error })
      : error;
  const cause = { cause: error };
  switch (error.remark.code) {
    case 'store-newer':
    case 'store-format-newer':
      return new StoreRefused({ code: 'backup-newer', with: { file } }, 2, cause);
    case 'store-cut-short':
      return new StoreRefused({ code: 'backup-cut-short', with: { file } }, 2, cause);
    case 'store-unreadable':
    case 'store-failed':
      return new StoreRefused({ code: 'backup-unreadable', with: { file } }, 2, cause);
    default:
      return error;
  }
}
