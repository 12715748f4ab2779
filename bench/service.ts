import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { get } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import autocannon from 'autocannon';
import { celsius, inventedFolder, LAST, STEP } from './invented-folder.js';
import { type BenchRow, lessIsBetter, median } from './row.js';

const STATIONS = 50;
/** Where it has to be quick: every station's years are judged before anything is measured. */
const QUICK_STATIONS = 20;
const BOXES = 200;
/** What a page may take (the project's own promise), the 95th of 100 with eight readers at once. */
const PROMISE = { page: 150, zoom: 100 };
const READERS = 8;
/** Every kind of page that shows what grows with the season. */
const PAGES = [
  '/',
  '/boxes/box-7',
  '/stations',
  '/stations/station-7',
  '/downloads',
  '/tables',
  '/editing',
  '/editing/history',
  '/calendars',
  '/help/numbers',
];

export interface Running {
  readonly address: string;
  end(signal?: NodeJS.Signals): Promise<void>;
}

/** Run from the sources, as tests do, the service is the compiled one (`npm run build`). */
function program(): string {
  const place = import.meta.url.endsWith('.ts') ? '../dist/src/cli/main.js' : '../src/cli/main.js';
  return new URL(place, import.meta.url).pathname;
}

export function serve(folder: string): Promise<Running> {
  const command = program();
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
        end: async (signal = 'SIGTERM') => {
          child.kill(signal);
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

const PACKED = { 'accept-encoding': 'gzip' };

/** Bytes of an address as they travel, packed. */
function travels(address: string): Promise<number> {
  return new Promise((resolve, reject) => {
    get(address, { headers: PACKED }, (answer) => {
      let bytes = 0;
      answer.on('data', (chunk: Buffer) => {
        bytes += chunk.length;
      });
      answer.on('end', () => resolve(bytes));
      answer.on('error', reject);
    }).on('error', reject);
  });
}

/** The largest page, and all style and script of the first visit to the season, beside what is promised. */
async function sizes(address: string): Promise<BenchRow[]> {
  const pages: number[] = [];
  for (const path of PAGES) pages.push(await travels(`${address}${path}`));
  const html = await (await fetch(`${address}/`)).text();
  const assets = [...html.matchAll(/(?:src|href)="(\/assets\/[^"]+)"/g)].map(([, path]) => path ?? '');
  let first = 0;
  for (const path of assets.filter((one) => !one.includes('.svg')))
    first += await travels(`${address}${path}`);
  const row = (name: string, bytes: number, promised: number): BenchRow => ({
    name,
    value: bytes / 1000,
    unit: 'kB',
    reference: { name: 'promised', value: promised },
    ratio: (promised * 1000) / bytes,
  });
  return [
    row('the largest page over the wire', Math.max(...pages), 300),
    row('style and script of the first season page', first, 60),
  ];
}

/** A download of a reading every 15 minutes, older than what is there. */
function download(rows: number): string {
  const lines = ['Date Time UTC,Temperature (°C)'];
  for (let i = 0; i < rows; i++) {
    const at = LAST - 30 * 365 * DAY + i * STEP;
    lines.push(`${new Date(at).toISOString().slice(0, 19).replace('T', ' ')},${celsius(at, 3)}`);
  }
  return `${lines.join('\n')}\n`;
}

/** Has the checks look at all that was loaded, station by station: no one answer takes longer than a client waits. */
async function judged(address: string, stations: number): Promise<void> {
  for (let i = 0; i < stations; i++)
    await (await fetch(`${address}/api/v1/stations/station-${i}/findings`)).arrayBuffer();
}

/**
 * A small download at one station: the season page that shows it once it is accepted, and the same from the moment it is
 * sent for acceptance; medians of several.
 */
async function afterDownload(address: string, turns: number): Promise<BenchRow[]> {
  const spent: number[] = [];
  const whole: number[] = [];
  for (let turn = 0; turn < turns; turn++) {
    const from = LAST - (turn + 2) * DAY;
    const lines = ['Date Time UTC,Temperature (°C)'];
    for (let at = from; at < from + DAY; at += STEP)
      lines.push(`${new Date(at).toISOString().slice(0, 19).replace('T', ' ')},${celsius(at, 5) + 0.1}`);
    const sent = await fetch(`${address}/api/v1/files/day-${turn}.csv`, {
      method: 'PUT',
      body: `${lines.join('\n')}\n`,
      headers: { 'Content-Type': 'application/octet-stream' },
    });
    const { files }: { files: { file: string }[] } = JSON.parse(await sent.text());
    const asked = performance.now();
    const accepted = await fetch(`${address}/api/v1/loads`, {
      method: 'POST',
      body: JSON.stringify({ files: [{ file: files[0]?.file ?? '', station: 'station-5' }], zone: 'UTC' }),
      headers: { 'Content-Type': 'application/json' },
    });
    const said = await accepted.text();
    if (!accepted.ok || /"refused": ?\{/.test(said)) throw new Error(`not loaded: ${said.slice(0, 300)}`);
    const began = performance.now();
    await (await fetch(`${address}/`)).arrayBuffer();
    spent.push(performance.now() - began);
    whole.push(performance.now() - asked);
  }
  const promised = { name: 'promised', value: 1000 };
  return [
    lessIsBetter('season-page-after-download', median(spent), 'ms', promised),
    lessIsBetter('download-sent-until-shown', median(whole), 'ms', promised),
  ];
}

/** How long readers of the season page wait while a download is loaded. */
async function whileLoading(address: string, rows: number): Promise<BenchRow> {
  const sent = await fetch(`${address}/api/v1/files/bench.csv`, {
    method: 'PUT',
    body: download(rows),
    headers: { 'Content-Type': 'application/octet-stream' },
  });
  const { files }: { files: { file: string }[] } = JSON.parse(await sent.text());
  const file = files[0]?.file ?? '';
  const body = JSON.stringify({ files: [{ file, station: 'station-3' }], zone: 'UTC' });
  const loading = fetch(`${address}/api/v1/loads`, {
    method: 'POST',
    body,
    headers: { 'Content-Type': 'application/json' },
  }).then(async (answer) => {
    const said = await answer.text();
    if (!answer.ok || /"refused": ?\{/.test(said)) throw new Error(`not loaded: ${said.slice(0, 300)}`);
  });
  let running = true;
  void loading.finally(() => (running = false)).catch(() => undefined);
  const waits: number[] = [];
  const reader = async () => {
    while (running) {
      const began = performance.now();
      await (await fetch(`${address}/`)).arrayBuffer();
      waits.push(performance.now() - began);
    }
  };
  await Promise.all([loading, ...Array.from({ length: READERS }, reader)]);
  waits.sort((a, b) => a - b);
  const value = waits[Math.floor(waits.length * 0.95)] ?? Number.NaN;
  return {
    name: `season page while a download of ${rows.toLocaleString('en-CA')} readings is loaded, p95 of ${READERS} readers`,
    value,
    unit: 'ms',
    reference: { name: 'promised', value: PROMISE.page },
    ratio: PROMISE.page / value,
  };
}

/** The answer time that 95 of 100 stay under, milliseconds. */
async function p95(address: string, requests: autocannon.Request[], seconds: number): Promise<number> {
  const times: number[] = [];
  const result = await new Promise<autocannon.Result>((resolve, reject) => {
    const asked = { url: address, connections: READERS, duration: seconds, requests, headers: PACKED };
    const run = autocannon(asked, (error, done) => (error ? reject(error) : resolve(done)));
    run.on('response', (_client, _status, _bytes, milliseconds) => times.push(milliseconds));
  });
  if (result.non2xx > 0 || result.errors > 0)
    throw new Error(`${result.non2xx} answers and ${result.errors} requests failed`);
  times.sort((a, b) => a - b);
  return times[Math.floor(0.95 * (times.length - 1))] ?? Number.NaN;
}

/** How fast pages and records answer eight readers at once, beside what is promised: 200 boxes at 50 stations, 20 where `quick`. */
export async function serviceBench({ quick }: { readonly quick: boolean }): Promise<BenchRow[]> {
  const stations = quick ? QUICK_STATIONS : STATIONS;
  const readings = quick ? 600_000 : 35_000_000;
  // A reading an hour makes three winters of what is kept quick: a station of one winter asks all others anew.
  const step = quick ? 3_600_000 : STEP;
  const folder = join(mkdtempSync(join(tmpdir(), 'underice-bench-')), 'season');
  await (await inventedFolder(folder, { stations, boxes: BOXES, readings, step })).close();
  const service = await serve(folder);
  try {
    const first = performance.now();
    await (await fetch(`${service.address}/api/v1/forecast`)).text();
    const measured = async (
      name: string,
      requests: autocannon.Request[],
      promised: number,
      seconds: number,
    ) => {
      // The first answer draws; readers come back to what is drawn.
      const answer = await fetch(`${service.address}${requests[0]?.path ?? ''}`);
      await answer.text();
      if (!answer.ok) throw new Error(`${name}: ${answer.status}`);
      const spent = await p95(service.address, requests, seconds);
      return lessIsBetter(name, spent, 'ms', { name: 'promised', value: promised });
    };
    const rows = [
      lessIsBetter('first-forecast', performance.now() - first, 'ms', { name: 'promised', value: 5000 }),
    ];
    await judged(service.address, stations);
    if (quick) {
      rows.push(await measured('season-page-p95', [{ path: '/' }], PROMISE.page, 2));
      rows.push(...(await afterDownload(service.address, 3)));
      return rows;
    }
    rows.push(await measured('season-page-p95', [{ path: '/' }], PROMISE.page, 8));
    for (const path of PAGES.slice(1)) {
      rows.push(await measured(`page ${path}, p95`, [{ path }], PROMISE.page, 8));
    }
    rows.push(await measured('record-zoom-p95', zooms(), PROMISE.zoom, 8));
    rows.push(...(await sizes(service.address)));
    // Last: they change the folder.
    rows.push(...(await afterDownload(service.address, 5)));
    rows.push(await whileLoading(service.address, 1_000_000));
    return rows;
  } finally {
    await service.end();
    rmSync(join(folder, '..'), { recursive: true, force: true });
  }
}
