import type { DaySeries } from '../../forecasting/day-series.js';
import type { Catalogue, Write } from './catalogue.js';
import type {
  EpochMillis,
  FlagEntry,
  Load,
  LoadNumber,
  Quantity,
  SeasonEntry,
  SeasonVersion,
} from './entries.js';
import type { ExportMade } from './export.js';
import type { FeedBook, Outbox } from './outbox.js';
import type { ReadingStore } from './reading-store.js';
import type { Finding, StoreKind } from './refused.js';

export interface FolderOptions {
  /** Most memory the embedded store may use for itself, megabytes (default 96). */
  readonly memoryMegabytes?: number;
  readonly threads?: number;
  /** The clock; tests give their own. */
  readonly now?: () => EpochMillis;
  /** Where readings are to lie; left out, wherever this folder's do, which is in the folder where it is new. */
  readonly store?: StoreChoice;
}

/** An InfluxDB server and the database (2.x: bucket) on it that is one group's own. */
export interface ServerAddress {
  /** Scheme, host and port. */
  readonly url: string;
  readonly database: string;
  readonly user: string | null;
  readonly password: string | null;
  readonly token: string | null;
  /** 2.x and hosted servers: whose bucket it is. */
  readonly organisation: string | null;
  /** How long a load goes on trying where the server does not take it, milliseconds (default two minutes). */
  readonly patience?: number;
}

/** `kind` null: as the folder stands; `server` is the one to use where it stands on a server. */
export interface StoreChoice {
  readonly kind: StoreKind | null;
  readonly server: ServerAddress | null;
}

export interface BackupMade {
  readonly file: string;
  readonly bytes: number;
}

export interface Verified {
  readonly loads: number;
  readonly readings: number;
  readonly seasons: number;
  /** Empty where all is well. */
  readonly findings: readonly Finding[];
}

export interface StoreCopied {
  readonly from: StoreKind;
  readonly to: StoreKind;
  readonly loads: number;
  readonly readings: number;
}

/** A station's readings as the forecast and the pages see them: corrected, trimmed, flagged. */
export interface StationRecord {
  readonly at: Float64Array;
  readonly value: Float64Array;
  /** QARTOD flag of each. */
  readonly flag: Uint8Array;
  readonly load: Int32Array;
}

export interface SeasonApplied {
  readonly version: SeasonVersion;
  /** The text was already in force: nothing was written. */
  readonly unchanged: boolean;
  /** Stations whose days were computed anew because an offset, a correction or a deployment changed. */
  readonly renewed: readonly string[];
}

/** One group's data folder, owned by this process until it is closed. */
export interface Folder {
  readonly dir: string;
  readonly catalogue: Catalogue;
  readonly readings: ReadingStore;
  /** What is to be told to whom, and where the feeds stand. */
  readonly outbox: Outbox & FeedBook;
  /** Corrected, trimmed and flagged readings of a station, from <= instant < to. */
  record(station: string, quantity: Quantity, from: EpochMillis, to: EpochMillis): Promise<StationRecord>;
  /**
   * The kept day series of every station with readings of temperature, as the catalogue has them; each is the same object
   * until a write touches it. Not to be changed.
   */
  days(): Promise<ReadonlyMap<string, DaySeries>>;
  /** Rises whenever a write bears on what `record` or `days` say of the station. */
  revision(station: string): number;
  /**
   * Runs one write: all of it stands once this resolves, nothing of it when it rejects or `keep` is false. Writes
   * wait for each other.
   */
  write<T>(by: string, work: (write: Write) => Promise<T>, keep?: boolean): Promise<T>;
  applySeason(season: SeasonEntry, by: string): Promise<SeasonApplied>;
  /** @throws StoreRefused 'unknown-load', 'already-withdrawn' */
  withdraw(load: LoadNumber, by: string): Promise<Load>;
  /** Sets flags on dated intervals and renews the days they touch. */
  setFlags(flags: readonly Omit<FlagEntry, 'by' | 'at'>[], by: string): Promise<void>;
  /** Computes every kept day anew from the readings. */
  renewAllDays(by?: string): Promise<void>;
  /** Which store this folder's readings are in. */
  readonly store: StoreKind;
  /**
   * Writes everything that stands into one file that opens as a data folder of its own; others read and write meanwhile.
   * @throws StoreRefused 'backup-exists', 'backup-unwritable', 'disk-full'
   */
  backup(file: string): Promise<BackupMade>;
  /** Checks that nothing is missing, changed or loose. */
  verify(): Promise<Verified>;
  /** Writes everything that stands in open formats into a new folder. */
  exportAll(dir: string): Promise<ExportMade>;
  /**
   * Copies every reading into the other store, compares counts and checksums, and only then switches. Writes wait.
   * @throws StoreRefused 'copy-there-already', 'copy-differs' and what the server refuses; the folder is then as it was.
   */
  copyTo(kind: StoreKind, server: ServerAddress | null): Promise<StoreCopied>;
  /** Says in owner.json where this process answers, so that a command finds it. */
  announce(address: string): Promise<{ readonly token: string }>;
  close(): Promise<void>;
}
