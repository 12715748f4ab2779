import type { Remark } from './remark.js';

/** Why one line could not be used. */
export interface LineWords {
  /** Longer than the longest line that is read. */
  'line-too-long': { limitKiB: number };
  'line-too-many-columns': { limit: number };
  'line-too-few-columns': { found: number; needed: number };
  /** No date where the dates stand: a note, an event, or a date of another form. */
  'line-no-time': { text: string };
  /** A date that no calendar has, or one of another form than the rest of the file. */
  'line-bad-time': { text: string };
  /** The hour that the clocks skip in spring. */
  'line-skipped-hour': { text: string; zone: string };
  'line-after-now': { text: string };
  'line-not-a-number': { text: string };
  'line-impossible-value': { text: string };
  'line-unknown-unit': { text: string };
  'line-unknown-zone': { text: string };
  'line-no-station': Record<never, never>;
  /** Two values of one series at one instant, the first kept. */
  'line-same-instant': { firstLine: number; kept: number; dropped: number };
  /** The last line of the file has no line end and looks cut. */
  'line-cut-short': { text: string };
  'line-other-delimiter': { text: string };
  'line-columns-moved': { text: string };
}

export type LineRemark = Remark<LineWords>;

/** What the engine for delimited downloads has to tell people, with the figures each sentence needs. */
export interface EngineWords extends LineWords {
  // Refusals of a whole file.
  'empty-file': Record<never, never>;
  'damaged-gzip': Record<never, never>;
  'no-readings-found': { firstLine: string };
  'headers-without-readings': { headers: readonly string[] };
  'unknown-zone': { zone: string };
  'no-temperature-column': { headers: readonly string[] };
  'unknown-column': { asked: string; headers: readonly string[] };
  'several-columns': { columns: readonly string[] };
  'unexplained-columns': { columns: readonly string[]; firstLine: string };
  'ambiguous-dates': { text: string };
  'no-zone': { station: string | null };
  'no-unit': { smallest: number; largest: number };
  'mostly-unusable': { unusable: number; lines: number; line: number; reason: LineRemark };
  'layout-changes': { line: number; reason: LineRemark };
  'several-loggers': { line: number; first: string; second: string };
  'too-many-stations': { limit: number; example: string };
  'several-stations': { asked: string; stations: readonly string[] };
  'not-a-river': { outside: number; readings: number; smallest: number; largest: number };
  'dates-without-clock': { date: string };
  // Questions.
  'which-column': { columns: readonly string[] };
  'which-date-order': { text: string; readings: readonly { order: string; iso: string }[] };
  'which-zone': Record<never, never>;
  'which-unit': Record<never, never>;
  'leave-station-out': Record<never, never>;
  // What was assumed.
  'unit-assumed': { unit: string; smallest: number; largest: number };
  'unit-asked-not-used': { asked: string; stated: string };
  'zone-asked': { zone: string };
  'zone-asked-not-used': { asked: string; stated: string };
  'zone-stated-unknown': { stated: string };
  'zone-from-deployment': { zone: string; station: string | null };
  'zone-from-station': { zone: string; station: string | null };
  'zone-from-longitude': { zone: string; longitude: number };
  'zone-home-for-days': { readonly zone: string };
  'zone-utc-for-days': Record<never, never>;
  'standard-time-of-zone': { zone: string; offset: string };
  'offset-in-each-value': Record<never, never>;
  'kept-one-offset': { zone: string; offset: string };
  'fixed-offset-shown': { zone: string; offset: string };
  'wall-time-shown': { zone: string };
  'no-header': { timeColumns: readonly string[]; valueColumn: string };
  'date-order-by-steps': { order: string };
  'date-order-asked-not-used': { asked: string; found: string };
  'columns-taken-for-stations': { stations: readonly string[] };
  'station-asked-not-file': { asked: string; stated: string };
  'station-by-serial': { station: string; serial: string };
  'daily-means-assumed': Record<never, never>;
  'extremes-not-means': { column: string };
  'air-beside-weather': { columns: readonly string[] };
  'column-taken': { column: string; left: readonly string[] };
  'column-without-unit-left': { column: string };
  'repeated-readings': { count: number };
  'missing-values': { count: number };
  'time-goes-back': { line: number; times: number };
}
