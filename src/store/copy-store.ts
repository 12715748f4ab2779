import type { DuckDBConnection } from '@duckdb/node-api';
import { bringIn } from './embedded/bring-in.js';
import { embeddedReadings } from './embedded/readings.js';
import { rows } from './embedded/sql.js';
import type { StoredWrite } from './embedded/write.js';
import type { LoadNumber } from './entries.js';
import type { ServerAddress } from './folder.js';
import { goTo, stayHere } from './reading-place.js';
import type { ReadingStore } from './reading-store.js';
import { sameSums } from './reading-sum.js';
import { StoreRefused } from './refused.js';
import type { ServerReadings } from './server/readings.js';

/** What was copied: standing loads and all their readings. */
export interface Copied {
  readonly loads: number;
  readonly readings: number;
}

/**
 * Copies every standing load from the store file to the server, in the transaction open on `connection`, and compares.
 *
 * @throws StoreRefused 'copy-differs'
 */
export async function copyToServer(
  write: StoredWrite,
  connection: DuckDBConnection,
  server: ServerReadings,
  address: ServerAddress,
): Promise<Copied> {
  const loads = await standing(write);
  for (const load of loads) {
    const tag = await server.send(write, load);
    await rows(connection, 'INSERT INTO server_load VALUES (?, ?)', [load, tag]);
  }
  const readings = await compare(write, loads, embeddedReadings, server);
  for (const table of ['visible', 'covered']) await rows(connection, `DELETE FROM ${table}`);
  await goTo(connection, address);
  return { loads: loads.length, readings };
}

/** The way back. Points stay on the server until its database is dropped there. */
export async function copyFromServer(
  write: StoredWrite,
  connection: DuckDBConnection,
  server: ServerReadings,
): Promise<Copied> {
  const loads = await standing(write);
  await bringIn(connection, (load, take) => server.scan(write, load, take));
  const readings = await compare(write, loads, server, embeddedReadings);
  await rows(connection, 'DELETE FROM server_load');
  await stayHere(connection);
  return { loads: loads.length, readings };
}

async function standing(write: StoredWrite): Promise<LoadNumber[]> {
  return (await write.loads()).filter(({ withdrawn }) => withdrawn === null).map(({ load }) => load);
}

async function compare(
  write: StoredWrite,
  loads: readonly LoadNumber[],
  from: ReadingStore,
  to: ReadingStore,
): Promise<number> {
  let readings = 0;
  for (const load of loads) {
    const [before, after] = [await from.sums(write, load), await to.sums(write, load)];
    const recorded = (await write.load(load))?.series.reduce((sum, one) => sum + one.readings, 0);
    const copied = [...after.values()].reduce((sum, one) => sum + one.readings, 0);
    if (!sameSums(before, after) || copied !== recorded)
      throw new StoreRefused({ code: 'copy-differs', with: { load: String(load) } });
    readings += copied;
  }
  return readings;
}
