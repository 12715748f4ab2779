import type { DateOrder, SettledLayout, TemperatureUnit } from '../../adapters/index.js';
import type { SavedLayout } from '../../adapters/layout-for.js';
import type { Load, StationEntry, Write } from '../store/index.js';
import type { FileToLoad } from './outcome.js';

export { batteriesIn, type LoadedBattery } from './battery.js';
export { gather, type ToGather } from './gather.js';
export { loadFiles } from './load-files.js';
export type { FileOutcome, FileToLoad, LoadingRemark, LoadingWords, Unusable } from './outcome.js';

export interface LoadingOptions {
  /** Who loads, for the catalogue. */
  readonly by: string;
  readonly station?: string | undefined;
  readonly zone?: string | undefined;
  /** Zone of the group, in which days of places unknown begin. */
  readonly homeZone?: string | undefined;
  readonly unit?: TemperatureUnit | undefined;
  readonly column?: string | undefined;
  readonly dateOrder?: DateOrder | undefined;
  readonly layout?: SettledLayout | undefined;
  /** Layouts the group keeps: the one a file is of is used where `layout` is left out. */
  readonly layouts?: readonly SavedLayout[] | undefined;
  /** What else a file may call the stations of the season by. */
  readonly called?: readonly StationCalled[] | undefined;
  /** Instants later than this are no readings; a day from now where left out. */
  readonly notAfter?: number | undefined;
  /** Understand and compare, store nothing. */
  readonly dryRun?: boolean | undefined;
  /** Make the stations that `station` or the file names and the catalogue does not know. */
  readonly createStations?: boolean | undefined;
  /**
   * Where stations are made: the season document's text with them in it, stored in the load's own write.
   * Left out, the stations stand in the catalogue only.
   */
  readonly seasonWith?: ((text: string | null, made: readonly StationEntry[]) => string) | undefined;
  /** Told of a load before it is committed or, on a dry run, undone; sees it as that write does. */
  readonly inspect?: ((write: Write, load: Load, file: FileToLoad) => Promise<void>) | undefined;
  readonly progress?: ((step: LoadingProgress) => void) | undefined;
}

/** By what a file may mean a station, beside its id. */
export interface StationCalled {
  readonly station: string;
  readonly name: string;
  /** Serial numbers of the loggers that lay there. */
  readonly serials: readonly string[];
}

export interface LoadingProgress {
  readonly file: string;
  readonly bytesRead: number;
  readonly bytes: number;
}
