import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import autocannon from 'autocannon';
import { inventedFolder, LAST } from './invented-folder.js';
import { type BenchRow, lessIsBetter } from './row.js';

const STATIONS = 50;
const BOXES = 200;
/** What a page may take (the project's own promise), the 95th of 100 with eight readers at once. */
const PROMISE = { page: 150, zoom: 100 };
const READERS = 8;

interface Running {
  readonly address: string;
  end(): Promise<void>;
}

function serve(folder: string): Promise<Running> {
  const command = new URL('../src/cli/main.js', import.meta.url).pathname;
  const args = [command, 'serve', '--data', folder, '--port', '0', '--json'];
  const child = spawn(process.execPath, args, {
    env: { ...process.env, UNDERICE_LOG: 'error' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const ended = new Promise<void>((resolve) => child.on('close', () => resolve()));
  return new Promise((resolve, reject) => {
    let said = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      said += text;
      const address = /"address": "([^"]+)"/.exec(said)?.[1];
      if (address === undefined) return;
      resolve({
        address,
        end: async () => {
          child.kill('SIGTERM');
          await ended;
        },
      });
    });
    child.on('close', () => reject(new Error('the service ended')));
  });
}

const DAY = 86_400_000;
/** Zooms from ten years to two days, at places that are never the same twice. */
function zooms(): autocannon.Request[] {
  const spans = [3650, 1000, 365, 120, 30, 7, 2];
  return Array.from({ length: 70 }, (_, i) => {
    const span = (spans[i % spans.length] ?? 30) * DAY;
    const from = new Date(LAST - span - i * 3 * DAY).toISOString();
    const to = new Date(LAST - i * 3 * DAY).toISOString();
    return { path: `/api/v1/stations/station-${i % STATIONS}/record?from=${from}&to=${to}&points=1500` };
  });
}

/** The answer time that 95 of 100 stay under, milliseconds. */
async function p95(address: string, requests: autocannon.Request[], seconds: number): Promise<number> {
  const times: number[] = [];
  const result = await new Promise<autocannon.Result>((resolve, reject) => {
    const asked = { url: address, connections: READERS, duration: seconds, requests };
    const run = autocannon(asked, (error, done) => (error ? reject(error) : resolve(done)));
    run.on('response', (_client, _status, _bytes, milliseconds) => times.push(milliseconds));
  });
  if (result.non2xx > 0 || result.errors > 0)
    throw new Error(`${result.non2xx} answers and ${result.errors} requests failed`);
  times.sort((a, b) => a - b);
  return times[Math.floor(0.95 * (times.length - 1))] ?? Number.NaN;
}

const pages = [
  ['season-page-p95', [{ path: '/' }], PROMISE.page],
  ['box-page-p95', [{ path: '/boxes/box-7' }], PROMISE.page],
  ['station-page-p95', [{ path: '/stations/station-7' }], PROMISE.page],
  ['record-zoom-p95', zooms(), PROMISE.zoom],
] as const;

/** How fast pages and records answer eight readers at once, beside what is promised: 200 boxes at 50 stations. */
export async function serviceBench({ quick }: { readonly quick: boolean }): Promise<BenchRow[]> {
  const readings = quick ? 1_000_000 : 35_000_000;
  const folder = join(mkdtempSync(join(tmpdir(), 'underice-bench-')), 'season');
  await (await inventedFolder(folder, { stations: STATIONS, boxes: BOXES, readings })).close();
  const service = await serve(folder);
  try {
    const first = performance.now();
    await (await fetch(`${service.address}/api/v1/forecast`)).text();
    const rows = [
      lessIsBetter('first-forecast', performance.now() - first, 'ms', { name: 'promised', value: 5000 }),
    ];
    for (const [name, requests, value] of quick ? pages.slice(0, 1) : pages) {
      const answer = await fetch(`${service.address}${requests[0]?.path ?? ''}`);
      await answer.text();
      if (!answer.ok) continue;
      const spent = await p95(service.address, [...requests], quick ? 2 : 8);
      rows.push(lessIsBetter(name, spent, 'ms', { name: 'promised', value }));
    }
    return rows;
  } finally {
    await service.end();
    rmSync(join(folder, '..'), { recursive: true, force: true });
  }
}
