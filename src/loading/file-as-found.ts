import { statSync } from 'node:fs';
import type { FileToLoad } from './outcome.js';
import { LoadingRefused } from './refused.js';

/** A file as it stood when its loading began. */
export interface FileAsFound extends FileToLoad {
  readonly bytes: number;
  readonly changedAt: number;
}

/** @throws LoadingRefused where there is no such file, or it is a folder. */
export function lookAt(file: FileToLoad): FileAsFound {
  const found = statSync(file.path, { throwIfNoEntry: false });
  if (found === undefined) throw new LoadingRefused({ code: 'no-such-file', with: { file: file.name } });
  if (!found.isFile()) throw new LoadingRefused({ code: 'not-a-file', with: { file: file.name } });
  return { ...file, bytes: found.size, changedAt: found.mtimeMs };
}

/** @throws LoadingRefused where somebody wrote to the file while it was read. */
export function refuseChanged(file: FileAsFound): void {
  const now = statSync(file.path, { throwIfNoEntry: false });
  if (now?.size === file.bytes && now.mtimeMs === file.changedAt) return;
  throw new LoadingRefused({ code: 'changed-while-read', with: { file: file.name } }, null, 1);
}
