import type { DuckDBConnection } from '@duckdb/node-api';
import type { DaySeries } from '../../../forecasting/day-series.js';
import { placeBackup, refuseTaken } from '../backup-file.js';
import type { Write } from '../catalogue.js';
import { exportCopy, makeOwnCopy } from '../copies.js';
import { copyFromServer, copyToServer } from '../copy-store.js';
import type { EpochMillis, FlagEntry, Load, LoadNumber, Quantity, SeasonEntry } from '../entries.js';
import type { ExportMade } from '../export.js';
import type {
  BackupMade,
  Folder,
  SeasonApplied,
  ServerAddress,
  StationRecord,
  StoreCopied,
  Verified,
} from '../folder.js';
import { type Owner, removeOwner, writeOwner } from '../owner.js';
import { claimed } from '../reading-place.js';
import type { ReadingStore } from '../reading-store.js';
import { type StoreKind, StoreRefused } from '../refused.js';
import { rising } from '../rising.js';
import { ServerReadings } from '../server/readings.js';
import { StationReader } from '../station-reader.js';
import { copyOfStore, removeCopy } from './backup.js';
import { StoredCatalogue } from './catalogue.js';
import { OneConnection, ReadConnections } from './connections.js';
import { invalidates, refusalOf, type StoreFile } from './open-file.js';
import { StoredOutbox } from './outbox.js';
import { embeddedReadings } from './readings.js';
import { TouchedStations } from './touched.js';
import { findingsOf, staleDays } from './verify.js';
import { StoredWrite } from './write.js';

/** A data folder: the catalogue in its store file, the readings there too or on a server. */
export class EmbeddedFolder implements Folder {
  readonly catalogue: StoredCatalogue;
  readonly outbox: StoredOutbox;
  private readonly readers: ReadConnections;
  /** The write that is running, or the last one that ran: the next begins after it. */
  private writing: Promise<unknown> = Promise.resolve();
  private closed = false;
  private readonly touched = new TouchedStations();
  private readonly stationReaders = new Map<
    string,
    { readonly revision: number; readonly made: Promise<StationReader> }
  >();

  constructor(
    readonly dir: string,
    private owner: Owner,
    private file: StoreFile,
    private readonly openAgain: () => Promise<StoreFile>,
    private readonly now: () => EpochMillis,
    private readonly released: () => void,
    private standing: ReadingStore = embeddedReadings,
  ) {
    this.readers = new ReadConnections(() => this.file.connect());
    this.catalogue = new StoredCatalogue(this.readers);
    this.outbox = new StoredOutbox(this.readers, (work) => {
      const turn = this.writing.then(() => this.besideNow(work));
      this.writing = turn.catch(() => undefined);
      return turn;
    });
  }

  get readings(): ReadingStore {
    return this.standing;
  }

  get store(): StoreKind {
    return this.standing.kind === 'server' ? 'influx' : 'embedded';
  }

  async record(
    station: string,
    quantity: Quantity,
    from: EpochMillis,
    to: EpochMillis,
  ): Promise<StationRecord> {
    const reader = await this.stationReader(station, quantity);
    const own = await reader.read('instant', from, to);
    if (reader.reach('day') === null) return own;
    const given = await reader.read('day', from, to);
    return together(own, given);
  }

  days(): Promise<ReadonlyMap<string, DaySeries>> {
    return this.touched.days(this.catalogue);
  }

  revision(station: string): number {
    return this.touched.revision(station);
  }

  /** What the catalogue knows of a station's readings holds until a write touches it: zooming asks for it again and again. */
  private stationReader(station: string, quantity: Quantity): Promise<StationReader> {
    const asked = `${quantity} ${station}`;
    const revision = this.revision(station);
    const known = this.stationReaders.get(asked);
    if (known?.revision === revision) return known.made;
    const made = this.newStationReader(station, quantity);
    this.stationReaders.set(asked, { revision, made });
    made.catch(() => {
      if (this.stationReaders.get(asked)?.made === made) this.stationReaders.delete(asked);
    });
    return made;
  }

  private async newStationReader(station: string, quantity: Quantity): Promise<StationReader> {
    if ((await this.catalogue.station(station)) === null) {
      throw new StoreRefused({ code: 'folder-unknown-station', with: { station } }, 2);
    }
    return StationReader.of(this.catalogue, this.readings, station, quantity);
  }

  write<T>(by: string, work: (write: Write) => Promise<T>, keep = true): Promise<T> {
    const turn = this.writing.then(() => this.writeNow(by, work, keep));
    this.writing = turn.catch(() => undefined);
    return turn;
  }

  applySeason(season: SeasonEntry, by: string): Promise<SeasonApplied> {
    return this.write(by, (write) => write.applySeason(season));
  }

  withdraw(load: LoadNumber, by: string): Promise<Load> {
    return this.write(by, (write) => write.withdraw(load));
  }

  setFlags(flags: readonly Omit<FlagEntry, 'by' | 'at'>[], by: string): Promise<void> {
    return this.write(by, (write) => write.setFlags(flags));
  }

  renewAllDays(by = 'renew'): Promise<void> {
    return this.write(by, async (write) => {
      for (const { id } of await write.stations()) await write.renewStation(id);
    });
  }

  async backup(file: string): Promise<BackupMade> {
    refuseTaken(file);
    const copy = await this.copy();
    try {
      return { file, bytes: placeBackup(copy, file) };
    } finally {
      removeCopy(copy);
    }
  }

  async verify(): Promise<Verified> {
    const found = await this.write('verify', async (write) => {
      if (!(write instanceof StoredWrite)) throw new TypeError('this write belongs to another store');
      const findings = await findingsOf(write, this.readings);
      const loads = (await write.loads()).filter(({ withdrawn }) => withdrawn === null);
      const readings = loads.flatMap(({ series }) => series).reduce((sum, one) => sum + one.readings, 0);
      return { loads: loads.length, readings, seasons: (await write.seasons()).length, findings };
    });
    const stale = await this.write(
      'verify',
      (write) => (write instanceof StoredWrite ? staleDays(write) : Promise.resolve([])),
      false,
    );
    return { ...found, findings: [...found.findings, ...stale] };
  }

  /** From a copy, so that what is written is one moment's. */
  async exportAll(dir: string): Promise<ExportMade> {
    const copy = await this.copy();
    try {
      return await exportCopy(copy, dir);
    } finally {
      removeCopy(copy);
    }
  }

  copyTo(kind: StoreKind, server: ServerAddress | null): Promise<StoreCopied> {
    const turn = this.writing.then(() => this.copyNow(kind, server));
    this.writing = turn.catch(() => undefined);
    return turn;
  }

  async announce(address: string): Promise<{ readonly token: string }> {
    this.owner = { ...this.owner, address };
    writeOwner(this.dir, this.owner);
    return { token: this.owner.token };
  }

  async close(): Promise<void> {
    if (this.closed) return;
    this.closed = true;
    await this.writing;
    removeOwner(this.dir);
    await this.closeFile();
    if (this.standing instanceof ServerReadings) this.standing.server.close();
    this.released();
  }

  private async copyNow(kind: StoreKind, address: ServerAddress | null): Promise<StoreCopied> {
    if (kind === this.store) throw new StoreRefused({ code: 'copy-there-already', with: { store: kind } }, 2);
    const before = this.standing;
    const from = this.store;
    const connection = await this.file.connect();
    let server: ServerReadings | null = before instanceof ServerReadings ? before : null;
    try {
      if (server === null) {
        if (address === null)
          throw new StoreRefused(
            { code: 'server-not-named', with: { folder: this.dir, url: '', database: '' } },
            2,
          );
        server = await claimed(connection, address, true);
        // Reads the store file as long as the server holds nothing that stands: right before and after the commit.
        this.standing = server;
        this.touched.touch(null);
      }
      await connection.run('BEGIN');
      const write = new StoredWrite(new OneConnection(connection), server, 'copy-store', this.now());
      const copied =
        kind === 'influx' && address !== null
          ? await copyToServer(write, connection, server, address)
          : await copyFromServer(write, connection, server);
      await connection.run('COMMIT');
      if (kind === 'embedded') {
        this.standing = embeddedReadings;
        server.server.close();
      }
      this.touched.touch(null);
      return { from, to: kind, ...copied };
    } catch (error) {
      await connection.run('ROLLBACK').catch(() => undefined);
      this.standing = before;
      this.touched.touch(null);
      if (before !== server && server !== null) {
        server.server.close();
      }
      throw error instanceof StoreRefused ? error : refusalOf(this.dir, error);
    } finally {
      connection.closeSync();
    }
  }

  /** A copy of what stands now, readings and all; whoever asked for it takes it away. */
  private async copy(): Promise<string> {
    const connection = await this.file.connect();
    try {
      const copy = await copyOfStore(connection, this.dir);
      await makeOwnCopy(copy, this.dir, this.standing instanceof ServerReadings ? this.standing : null);
      return copy;
    } catch (error) {
      throw error instanceof StoreRefused ? error : refusalOf(this.dir, error);
    } finally {
      connection.closeSync();
    }
  }

  private async writeNow<T>(by: string, work: (write: Write) => Promise<T>, keep: boolean): Promise<T> {
    if (this.closed) throw new Error('the data folder is closed');
    const connection = await this.file.connect();
    try {
      await connection.run('BEGIN');
      const write = new StoredWrite(new OneConnection(connection), this.readings, by, this.now());
      const result = await work(write);
      if (keep) await this.readings.settle(write);
      await connection.run(keep ? 'COMMIT' : 'ROLLBACK');
      if (keep) this.touched.touch(write.touched);
      return result;
    } catch (error) {
      await connection.run('ROLLBACK').catch(() => undefined);
      if (!invalidates(error)) throw error;
      connection.closeSync();
      await this.recover();
      throw refusalOf(this.dir, error);
    } finally {
      connection.closeSync();
    }
  }

  /** A short transaction on tables that no reading depends on. */
  private async besideNow<T>(work: (connection: DuckDBConnection) => Promise<T>): Promise<T> {
    if (this.closed) throw new Error('the data folder is closed');
    const connection = await this.file.connect();
    try {
      await connection.run('BEGIN');
      const result = await work(connection);
      await connection.run('COMMIT');
      return result;
    } catch (error) {
      await connection.run('ROLLBACK').catch(() => undefined);
      if (!invalidates(error)) throw error;
      connection.closeSync();
      await this.recover();
      throw refusalOf(this.dir, error);
    } finally {
      connection.closeSync();
    }
  }

  /** A full disk leaves an instance that answers nothing any more: the committed state is read anew from the file. */
  private async recover(): Promise<void> {
    await this.closeFile();
    this.file = await this.openAgain();
    this.touched.touch(null);
  }

  private async closeFile(): Promise<void> {
    await this.readers.close();
    await this.file.close();
  }
}

/** Readings at moments and an agency's daily means in one record, by time. */
function together(own: StationRecord, given: StationRecord): StationRecord {
  const length = own.at.length + given.at.length;
  const both = {
    at: new Float64Array(length),
    value: new Float64Array(length),
    load: new Int32Array(length),
    flag: new Uint8Array(length),
  };
  for (const column of ['at', 'value', 'load', 'flag'] as const) {
    both[column].set(own[column]);
    both[column].set(given[column], own.at.length);
  }
  const places = Int32Array.from({ length }, (_, i) => i);
  const order = rising({ at: both.at, value: both.value, load: places }).load;
  return {
    at: Float64Array.from(order, (i) => both.at[i]),
    value: Float64Array.from(order, (i) => both.value[i]),
    load: Int32Array.from(order, (i) => both.load[i]),
    flag: Uint8Array.from(order, (i) => both.flag[i]),
  };
}
