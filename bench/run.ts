// `npm run bench [-- --quick] [-- --json] [-- --against FILE] [-- --only load,forecast]`: what is fast, each figure
// beside the same work done the plain way in the same run.
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { parseArgs } from 'node:util';
import Table from 'cli-table3';
import { forecastBench } from './forecast.js';
import { loadingBench } from './loading.js';
import type { BenchRow } from './row.js';
import { serviceBench } from './service.js';

const { values: asked } = parseArgs({
  options: {
    quick: { type: 'boolean', default: false },
    json: { type: 'boolean', default: false },
    against: { type: 'string' },
    only: { type: 'string' },
    out: { type: 'string' },
  },
});

type Bench = (options: { quick: boolean }) => readonly BenchRow[] | Promise<readonly BenchRow[]>;
const parts: Record<string, Bench> = {
  load: loadingBench,
  forecast: forecastBench,
  service: serviceBench,
};

const chosen = asked.only?.split(',') ?? Object.keys(parts);
const rows: BenchRow[] = [];
for (const part of chosen) {
  const bench = parts[part];
  if (bench === undefined) {
    console.error(`There is no bench "${part}": there are ${Object.keys(parts).join(', ')}.`);
    process.exit(2);
  }
  if (!asked.json) console.error(`measuring ${part} …`);
  rows.push(...(await bench({ quick: asked.quick })));
}

const result = { rows };
if (asked.out !== undefined) writeFileSync(asked.out, `${JSON.stringify(result, null, 2)}\n`);
if (asked.json) console.log(JSON.stringify(result));
else print(rows, asked.against === undefined ? null : earlier(asked.against));

function earlier(file: string): ReadonlyMap<string, number> {
  const before: { rows: readonly BenchRow[] } = JSON.parse(readFileSync(file, 'utf8'));
  return new Map(before.rows.map(({ name, value }) => [name, value]));
}

function print(rows: readonly BenchRow[], before: ReadonlyMap<string, number> | null): void {
  const table = new Table({
    head: ['what', 'measured', 'reference', 'ratio', ...(before === null ? [] : ['before'])],
    style: { head: [], border: [] },
  });
  for (const { name, value, unit, reference, ratio } of rows) {
    table.push([
      name,
      `${figure(value)} ${unit}`,
      reference === null ? '' : `${reference.name}: ${figure(reference.value)}`,
      ratio === null ? '' : ratio.toFixed(2),
      ...(before === null ? [] : [before.has(name) ? figure(before.get(name) ?? Number.NaN) : '']),
    ]);
  }
  console.log(table.toString());
  console.log(
    `Node ${process.version}, ${cpus().length} × ${cpus()[0]?.model.trim() ?? 'processor'}; a ratio above 1 is better than the reference.`,
  );
}

function figure(value: number): string {
  return value >= 1000 ? Math.round(value).toLocaleString('en-CA') : String(Number(value.toPrecision(4)));
}
