import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';

export type WorkbookRead =
  | {
      readonly kind: 'sheet';
      readonly sheets: readonly string[];
      readonly sheet: string;
      readonly text: string;
    }
  | { readonly kind: 'no-sheet'; readonly sheets: readonly string[] };

/** Most memory a workbook may take to read, and most time. */
const MEGABYTES = 1024;
const SECONDS = 60;

/** One sheet of a workbook (null: the first) as comma-separated text. Rejects where it cannot be read. */
export function readSheet(path: string, sheet: string | null): Promise<WorkbookRead> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(workerFile(), {
      workerData: { path, sheet },
      resourceLimits: { maxOldGenerationSizeMb: MEGABYTES },
    });
    const late = setTimeout(() => void worker.terminate(), SECONDS * 1000);
    worker.on('message', resolve);
    worker.on('error', reject);
    worker.on('exit', () => {
      clearTimeout(late);
      reject(new Error('the workbook was not read'));
    });
  });
}

/** Run from the sources, as tests are, the thread is started from its compiled twin (`npm run build`). */
function workerFile(): URL | string {
  if (!import.meta.url.endsWith('.ts')) return new URL('./workbook-worker.js', import.meta.url);
  return fileURLToPath(new URL('../../../dist/src/http/received/workbook-worker.js', import.meta.url));
}
