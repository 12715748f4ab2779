import { bringIn } from './embedded/bring-in.js';
import { StoredCatalogue } from './embedded/catalogue.js';
import { OneConnection } from './embedded/connections.js';
import { openStoreFile } from './embedded/open-file.js';
import { embeddedReadings } from './embedded/readings.js';
import { rows } from './embedded/sql.js';
import { type ExportMade, exportTo } from './export.js';
import { layOut, takeIn } from './kept-files.js';
import type { ServerReadings } from './server/readings.js';

const SETTINGS = { memoryMegabytes: 96, threads: 2 };

/**
 * Makes a copy of a folder's store file stand on its own: readings that lay on a server are fetched, and it names none
 * any more; what lay beside the store file is in it.
 */
export async function makeOwnCopy(
  path: string,
  folder: string,
  server: ServerReadings | null,
): Promise<void> {
  const file = await openStoreFile(path, SETTINGS);
  const connection = await file.connect();
  try {
    await connection.run('BEGIN');
    const catalogue = new StoredCatalogue(new OneConnection(connection));
    if (server !== null) await bringIn(connection, (load, take) => server.scan(catalogue, load, take));
    for (const table of ['server_load', 'reading_place']) await rows(connection, `DELETE FROM ${table}`);
    await connection.run('COMMIT');
    await takeIn(connection, path, folder);
  } finally {
    connection.closeSync();
    await file.close();
  }
}

export async function exportCopy(path: string, dir: string): Promise<ExportMade> {
  const file = await openStoreFile(path, SETTINGS);
  const connection = await file.connect();
  try {
    const catalogue = new StoredCatalogue(new OneConnection(connection));
    const made = await exportTo(dir, connection, (load, take) =>
      embeddedReadings.scan(catalogue, load, take),
    );
    await layOut(connection, dir, 'photographs');
    return made;
  } finally {
    connection.closeSync();
    await file.close();
  }
}
