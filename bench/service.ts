import { spawn } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { get } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import autocannon from 'autocannon';
import { seasonEntry } from '../src/group/season-entries.js';
import { renderSeason, type Season, seasonFrom } from '../src/season/index.js';
import { openFolder } from '../src/store/index.js';
import type { BenchRow } from './row.js';

const STATIONS = 50;
const BOXES = 200;
const STEP = 900_000;
const LAST = Date.UTC(2026, 1, 15);
const CHUNK = 100_000;
/** What a page may take (the project's own promise), p97.5 with eight readers at once. */
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

/** 200 boxes at 50 sites, each with a station of its own. */
function season(): Season {
  const sites = Array.from({ length: STATIONS }, (_, i) => ({ id: `site-${i}`, station: `station-${i}` }));
  return seasonFrom(
    {
      group: { name: 'Bench', zone: 'UTC' },
      stations: sites.map(({ station }) => ({ id: station, kind: 'stream', reports: true })),
      sites,
      lots: [{ id: 'A', fertilised: '2025-10-28 12:00', eggs: 1_000_000, table: 'atlantic-salmon' }],
      boxes: Array.from({ length: BOXES }, (_, i) => ({
        id: `box-${i}`,
        site: `site-${i % STATIONS}`,
        planted: '2025-10-28 18:00',
        fills: [{ lot: 'A', eggs: 1000 }],
      })),
    },
    'bench',
  );
}

/** A data folder with so many 15-minute readings, evenly over the stations, all ending on the bench's day. */
async function fill(folder: string, readings: number): Promise<void> {
  const store = await openFolder(folder);
  const made = season();
  await store.applySeason(seasonEntry(made, renderSeason(made)), 'bench');
  const each = Math.floor(readings / STATIONS);
  for (let number = 0; number < STATIONS; number++) {
    await store.write('bench', async (write) => {
      const station = await write.station(`station-${number}`);
      if (station === null) throw new Error('the season has no such station');
      const series = await write.seriesOf(station, 'temperature', 'instant');
      const { load, writer } = await write.beginLoad();
      for (let from = 0; from < each; from += CHUNK) {
        const length = Math.min(CHUNK, each - from);
        const at = Float64Array.from({ length }, (_, i) => LAST - (each - from - i) * STEP);
        const value = Float64Array.from(at, (instant) => celsius(instant, number));
        await writer.append({ series, length, at, value, line: null });
      }
      const { series: outcomes } = await writer.finish();
      const sha256 = String(number).padStart(64, '0');
      await write.recordLoad({
        load,
        file: `${number}.csv`,
        sha256,
        bytes: 1,
        series: outcomes,
        understood: '{}',
      });
    });
  }
  await store.close();
}

function celsius(instant: number, station: number): number {
  const day = instant / 86_400_000;
  const year = 7 - 8 * Math.cos((2 * Math.PI * ((day % 365.25) - 28)) / 365.25);
  const value = year + Math.sin(day / 9 + station) + 0.5 * Math.sin(2 * Math.PI * day) + (station % 7) * 0.2;
  return Math.round(Math.max(0, value) * 100) / 100;
}

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
  const value = waits[Math.floor(waits.length * 0.975)] ?? Number.NaN;
  return {
    name: `season page while a download of ${rows.toLocaleString('en-CA')} readings is loaded, p97.5 of ${READERS} readers`,
    value,
    unit: 'ms',
    reference: { name: 'promised', value: PROMISE.page },
    ratio: PROMISE.page / value,
  };
}

async function p975(address: string, requests: autocannon.Request[], seconds: number): Promise<number> {
  const result = await autocannon({
    url: address,
    connections: READERS,
    duration: seconds,
    requests,
    headers: PACKED,
  });
  if (result.non2xx > 0 || result.errors > 0)
    throw new Error(`${result.non2xx} answers and ${result.errors} requests failed`);
  return result.latency.p97_5;
}

/** How fast pages and records answer eight readers at once, beside what is promised. */
export async function serviceBench({ quick }: { readonly quick: boolean }): Promise<BenchRow[]> {
  const readings = quick ? 3_500_000 : 35_000_000;
  const kept = join(tmpdir(), `underice-bench-${readings}`);
  const folder = quick ? kept : mkdtempSync(join(tmpdir(), 'underice-bench-'));
  if (!existsSync(join(folder, 'underice.duckdb'))) await fill(folder, readings);
  const service = await serve(folder);
  try {
    const first = performance.now();
    await (await fetch(`${service.address}/api/v1/forecast`)).text();
    const cold = performance.now() - first;
    const seconds = quick ? 3 : 8;
    const measured = async (
      name: string,
      requests: autocannon.Request[],
      promised: number,
    ): Promise<BenchRow> => {
      const value = await p975(service.address, requests, seconds);
      return {
        name,
        value,
        unit: 'ms',
        reference: { name: 'promised', value: promised },
        ratio: promised / value,
      };
    };
    const of = `${BOXES} boxes, ${readings / 1e6} M readings`;
    const rows: BenchRow[] = [
      { name: `the first forecast of ${of}`, value: cold, unit: 'ms', reference: null, ratio: null },
    ];
    for (const path of PAGES)
      rows.push(await measured(`page ${path}, ${of}, p97.5 of 8 readers`, [{ path }], PROMISE.page));
    rows.push(await measured(`record zoom, ${of}, p97.5 of 8 readers`, zooms(), PROMISE.zoom));
    rows.push(...(await sizes(service.address)));
    // Last: it changes the folder, and a folder that is kept would load nothing the second time.
    if (!quick) rows.push(await whileLoading(service.address, 1_000_000));
    return rows;
  } finally {
    await service.end();
    if (!quick) rmSync(folder, { recursive: true, force: true });
  }
}
