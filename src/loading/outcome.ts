import type { AdapterRemark, DownloadReport, Understood } from '../../adapters/index.js';
import type { Remark } from '../../adapters/remark.js';
import type { LoadedSeries, LoadNumber } from '../store/index.js';

/** Codes of what loading itself has to say, beside the adapters'. */
export interface LoadingWords {
  /** The file names no station and none was asked for. */
  'no-station': { known: string };
  'station-not-in-season': { station: string; known: string };
  'no-such-file': { file: string };
  'file-unreadable': { file: string; why: string };
  /** The file has an air column, and the season no station for it. */
  'air-left': { column: string; station: string; readings: number };
  'station-made': { station: string };
  'duplicate-instants': { count: number; line: number; kept: number; left: number };
  'changed-while-read': { file: string };
}
export type LoadingRemark = Remark<LoadingWords>;

export interface FileToLoad {
  /** Where the bytes are. */
  readonly path: string;
  /** What the person calls it: shown and remembered, never opened. */
  readonly name: string;
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
  /** The load that holds it: a new one, or the standing one of the same bytes; null on a dry run or refusal. */
  readonly load: LoadNumber | null;
  readonly alreadyLoaded: boolean;
  readonly differing: number;
  readonly largestDifference: number;
  readonly refused: {
    readonly reason: AdapterRemark | LoadingRemark;
    readonly question: AdapterRemark | null;
    readonly exit: 1 | 2;
  } | null;
}
