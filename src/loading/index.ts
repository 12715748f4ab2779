import type { DateOrder, SettledLayout, TemperatureUnit } from '../../adapters/index.js';
import type { Folder, StationEntry } from '../store/index.js';
import type { FileOutcome, FileToLoad } from './outcome.js';

export type { FileOutcome, FileToLoad, LoadingRemark, LoadingWords, Unusable } from './outcome.js';

export interface LoadingOptions {
  /** Who loads, for the catalogue. */
  readonly by: string;
  readonly station?: string;
  readonly zone?: string;
  readonly unit?: TemperatureUnit;
  readonly column?: string;
  readonly dateOrder?: DateOrder;
  readonly layout?: SettledLayout;
  /** Understand and compare, store nothing. */
  readonly dryRun?: boolean;
  /** Make the stations that `station` or the file names and the catalogue does not know. */
  readonly createStations?: boolean;
  /**
   * Where stations are made: the season document's text with them in it, stored in the load's own write.
   * Left out, the stations stand in the catalogue only.
   */
  readonly seasonWith?: (text: string | null, made: readonly StationEntry[]) => string;
  readonly progress?: (step: LoadingProgress) => void;
}

export interface LoadingProgress {
  readonly file: string;
  readonly bytesRead: number;
  readonly bytes: number;
}

export type LoadFiles = (
  folder: Folder,
  files: readonly FileToLoad[],
  options: LoadingOptions,
) => Promise<readonly FileOutcome[]>;
