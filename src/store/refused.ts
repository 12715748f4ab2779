import type { Remark } from '../../adapters/remark.js';
import { Refusal } from '../refusal.js';

/** What a data folder can be refused for, with the figures its sentence needs. */
export interface StoreWords {
  /** Another process owns the folder; `address` is where its pages answer, '' where it serves none. */
  'folder-held': { folder: string; pid: number | null; since: string; address: string };
  'folder-read-only': { folder: string };
  'folder-not-a-folder': { folder: string };
  'folder-of-others': { folder: string; found: string };
  'disk-full': { folder: string };
  'store-newer': { folder: string; found: number; known: number };
  'store-format-newer': { folder: string };
  'store-cut-short': { folder: string; bytes: number; expected: number };
  'store-unreadable': { folder: string; why: string };
  'store-failed': { folder: string; why: string };
  'unknown-load': { load: string };
  'folder-unknown-station': { station: string };
  'already-withdrawn': { load: string; at: string };
  'backup-exists': { file: string };
  'backup-unwritable': { file: string; why: string };
  'backup-missing': { file: string };
  'backup-newer': { file: string };
  'backup-cut-short': { file: string };
  'backup-unreadable': { file: string };
  'restore-not-empty': { folder: string };
  'export-not-empty': { folder: string };
  'export-incomplete': { folder: string; file: string };
  /** The settings name one store, the folder's readings lie in the other. */
  'store-elsewhere': { folder: string; stands: StoreKind; wanted: StoreKind };
  'server-not-named': { folder: string; url: string; database: string };
  'server-unreachable': { url: string; why: string };
  'server-other-kind': { url: string };
  'server-denied': { url: string };
  'server-database-missing': { url: string; database: string };
  'server-database-taken': { url: string; database: string };
  'server-forgets': { url: string; database: string; policy: string; duration: string };
  'server-full': { url: string };
  'server-failed': { url: string; why: string };
  'copy-there-already': { store: StoreKind };
  'copy-differs': { load: string };
  'copy-unsettled': { setting: string; place: string };
}

/** The two stores as settings name them. */
export type StoreKind = 'embedded' | 'influx';

/** What a check of a folder can find. */
export interface FindingWords {
  'verify-load-readings': { load: string; station: string; expected: number; found: number };
  'verify-load-changed': { load: string; station: string };
  'verify-orphans': { load: string; readings: number };
  'verify-twice': { readings: number };
  'verify-covered': { readings: number };
  'verify-gap': { table: string; number: number };
  'verify-reference': { table: string; rows: number };
  'verify-days': { station: string };
  'verify-closed': { season: string };
}
export type Finding = Remark<FindingWords>;
export type StoreRemark = Remark<StoreWords>;

/** The data folder or what was asked of it is refused; nothing in it was changed. */
export class StoreRefused extends Refusal {
  constructor(
    readonly remark: StoreRemark,
    readonly exit: 1 | 2 = 1,
    options?: { readonly cause?: unknown },
  ) {
    super(remark.code, options);
    this.name = 'StoreRefused';
  }
}
