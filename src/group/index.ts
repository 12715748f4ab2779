import { resolve } from 'node:path';
import envPaths from 'env-paths';
import type { DayNumber } from '../../forecasting/units.js';
import { readOwner } from '../store/owner.js';
import type { Group } from './group.js';
import type { LocalGroup } from './local.js';
import { RemoteGroup } from './remote.js';
import { ServiceConnection } from './service-connection.js';
import type { Thinker } from './thinker.js';

export type * from './group.js';
export type { StationFinding } from './judging/findings.js';
export type { Series, SeriesRequest } from './series.js';

/** Where a group lives when nobody says: a folder in the user's own data directory. */
export function defaultFolder(): string {
  return envPaths('underice', { suffix: '' }).data;
}

export interface GroupOptions {
  /** The clock; tests give their own. */
  readonly now?: () => number;
  /** The day the group is shown as of, in place of today: nothing that was not known by then is used. */
  readonly standingAt?: DayNumber | null;
  /** Where forecasts are worked out; a service gives a thread. */
  readonly thinker?: Thinker;
  /** Whichever store the settings name, the folder is opened with the one its readings are in (to move them). */
  readonly asItStands?: boolean;
}

/**
 * Opens the group in a data folder (null: the default one), made when absent; through the service where one runs
 * there.
 * @throws StoreRefused where the folder is held by another process, cannot be written, or holds something else.
 */
export async function openGroup(folder: string | null, options: GroupOptions = {}): Promise<Group> {
  const dir = folderOf(folder);
  const owner = readOwner(dir);
  const service = owner === null ? null : await ServiceConnection.to(owner);
  return service === null ? openOwnGroup(dir, options) : new RemoteGroup(dir, service);
}

/** Same, owned by this process in any case, and able to say where it answers. */
export async function openOwnGroup(
  folder: string | null,
  { now = Date.now, standingAt = null, thinker, asItStands = false }: GroupOptions = {},
): Promise<LocalGroup> {
  // Fetched only here: a command that goes through the service needs no database.
  const [{ openFolder }, { LocalGroup }, { thinkHere }, { storeChoice }] = await Promise.all([
    import('../store/index.js'),
    import('./local.js'),
    import('./thinker.js'),
    import('../settings/store-choice.js'),
  ]);
  const dir = folderOf(folder);
  const store = asItStands ? { ...storeChoice(dir), kind: null } : storeChoice(dir);
  return new LocalGroup(await openFolder(dir, { now, store }), now, standingAt, thinker ?? thinkHere);
}

/** A data folder's path as named, else the usual one. */
export function folderOf(folder: string | null): string {
  return resolve(folder ?? defaultFolder());
}
