import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type FileOutcome, type LoadingOptions, loadFiles } from '../../src/loading/index.js';
import type { Folder } from '../../src/store/index.js';

/** Writes a download and gives what the loading takes. */
export function download(folder: string, name: string, text: string | Uint8Array) {
  const path = join(folder, name);
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, text);
  return { path, name };
}

/** Loads one file as a person who made no further choices would. */
export async function loadOne(
  folder: Folder,
  file: { readonly path: string; readonly name: string },
  options: Partial<LoadingOptions> = {},
): Promise<FileOutcome> {
  const [outcome] = await loadFiles(folder, [file], { by: 'Rose', ...options });
  return outcome;
}

/** Hourly readings of January 2026 from an hour on, in UTC, as a comma file. */
export function hourly(from: number, values: readonly number[]): string {
  const lines = values.map((value, i) => {
    const at = new Date(Date.UTC(2026, 0, 1, from + i)).toISOString();
    return `${at.slice(0, 10)} ${at.slice(11, 16)},${value}`;
  });
  return `Date Time (UTC),Water temperature (°C)\n${lines.join('\n')}\n`;
}

export const hour = (h: number): number => Date.UTC(2026, 0, 1, h);
