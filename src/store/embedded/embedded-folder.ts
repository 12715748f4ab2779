import type { Write } from '../catalogue.js';
import type { EpochMillis, FlagEntry, Load, LoadNumber, Quantity, SeasonEntry } from '../entries.js';
import type { Folder, SeasonApplied, StationRecord } from '../folder.js';
import { type Owner, removeOwner, writeOwner } from '../owner.js';
import type { ReadingStore } from '../reading-store.js';
import { StoreRefused } from '../refused.js';
import { rising } from '../rising.js';
import { StationReader } from '../station-reader.js';
import { StoredCatalogue } from './catalogue.js';
import { OneConnection, ReadConnections } from './connections.js';
import { invalidates, refusalOf, type StoreFile } from './open-file.js';
import { embeddedReadings } from './readings.js';
import { StoredWrite } from './write.js';

/** A data folder whose readings and catalogue lie in one store file. */
export class EmbeddedFolder implements Folder {
  readonly readings: ReadingStore = embeddedReadings;
  readonly catalogue: StoredCatalogue;
  private readonly readers: ReadConnections;
  /** The write that is running, or the last one that ran: the next begins after it. */
  private writing: Promise<unknown> = Promise.resolve();
  private closed = false;
  private readonly stationReaders = new Map<string, Promise<StationReader>>();

  constructor(
    readonly dir: string,
    private owner: Owner,
    private file: StoreFile,
    private readonly openAgain: () => Promise<StoreFile>,
    private readonly now: () => EpochMillis,
    private readonly released: () => void,
  ) {
    this.readers = new ReadConnections(() => this.file.connect());
    this.catalogue = new StoredCatalogue(this.readers);
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

  /** What the catalogue knows of a station's readings holds until the next write: zooming asks for it again and again. */
  private stationReader(station: string, quantity: Quantity): Promise<StationReader> {
    const asked = `${quantity} ${station}`;
    const known = this.stationReaders.get(asked);
    if (known !== undefined) return known;
    const made = this.newStationReader(station, quantity);
    this.stationReaders.set(asked, made);
    made.catch(() => this.stationReaders.delete(asked));
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
    this.released();
  }

  private async writeNow<T>(by: string, work: (write: Write) => Promise<T>, keep: boolean): Promise<T> {
    if (this.closed) throw new Error('the data folder is closed');
    const connection = await this.file.connect();
    try {
      await connection.run('BEGIN');
      const result = await work(
        new StoredWrite(new OneConnection(connection), this.readings, by, this.now()),
      );
      await connection.run(keep ? 'COMMIT' : 'ROLLBACK');
      if (keep) this.stationReaders.clear();
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
