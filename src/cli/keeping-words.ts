import type { FindingWords } from '../store/index.js';

type Nothing = Record<never, never>;

/** What the commands that keep and move a group's record say; the words are in src/words/<language>/keeping.ts. */
export interface KeepingWords extends FindingWords {
  'cli-backup': Nothing;
  'cli-backup-file': Nothing;
  'cli-backup-made': { readonly file: string; readonly bytes: number };
  'cli-restore': Nothing;
  'cli-restore-from': Nothing;
  'cli-restored': { readonly folder: string; readonly loads: number };
  'cli-verify': Nothing;
  'cli-verified': { readonly loads: number; readonly readings: number };
  'cli-verify-found': { readonly count: number };
  'cli-export': Nothing;
  'cli-export-folder': Nothing;
  'cli-export-all': Nothing;
  'cli-exported': { readonly folder: string; readonly loads: number; readonly readings: number };
  'cli-copy-store': Nothing;
  'cli-copy-store-to': Nothing;
  'cli-copied-store': {
    readonly from: string;
    readonly to: string;
    readonly loads: number;
    readonly readings: number;
  };
}
