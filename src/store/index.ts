/** The door of the store: a data folder holds one group's readings and everything known about them. */
export type { Catalogue, LoadEntry, StoredFinding, Write } from './catalogue.js';
export type * from './entries.js';
export type { ExportMade } from './export.js';
export type {
  BackupMade,
  Folder,
  FolderOptions,
  SeasonApplied,
  ServerAddress,
  StationRecord,
  StoreChoice,
  StoreCopied,
  Verified,
} from './folder.js';
export { PHOTOGRAPH_NAME, PHOTOGRAPHS } from './kept-files.js';
export { madeFolder } from './made-folder.js';
export { openFolder } from './open-folder.js';
export type * from './outbox.js';
export type {
  Duplicate,
  LoadWriter,
  ReadingRun,
  ReadingStore,
  SeriesColumns,
  SeriesOutcome,
} from './reading-store.js';
export {
  type Finding,
  type FindingWords,
  type StoreKind,
  StoreRefused,
  type StoreRemark,
  type StoreWords,
} from './refused.js';
export { restoreFolder } from './restore.js';
export type * from './spell-entries.js';
