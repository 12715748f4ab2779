import { resolve } from 'node:path';
import envPaths from 'env-paths';
import { openFolder } from '../store/index.js';
import type { Group } from './group.js';
import { LocalGroup } from './local.js';

export type { Group, LoadRequest, LoadRow, RecordRequest } from './group.js';

/** Where a group lives when nobody says: a folder in the user's own data directory. */
export function defaultFolder(): string {
  return envPaths('underice', { suffix: '' }).data;
}

/**
 * Opens the group in a data folder (null: the default one), made when absent.
 * @throws StoreRefused where the folder is held by another process, cannot be written, or holds something else.
 */
export async function openGroup(folder: string | null, now: () => number = Date.now): Promise<Group> {
  return new LocalGroup(await openFolder(resolve(folder ?? defaultFolder()), { now }), now);
}
