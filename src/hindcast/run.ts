import { fileURLToPath } from 'node:url';
import { Worker } from 'node:worker_threads';
import {
  type HindcastOptions,
  type HindcastReport,
  type HindcastRows,
  hindcastReport,
} from '../../forecasting/hindcast/index.js';
import type { StationDays } from '../../forecasting/index.js';
import type { Share } from './worker.js';

const THREADS = 2;

type FromThread =
  | { readonly kind: 'step'; readonly count: number; readonly all: number }
  | ({ readonly kind: 'found' } & Found);

/** What one thread brings back: every other winter known, and only those before. */
interface Found {
  readonly found: HindcastRows;
  readonly past: HindcastRows;
}

/**
 * A hindcast worked out in threads, the stations shared among them; the same figures whatever their number.
 *
 * @param progress told the steps done and how many there are
 */
export async function runHindcast(
  stations: readonly StationDays[],
  options: HindcastOptions,
  progress: ((done: number, all: number) => void) | null = null,
  threads = THREADS,
): Promise<HindcastReport> {
  const counts = Array.from({ length: threads }, () => ({ done: 0, all: 0 }));
  const parts = counts.map((mine, part) =>
    inThread({ stations, options, part, of: threads }, (done, all) => {
      Object.assign(mine, { done, all });
      const sum = (of: 'done' | 'all') => counts.reduce((total, one) => total + one[of], 0);
      progress?.(sum('done'), sum('all'));
    }),
  );
  const brought = await Promise.all(parts);
  return hindcastReport(
    options,
    [inOrder(brought.map(({ found }) => found))],
    [inOrder(brought.map(({ past }) => past))],
  );
}

function inThread(share: Share, step: (done: number, all: number) => void): Promise<Found> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(workerFile());
    worker.on('message', (message: FromThread) => {
      if (message.kind === 'step') return step(message.count, message.all);
      resolve(message);
      void worker.terminate();
    });
    worker.on('error', reject);
    worker.on('exit', () => reject(new Error('the hindcast thread ended before its work')));
    worker.postMessage(share);
  });
}

/** All parts as one, by station and winter: the answer does not tell how the work was shared. */
function inOrder(parts: readonly HindcastRows[]): HindcastRows {
  const sorted = <Row extends { readonly station: string; readonly winter: number | null }>(rows: Row[]) =>
    rows.sort(
      (a, b) =>
        Number(a.station > b.station) - Number(a.station < b.station) || (a.winter ?? 0) - (b.winter ?? 0),
    );
  return {
    rows: sorted(parts.flatMap(({ rows }) => rows)),
    gaps: sorted(parts.flatMap(({ gaps }) => gaps)),
    notes: sorted(parts.flatMap(({ notes }) => notes)),
  };
}

/** Run from the sources, as tests are, the thread is started from its compiled twin (`npm run build`). */
function workerFile(): URL | string {
  if (!import.meta.url.endsWith('.ts')) return new URL('./worker.js', import.meta.url);
  return fileURLToPath(new URL('../../dist/src/hindcast/worker.js', import.meta.url));
}
