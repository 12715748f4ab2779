import { statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type DuckDBConnection, DuckDBInstance } from '@duckdb/node-api';
import { StoreRefused } from '../refused.js';
import { literal, oneRow, rows } from './sql.js';

/** Three headers of 4096 bytes stand before the first block of a DuckDB file. */
const HEADERS_BYTES = 3 * 4096;

export interface StoreFile {
  connect(): Promise<DuckDBConnection>;
  /** Closes the file and gives up its lock. With `untouched` not even what waits in the log is folded in. */
  close(untouched?: boolean): Promise<void>;
}

export interface FileSettings {
  readonly memoryMegabytes: number;
  readonly threads: number;
}

/**
 * The only place that opens a store file. `fromCache`, because two instances on one file in one process lose each
 * other's rows; that cache belongs to one thread, so a worker thread must never open a store file either. Nothing
 * in the owning process may open the file by `fs`: closing such a handle would drop the lock of the whole process.
 *
 * @throws StoreRefused when another process holds it, or it is no whole store file of a known format.
 */
export async function openStoreFile(path: string, settings: FileSettings): Promise<StoreFile> {
  const folder = dirname(path);
  let instance: DuckDBInstance;
  try {
    instance = await DuckDBInstance.fromCache(path, {
      memory_limit: `${settings.memoryMegabytes}MB`,
      threads: String(settings.threads),
      temp_directory: join(folder, 'underice.tmp'),
      autoinstall_known_extensions: 'false',
      autoload_known_extensions: 'false',
      allow_community_extensions: 'false',
    });
  } catch (error) {
    throw refusalOf(folder, error);
  }
  const first = await instance.connect();
  const file: StoreFile = {
    connect: () => instance.connect(),
    async close(untouched = false) {
      if (untouched) await first.run('PRAGMA disable_checkpoint_on_shutdown');
      first.closeSync();
      instance.closeSync();
    },
  };
  try {
    await settle(first, folder);
    await refuseCutShort(first, path);
  } catch (error) {
    await file.close(true).catch(() => undefined);
    throw refusalOf(folder, error);
  }
  return file;
}

async function settle(connection: DuckDBConnection, folder: string): Promise<void> {
  await connection.run("SET TimeZone = 'UTC'");
  await connection.run(`SET allowed_directories = [${literal(`${folder}/`)}]`);
  await connection.run('SET enable_external_access = false');
}

/**
 * A file that lost its end opens as long as nothing is read there. Blocks past the end may be free ones (so a
 * kill leaves it), but none that holds rows.
 */
async function refuseCutShort(connection: DuckDBConnection, path: string): Promise<void> {
  const size = await oneRow(
    connection,
    'SELECT block_size, total_blocks FROM pragma_database_size() WHERE block_size > 0 LIMIT 1',
  );
  const bytes = statSync(path).size;
  const reaches = (blocks: number) => HEADERS_BYTES + size.number('block_size') * blocks;
  if (bytes >= reaches(size.number('total_blocks'))) return;
  const tables = await rows(connection, 'SELECT table_name FROM duckdb_tables()');
  for (const table of tables) {
    const name = literal(table.text('table_name'));
    const last = await oneRow(
      connection,
      `SELECT greatest(max(block_id), max(list_max(additional_block_ids))) AS block
        FROM pragma_storage_info(${name}) WHERE persistent`,
    );
    const expected = reaches((last.numberOrNull('block') ?? -1) + 1);
    if (bytes < expected) {
      throw new StoreRefused({ code: 'store-cut-short', with: { folder: dirname(path), bytes, expected } });
    }
  }
}

/** What the database said, as a refusal in our words. */
export function refusalOf(folder: string, error: unknown): StoreRefused {
  if (error instanceof StoreRefused) return error;
  const why = error instanceof Error ? (error.message.split('\n', 1)[0] ?? '') : String(error);
  const cause = { cause: error };
  if (/No space left|not enough space|disk quota/i.test(why)) {
    return new StoreRefused({ code: 'disk-full', with: { folder } }, 1, cause);
  }
  if (/Could not set lock/.test(why)) {
    const pid = /PID (\d+)/.exec(why)?.[1];
    const held = { folder, pid: pid === undefined ? null : Number(pid), since: '', address: '' };
    return new StoreRefused({ code: 'folder-held', with: held }, 1, cause);
  }
  if (/not a valid DuckDB database file/.test(why)) {
    return new StoreRefused({ code: 'store-unreadable', with: { folder, why: '' } }, 1, cause);
  }
  if (/Could not read enough bytes|Could not read all bytes/.test(why)) {
    return new StoreRefused({ code: 'store-cut-short', with: { folder, bytes: 0, expected: 0 } }, 1, cause);
  }
  if (/can only read versions|newer version|storage version/i.test(why)) {
    return new StoreRefused({ code: 'store-format-newer', with: { folder } }, 1, cause);
  }
  if (/Corrupt|checksum/i.test(why)) {
    return new StoreRefused({ code: 'store-unreadable', with: { folder, why } }, 1, cause);
  }
  if (/Permission denied|Read-only file system/i.test(why)) {
    return new StoreRefused({ code: 'folder-read-only', with: { folder } }, 1, cause);
  }
  return new StoreRefused({ code: 'store-failed', with: { folder, why } }, 1, cause);
}

/** After such an error the whole instance answers nothing any more: close, open again. */
export function invalidates(error: unknown): boolean {
  const why = error instanceof Error ? error.message : '';
  return /No space left|not enough space|FATAL|database has been invalidated|disk quota/i.test(why);
}
