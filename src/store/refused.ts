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
}
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
