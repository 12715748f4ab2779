/** The door of the store: a data folder holds one group's readings and everything known about them. */
export type { Catalogue, LoadEntry, Write } from './catalogue.js';
export type * from './entries.js';
export type { Folder, FolderOptions, SeasonApplied, StationRecord } from './folder.js';
export { openFolder } from './open-folder.js';
export type {
  Duplicate,
  LoadWriter,
  ReadingRun,
  ReadingStore,
  SeriesColumns,
  SeriesOutcome,
} from './reading-store.js';
export { StoreRefused, type StoreRemark, type StoreWords } from './refused.js';
