import { createReadStream, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { performance } from 'node:perf_hooks';
import { DuckDBInstance } from '@duckdb/node-api';
import Papa from 'papaparse';
import { loadFiles } from '../src/loading/index.js';
import { openFolder } from '../src/store/index.js';

/* One measurement of `loading.ts` in a process of its own: `load FILE`, `tokenise FILE` or `copy FILE`. */

const CHUNK_BYTES = 64 * 1024;
const [, , what, file] = process.argv;

const started = { at: 0 };
const rows = what === 'load' ? await load(file) : await (what === 'copy' ? copy(file) : tokenise(file));
const seconds = (performance.now() - started.at) / 1000;
// Linux counts in kilobytes.
const peakMegabytes = process.resourceUsage().maxRSS / 1024;
console.log(JSON.stringify({ rows, seconds, peakMegabytes }));
process.exit(0);

async function load(path: string): Promise<number> {
  const dir = mkdtempSync(join(tmpdir(), 'underice-bench-season-'));
  try {
    const folder = await openFolder(dir);
    started.at = performance.now();
    const [outcome] = await loadFiles(folder, [{ path, name: 'download.csv' }], {
      by: 'bench',
      station: 'pool',
      createStations: true,
    });
    if (outcome.refused !== null) throw new Error(outcome.refused.reason.code);
    return outcome.stations[0].readings;
  } finally {
    rmSync(dir, { recursive: true, force: true });
  }
}

/** As bare as it can be: one statement, two typed columns, a file of its own on the disk, the same memory and threads. */
async function copy(path: string): Promise<number> {
  const dir = mkdtempSync(join(tmpdir(), 'underice-bench-copy-'));
  try {
    const instance = await DuckDBInstance.create(join(dir, 'copy.duckdb'), {
      memory_limit: '96MB',
      threads: '2',
    });
    const connection = await instance.connect();
    started.at = performance.now();
    await connection.run(
      `CREATE TABLE reading AS SELECT epoch_ms(moment) AS instant, celsius AS value FROM read_csv('${path}', header = true,
        delim = ',', columns = {'number': 'BIGINT', 'moment': 'TIMESTAMP', 'celsius': 'DOUBLE', 'battery': 'DOUBLE'})`,
    );
    const answer = await connection.runAndReadAll('SELECT count(*)::INTEGER FROM reading');
    return Number(answer.getRows()[0]?.[0]);
  } finally {
    rmSync(dir, { recursive: true, force: true });
  }
}

function tokenise(path: string): Promise<number> {
  started.at = performance.now();
  let count = 0;
  return new Promise((resolve, reject) => {
    Papa.parse<string[]>(createReadStream(path, { highWaterMark: CHUNK_BYTES }), {
      chunk: ({ data }) => {
        count += data.length;
      },
      complete: () => resolve(count),
      error: reject,
    });
  });
}
