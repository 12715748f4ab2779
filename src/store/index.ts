/** The door of the store: a data folder holds one group's readings and everything known about them. */
export type { Catalogue, Write } from './catalogue.js';
export type * from './entries.js';
export type { Folder, FolderOptions, SeasonApplied, StationRecord } from './folder.js';
export type { LoadWriter, ReadingRun, ReadingStore, SeriesColumns } from './reading-store.js';
export { StoreRefused, type StoreRemark, type StoreWords } from './refused.js';
