import type { AdapterRemark, Asked, DownloadReport, SeriesKey } from '../../adapters/index.js';
import type { SavedLayout } from '../../adapters/layout-for.js';
import type { StationKind } from '../store/index.js';

/** A station as the reading of a download needs to know it. */
export interface KnownStation {
  readonly id: string;
  /** As the season calls it beside its id, and the serial numbers of the loggers that lay there. */
  readonly name: string;
  readonly serials: readonly string[];
  readonly kind: StationKind;
  readonly zone: string;
  readonly deployments: readonly {
    readonly from: number;
    readonly to: number | null;
    readonly zone: string | null;
  }[];
}

export interface ReadingJob {
  readonly path: string;
  readonly name: string;
  readonly asked: Asked;
  readonly stations: readonly KnownStation[];
  /** What the group keeps of layouts: the one this file is of is used. */
  readonly layouts: readonly SavedLayout[];
}

/** Readings of one series of the file, copied out of the engine's columns. */
export interface FileRun {
  /** Index into the file's series. */
  readonly series: number;
  readonly length: number;
  readonly at: Float64Array<ArrayBuffer>;
  readonly value: Float64Array<ArrayBuffer>;
  /** Line of each; null where the instants rise and follow all before them in the series. */
  readonly line: Float64Array<ArrayBuffer> | null;
}

export type ToReader =
  | { readonly kind: 'read'; readonly job: ReadingJob }
  /** A run was taken; its columns may be filled again. */
  | { readonly kind: 'taken'; readonly run: FileRun }
  | { readonly kind: 'stop' };

export type FromReader =
  | { readonly kind: 'run'; readonly run: FileRun; readonly keys: readonly SeriesKey[] | null }
  | { readonly kind: 'start-again' }
  | { readonly kind: 'progress'; readonly bytesRead: number }
  | { readonly kind: 'done'; readonly report: DownloadReport; readonly layout: string | null }
  | {
      readonly kind: 'refused';
      readonly reason: AdapterRemark;
      readonly question: AdapterRemark | null;
    }
  | { readonly kind: 'unreadable'; readonly why: string }
  | { readonly kind: 'failed'; readonly why: string }
  | { readonly kind: 'stopped' };

/** What travels with a run instead of being copied. */
export function buffersOf({ at, value, line }: FileRun): ArrayBuffer[] {
  return line === null ? [at.buffer, value.buffer] : [at.buffer, value.buffer, line.buffer];
}
