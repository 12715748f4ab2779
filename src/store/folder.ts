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
import type { ReadingStore } from './reading-store.js';

export interface FolderOptions {
  /** Most memory the embedded store may use for itself, megabytes (default 96). */
  readonly memoryMegabytes?: number;
  readonly threads?: number;
  /** The clock; tests give their own. */
  readonly now?: () => EpochMillis;
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
  /** Corrected, trimmed and flagged readings of a station, from <= instant < to. */
  record(station: string, quantity: Quantity, from: EpochMillis, to: EpochMillis): Promise<StationRecord>;
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
  /** Says in owner.json where this process answers, so that a command finds it. */
  announce(address: string): Promise<{ readonly token: string }>;
  close(): Promise<void>;
}
