import { parentPort } from 'node:worker_threads';
import { type HindcastOptions, hindcastRows } from '../../forecasting/hindcast/index.js';
import type { StationDays } from '../../forecasting/index.js';

/** One thread's share of a hindcast. */
export interface Share {
  readonly stations: readonly StationDays[];
  readonly options: HindcastOptions;
  readonly part: number;
  readonly of: number;
}

parentPort?.on('message', ({ stations, options, part, of }: Share) => {
  const share = (steps: number) => ({
    part,
    of,
    done: (count: number, all: number) =>
      parentPort?.postMessage({ kind: 'step', count: steps * all + count, all: 2 * all }),
  });
  const found = hindcastRows(stations, options, share(0));
  const cases = options.cases.filter((one) => one !== 'gaps');
  const past = hindcastRows(stations, { ...options, cases, winters: 'past-only' }, share(1));
  parentPort?.postMessage({ kind: 'found', found, past });
});
