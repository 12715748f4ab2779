import { type Folder, StoreRefused } from '../store/index.js';
import { DownloadReader } from './download-reader.js';
import { type FileAsFound, lookAt } from './file-as-found.js';
import type { LoadingOptions } from './index.js';
import { loadFile } from './load-file.js';
import type { FileOutcome, FileToLoad } from './outcome.js';
import { LoadingRefused } from './refused.js';

/**
 * Loads downloads one after the other, each whole or not at all; a refused one does not stop the others. The
 * files are read in a thread of their own, so that whoever else uses the folder is answered meanwhile.
 */
export async function loadFiles(
  folder: Folder,
  files: readonly FileToLoad[],
  options: LoadingOptions,
): Promise<readonly FileOutcome[]> {
  const reader = new DownloadReader();
  try {
    const outcomes: FileOutcome[] = [];
    for (const file of files) outcomes.push(await loadOrRefuse(folder, reader, file, options));
    return outcomes;
  } finally {
    await reader.close();
  }
}

async function loadOrRefuse(
  folder: Folder,
  reader: DownloadReader,
  file: FileToLoad,
  options: LoadingOptions,
): Promise<FileOutcome> {
  try {
    const found: FileAsFound = lookAt(file);
    const keep = options.dryRun !== true;
    const asked = file.station === undefined ? options : { ...options, station: file.station };
    return await folder.write(options.by, (write) => loadFile(write, reader, found, asked), keep);
  } catch (error) {
    if (error instanceof LoadingRefused) return refused(file, error.remark, error.question, error.exit);
    if (error instanceof StoreRefused) return refused(file, error.remark, null, error.exit);
    throw error;
  }
}

function refused(
  file: FileToLoad,
  reason: NonNullable<FileOutcome['refused']>['reason'],
  question: NonNullable<FileOutcome['refused']>['question'],
  exit: 1 | 2,
): FileOutcome {
  return {
    file: file.name,
    stations: [],
    understood: null,
    assumed: [],
    unusable: { count: 0, examples: [] },
    serial: null,
    battery: [],
    load: null,
    alreadyLoaded: false,
    differing: 0,
    largestDifference: 0,
    refused: { reason, question, exit },
  };
}
