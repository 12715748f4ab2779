import type { AdapterRemark, DownloadReport, Understood } from '../../adapters/index.js';
import type { Remark } from '../../adapters/remark.js';
import type { LoadedSeries, LoadNumber, StoreRemark } from '../store/index.js';
import type { LoadedBattery } from './battery.js';

/** Codes of what loading itself has to say, beside the adapters' and the store's. */
export interface LoadingWords {
  /** The file names no station and none was asked for; `known` are the season's. */
  'no-station': { known: readonly string[] };
  'station-not-in-season': { station: string; known: readonly string[] };
  /** Two names in the file stand for one station and quantity. */
  'station-twice': { first: string; second: string; station: string };
  'no-such-file': { file: string };
  'not-a-file': { file: string };
  'file-unreadable': { file: string; why: string };
  'changed-while-read': { file: string };
  /** The file has the air as well, and the season no station for it. */
  'air-left': { station: string; readings: number };
  'air-to-station': { station: string };
  /** A layout that the group keeps was used. */
  'layout-used': { layout: string };
  'stations-made': { count: number; stations: readonly string[] };
  'station-made': { station: string; named: string };
  /** An instant given twice in a file that goes back in time: the first was kept. */
  'instant-twice': { at: string; kept: number; left: number };
}
export type LoadingRemark = Remark<LoadingWords>;

export interface FileToLoad {
  /** Where the bytes are. */
  readonly path: string;
  /** What the person calls it: shown and remembered, never opened. */
  readonly name: string;
  /** The station of this file, where that is not the one asked for all of them. */
  readonly station?: string;
}

export interface Unusable {
  readonly count: number;
  readonly examples: readonly { readonly line: number; readonly reason: AdapterRemark | LoadingRemark }[];
}

/** What came of one file. */
export interface FileOutcome {
  readonly file: string;
  readonly stations: readonly LoadedSeries[];
  readonly understood: Understood | null;
  readonly assumed: readonly (AdapterRemark | LoadingRemark)[];
  readonly unusable: Unusable;
  readonly serial: DownloadReport['serial'];
  /** What the file says of the loggers' batteries, by station. */
  readonly battery: readonly LoadedBattery[];
  /** The load that holds it: a new one, or the standing one of the same bytes; null on a dry run or refusal. */
  readonly load: LoadNumber | null;
  readonly alreadyLoaded: boolean;
  readonly differing: number;
  readonly largestDifference: number;
  readonly refused: {
    readonly reason: AdapterRemark | LoadingRemark | StoreRemark;
    readonly question: AdapterRemark | null;
    readonly exit: 1 | 2;
  } | null;
}
