import { type ColumnName, DownloadRefused } from '../download.js';
import { fold } from './fold.js';

/** Position of a column that a saved layout names, by its header or its number from 1. */
export function positionOf(name: ColumnName, headers: readonly string[] | null, width: number): number {
  if (typeof name === 'number' && name >= 1 && name <= Math.max(width, headers?.length ?? 0)) return name - 1;
  const found = (headers ?? []).findIndex(
    (header) => header.trim() === name || fold(header) === fold(String(name)),
  );
  if (found >= 0) return found;
  throw new DownloadRefused({
    code: 'unknown-column',
    with: { asked: String(name), headers: (headers ?? []).filter((header) => header !== '') },
  });
}
