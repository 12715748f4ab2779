import { spawn } from 'node:child_process';
import { rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build } from 'esbuild';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { afterAll, beforeAll, expect } from 'vitest';
import { z } from 'zod';
import { LocalGroup } from '../../src/group/local.js';
import { seasonEntry } from '../../src/group/season-entries.js';
import { thinkHere } from '../../src/group/thinker.js';
import { renderSeason, seasonFrom } from '../../src/season/index.js';
import { openFolder, type SeasonEntry, type ServerAddress } from '../../src/store/index.js';
import { loadValues, READINGS } from './workload-readings.js';

/** The process that is killed, in one file: it starts in a third of the time. */
const bundle = fileURLToPath(new URL(`../../dist/workload-${process.pid}.mjs`, import.meta.url));

export function bundleWorkload(): void {
  beforeAll(async () => {
    await build({
      entryPoints: [fileURLToPath(new URL('workload.ts', import.meta.url))],
      outfile: bundle,
      bundle: true,
      minify: true,
      platform: 'node',
      format: 'esm',
      target: 'node20',
      external: ['@duckdb/node-bindings', '@duckdb/node-bindings-*'],
      banner: {
        js: "import { createRequire } from 'node:module'; const require = createRequire(import.meta.url);",
      },
      logLevel: 'error',
    });
  });
  afterAll(() => rmSync(bundle, { force: true }));
}

/** Two seasons that an edit goes back and forth between: one box, planted with so many eggs. */
export const seasons: readonly SeasonEntry[] = [1000, 1200].map((eggs) => {
  const season = seasonFrom(
    {
      group: { name: 'Tallowmere Brook Keepers', zone: 'UTC' },
      stations: [{ id: 'pool', kind: 'stream' }],
      sites: [{ id: 'bend', station: 'pool' }],
      lots: [{ id: 'A', fertilised: '2025-11-04 12:00', eggs: 6000, table: 'atlantic-salmon' }],
      boxes: [{ id: 'B1', site: 'bend', planted: '2025-11-04 18:00', fills: [{ lot: 'A', eggs }] }],
    },
    'kills',
  );
  return seasonEntry(season, renderSeason(season));
});

const stateSchema = z.object({
  store: z.string(),
  loads: z.array(
    z.object({
      load: z.number(),
      readings: z.number(),
      min: z.number(),
      max: z.number(),
      stands: z.boolean(),
    }),
  ),
  seasons: z.array(z.number()),
  at: z.array(z.number()),
  value: z.array(z.number()),
  findings: z.array(z.unknown()),
  /** Windows of the forecast of its boxes: it is worked out after every kill. */
  windows: z.number(),
});
export type State = z.infer<typeof stateSchema>;

export interface Work {
  readonly what: 'edits' | 'migration' | 'copies';
  readonly dir: string;
  /** The folder the kill before was about, where that is another. */
  readonly before?: string;
  /** The line after which the clock of the kill runs, and how many more may come first. */
  readonly from: string;
  readonly lines: number;
  /** Most milliseconds after those. */
  readonly most: number;
}

/** Starts the workload on a folder and kills it; what it found there, and what it said was done. */
export class Killer {
  readonly acknowledged: string[] = [];
  kills = 0;
  private readonly random;

  constructor(
    private readonly place: string,
    seed: number,
    private readonly server: ServerAddress | null = null,
  ) {
    this.random = xoroshiro128plus(seed);
  }

  /** @returns the state in which the kill before left the folder; null where there was none. */
  async kill({ what, dir, before = dir, from, lines, most }: Work): Promise<State | null> {
    const given = join(this.place, 'given.json');
    writeFileSync(given, JSON.stringify({ seasons, server: this.server }));
    const child = spawn(process.execPath, [bundle, what, given, dir, before], {
      stdio: ['ignore', 'pipe', 'inherit'],
    });
    const more = uniformInt(this.random, 0, lines);
    const wait = uniformInt(this.random, 0, most);
    let said = '';
    let due = false;
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      said += text;
      const after = said.split('\n').slice(0, -1);
      const begun = after.findIndex((line) => line.startsWith(from));
      if (due || begun === -1 || after.length - 1 - begun < more) return;
      due = true;
      setTimeout(() => child.kill('SIGKILL'), wait);
    });
    const signal = await new Promise((resolve) => child.on('close', (_, how) => resolve(how)));
    expect(signal, said).toBe('SIGKILL');
    this.kills++;
    const whole = said.slice(0, said.lastIndexOf('\n')).split('\n');
    const found = whole.find((line) => line.startsWith('state '));
    const state = found === undefined ? null : stateSchema.parse(JSON.parse(found.slice('state '.length)));
    if (state !== null && what !== 'migration') expectWhole(state, this.acknowledged);
    this.acknowledged.push(...whole.filter((line) => /^(loaded|withdrawn|season|copied) /.test(line)));
    return state;
  }
}

/** What was acknowledged is there whole; what was not is there wholly or not at all; all of it agrees. */
export function expectWhole(
  { store, loads, seasons, at, value, findings, windows }: State,
  acknowledged: readonly string[],
): void {
  expect(loads.map(({ load }) => load)).toEqual(loads.map((_, i) => i + 1));
  expect(seasons).toEqual(seasons.map((_, i) => i + 1));
  for (const { load, readings, min, max } of loads)
    expect({ readings, min, max }).toEqual({ readings: READINGS, min: load / 10, max: load / 10 });
  for (const line of acknowledged) {
    const [what, number] = line.split(' ');
    if (what === 'season') expect(seasons.length).toBeGreaterThanOrEqual(Number(number));
    if (what === 'loaded') expect(loads.length).toBeGreaterThanOrEqual(Number(number));
    if (what === 'withdrawn') expect(loads[Number(number) - 1]?.stands).toBe(false);
  }
  const fold = new Map<number, number>();
  for (const { load } of loads.filter(({ stands }) => stands)) {
    const own = loadValues(load);
    own.at.forEach((instant, i) => {
      fold.set(instant, own.value[i]);
    });
  }
  expect(at.length, `instants in ${store}; ${acknowledged.slice(-6)}; ${JSON.stringify(findings)}`).toBe(
    fold.size,
  );
  expect(at.filter((instant, i) => fold.get(instant) !== value[i])).toEqual([]);
  expect(findings).toEqual([]);
  expect(windows).toBeGreaterThan(2);
}

/** The forecast of the one box comes out with its stages dated. */
export async function expectForecast(dir: string, server: ServerAddress | null = null): Promise<void> {
  const now = () => Date.UTC(2026, 1, 10);
  const folder = await openFolder(dir, { now, store: { kind: null, server } });
  const group = new LocalGroup(folder, now, null, thinkHere);
  try {
    const { boxes } = await group.forecast({ box: null, asOf: null });
    expect(boxes[0]?.lots[0]?.windows.length).toBeGreaterThan(2);
  } finally {
    await group.close();
  }
}
