import type { SampleFile } from './download.js';
import { loggerFiles } from './loggers.js';
import { inventedRiver } from './places.js';
import { reportingFiles } from './reporting.js';

export type { SampleFile, Written } from './download.js';

/** Every download of the sample season with the readings it holds, the same bytes each time. */
export function sampleFiles(): SampleFile[] {
  const river = inventedRiver();
  return [...reportingFiles(river), ...loggerFiles(river)];
}
