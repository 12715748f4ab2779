// `npm run bench [-- --quick] [-- --json] [-- --out FILE] [-- --against FILE] [-- --only load,growth] [-- --soak]`: what is
// fast, each figure beside the same work done the plain way in the same run. `-- --only quality [--winters 60] FILE.csv.gz…`:
// what the quality checks find of faults put into winters of public daily records, and what they doubt without any.
import { readFileSync, writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { parseArgs } from 'node:util';
import Table from 'cli-table3';
import { z } from 'zod';
import { daysBench } from './days.js';
import { fieldBench } from './field.js';
import { forecastBench } from './forecast.js';
import { growthBench } from './growth.js';
import { hindcastBench } from './hindcast.js';
import { influxBench } from './influx.js';
import { liftingBench } from './lifting-plan.js';
import { loadingBench } from './loading.js';
import { qualityBench } from './quality/index.js';
import type { BenchRow } from './row.js';
import { serviceBench } from './service.js';
import { soak } from './soak.js';

const { values: asked, positionals: files } = parseArgs({
  allowPositionals: true,
  options: {
    quick: { type: 'boolean', default: false },
    json: { type: 'boolean', default: false },
    against: { type: 'string' },
    only: { type: 'string' },
    out: { type: 'string' },
    soak: { type: 'boolean', default: false },
    minutes: { type: 'string', default: '20' },
    winters: { type: 'string', default: '60' },
  },
});

type Bench = (options: { quick: boolean }) => readonly BenchRow[] | Promise<readonly BenchRow[]>;
const parts: Record<string, Bench> = {
  load: loadingBench,
  influx: influxBench,
  days: daysBench,
  forecast: forecastBench,
  hindcast: hindcastBench,
  lifting: liftingBench,
  service: serviceBench,
  field: fieldBench,
};
/** Only where they are asked for. */
const others: Record<string, Bench> = {
  growth: growthBench,
  quality: () => qualityBench(files, Number(asked.winters)),
  soak: () => soak(Math.min(120, Number(asked.minutes))),
};

/** What a quick run leaves out: minutes of slow lines and of whole winters. */
const NOT_QUICK = ['hindcast', 'lifting', 'field'];
const usual = Object.keys(parts).filter((part) => !asked.quick || !NOT_QUICK.includes(part));
const chosen = asked.soak ? ['soak'] : (asked.only?.split(',') ?? usual);
const rows: BenchRow[] = [];
for (const part of chosen) {
  const bench = parts[part] ?? others[part];
  if (bench === undefined) {
    console.error(
      `There is no bench "${part}": there are ${Object.keys({ ...parts, ...others }).join(', ')}.`,
    );
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
  const rows = z.array(z.object({ name: z.string(), value: z.number() }));
  const before = z.object({ rows }).parse(JSON.parse(readFileSync(file, 'utf8')));
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
      `${reference.name}: ${figure(reference.value)}`,
      ratio.toFixed(2),
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
