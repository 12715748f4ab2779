import { randomUUID } from 'node:crypto';
import type { DuckDBConnection } from '@duckdb/node-api';
import { embeddedReadings } from './embedded/readings.js';
import { oneRow, rows } from './embedded/sql.js';
import type { ServerAddress, StoreChoice } from './folder.js';
import type { ReadingStore } from './reading-store.js';
import { type StoreKind, StoreRefused } from './refused.js';
import { claimDatabase } from './server/claim.js';
import { InfluxServer } from './server/influx-server.js';
import { ServerReadings } from './server/readings.js';

/** How long opening a folder waits for its server, milliseconds. */
const OPENING_PATIENCE = 8000;

interface Place {
  /** null while the readings lie in the folder. */
  readonly url: string | null;
  readonly database: string | null;
}

/**
 * The store in which this folder's readings lie, ready to use.
 *
 * @throws StoreRefused where the settings name the other one, no server, or one that cannot be used.
 */
export async function readingsOf(
  connection: DuckDBConnection,
  folder: string,
  choice: StoreChoice,
): Promise<ReadingStore> {
  const { url, database } = await placeOf(connection);
  const stands: StoreKind = url === null ? 'embedded' : 'influx';
  const wanted = choice.kind ?? stands;
  const fresh = (await oneRow(connection, 'SELECT count(*) AS loads FROM load')).number('loads') === 0;
  if (wanted !== stands && !fresh)
    throw new StoreRefused({ code: 'store-elsewhere', with: { folder, stands, wanted } }, 2);
  if (wanted === 'embedded') {
    if (stands === 'influx') await stayHere(connection);
    return embeddedReadings;
  }
  if (choice.server === null)
    throw new StoreRefused(
      { code: 'server-not-named', with: { folder, url: url ?? '', database: database ?? '' } },
      2,
    );
  const store = await claimed(connection, choice.server, fresh);
  if (stands === 'embedded') await goTo(connection, choice.server);
  return store;
}

/** The server's store, its database checked and this group's own. */
export async function claimed(
  connection: DuckDBConnection,
  address: ServerAddress,
  fresh: boolean,
): Promise<ServerReadings> {
  const patience = Math.min(OPENING_PATIENCE, address.patience ?? OPENING_PATIENCE);
  const first = await InfluxServer.connect({ ...address, patience });
  try {
    await claimDatabase(first, await markOf(connection), fresh);
  } finally {
    first.close();
  }
  return new ServerReadings(await InfluxServer.connect(address));
}

/** What this group leaves on a server to know its own database by; made once, before it is used. */
async function markOf(connection: DuckDBConnection): Promise<string> {
  const [standing] = await rows(connection, 'SELECT mark FROM reading_place');
  if (standing !== undefined) return standing.text('mark');
  const mark = randomUUID();
  await rows(connection, 'INSERT INTO reading_place VALUES (NULL, NULL, ?)', [mark]);
  return mark;
}

async function placeOf(connection: DuckDBConnection): Promise<Place> {
  const [row] = await rows(connection, 'SELECT url, database_name FROM reading_place');
  return { url: row?.textOrNull('url') ?? null, database: row?.textOrNull('database_name') ?? null };
}

export async function goTo(connection: DuckDBConnection, { url, database }: ServerAddress): Promise<void> {
  await rows(connection, 'UPDATE reading_place SET url = ?, database_name = ?', [url, database]);
}

export async function stayHere(connection: DuckDBConnection): Promise<void> {
  await rows(connection, 'UPDATE reading_place SET url = NULL, database_name = NULL');
}
