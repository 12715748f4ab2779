import { spawnSync } from 'node:child_process';
import { closeSync, mkdtempSync, openSync, rmSync, writeSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { z } from 'zod';
import { type BenchRow, median } from './row.js';

const millions = [0.3, 3, 30];
const measuredSchema = z.object({ rows: z.number(), seconds: z.number(), peakMegabytes: z.number() });
type Measured = z.infer<typeof measuredSchema>;

/**
 * Loading a download of 0.3, 3 and 30 million rows of four columns into an empty folder, everything included (kept
 * days, commit), against Papa.parse that only cuts the same file into fields, and against DuckDB's own CSV reader told
 * every column's type and writing the two that matter (the ceiling: it knows the layout, gives no reasons by line and
 * keeps no days): rows a second and peak memory, each in a process of its own, medians of several. `quick` keeps the 3
 * million.
 */
export function loadingBench({ quick }: { readonly quick: boolean }): BenchRow[] {
  const folder = mkdtempSync(join(tmpdir(), 'underice-bench-'));
  try {
    const sizes = quick ? [3] : millions;
    return sizes.flatMap((size) => rowsOf(folder, size, quick ? 3 : size > 3 ? 1 : 5));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function rowsOf(folder: string, size: number, times: number): BenchRow[] {
  const file = join(folder, `${size}-million.csv`);
  writeDownload(file, size * 1e6);
  const loads: Measured[] = [];
  const tokenised: Measured[] = [];
  const copied: Measured[] = [];
  for (let i = 0; i < times; i++) {
    tokenised.push(measure('tokenise', file));
    loads.push(measure('load', file));
    if (i === 0 || times > 3) copied.push(measure('copy', file));
  }
  rmSync(file);
  const suffix = size === 3 ? '' : `-${size}m`;
  const speed = median(loads.map(({ rows, seconds }) => rows / seconds));
  const plain = median(tokenised.map(({ rows, seconds }) => rows / seconds));
  const ceiling = median(copied.map(({ rows, seconds }) => rows / seconds));
  return [
    {
      name: `load${suffix}`,
      value: Math.round(speed),
      unit: 'rows/s',
      reference: { name: 'Papa.parse, fields only', value: Math.round(plain) },
      ratio: speed / plain,
    },
    {
      name: `load-ceiling${suffix}`,
      value: Math.round(speed),
      unit: 'rows/s',
      reference: { name: 'DuckDB’s own CSV reader, layout known', value: Math.round(ceiling) },
      ratio: speed / ceiling,
    },
    {
      name: `load-memory${suffix}`,
      value: Math.round(median(loads.map(({ peakMegabytes }) => peakMegabytes))),
      unit: 'MB',
      reference: {
        name: 'Papa.parse, fields only',
        value: Math.round(median(tokenised.map(({ peakMegabytes }) => peakMegabytes))),
      },
      ratio:
        median(tokenised.map(({ peakMegabytes }) => peakMegabytes)) /
        median(loads.map(({ peakMegabytes }) => peakMegabytes)),
    },
  ];
}

function measure(what: 'load' | 'tokenise' | 'copy', file: string): Measured {
  const child = fileURLToPath(new URL('./loading-child.js', import.meta.url));
  const done = spawnSync(process.execPath, [child, what, file], { encoding: 'utf8' });
  if (done.status !== 0) throw new Error(`the ${what} process failed: ${done.stderr}`);
  return measuredSchema.parse(JSON.parse(done.stdout));
}

const DAY = 86_400_000;

function clock(second: number): string {
  const two = (number: number) => String(Math.floor(number)).padStart(2, '0');
  return `${two(second / 3600)}:${two((second / 60) % 60)}:${two(second % 60)}`;
}

/** A logger's download: number, time every ten seconds, temperature to 0.01 °C, battery. */
export function writeDownload(file: string, rows: number): void {
  const out = openSync(file, 'w');
  try {
    writeSync(out, '#,Date Time (UTC),Temperature (°C),Battery (V)\n');
    let at = Date.UTC(2012, 0, 1);
    let day = '';
    let noise = 1;
    for (let from = 1; from <= rows; from += 10_000) {
      const lines: string[] = [];
      for (let row = from; row < from + 10_000 && row <= rows; row++) {
        noise = (Math.imul(noise, 1_103_515_245) + 12_345) >>> 0;
        const celsius = 6 + 6 * Math.sin(row / 500_000) + (noise % 40) / 100;
        const second = (at % DAY) / 1000;
        if (second === 0) day = new Date(at).toISOString().slice(0, 10);
        lines.push(`${row},${day} ${clock(second)},${celsius.toFixed(2)},3.6\n`);
        at += 10_000;
      }
      writeSync(out, lines.join(''));
    }
  } finally {
    closeSync(out);
  }
}
