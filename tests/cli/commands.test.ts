import { spawn } from 'node:child_process';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PassThrough } from 'node:stream';
import type { Command } from 'commander';
import { describe, expect, it } from 'vitest';
import { buildProgram } from '../../src/cli/program.js';
import type { ForecastAnswer, LoadAnswer, LoadsAnswer } from '../../src/group/answers.js';
import { json, scratchFolder, underice, undericeProcess } from './terminal.js';

const scratch = scratchFolder();
const vega = new URL('../../node_modules/vega-datasets/data/', import.meta.url).pathname;

let made = 0;
/** A data folder of its own for each test. */
const folder = () => `${scratch}/data-${made++}`;

function file(name: string, text: string): string {
  mkdirSync(join(scratch, 'files'), { recursive: true });
  const path = join(scratch, 'files', name);
  writeFileSync(path, text);
  return path;
}

const hours = (from: string, count: number, value: (i: number) => string) =>
  Array.from(
    { length: count },
    (_, i) => `${new Date(Date.parse(from) + i * 3_600_000).toISOString()},${value(i)}`,
  );
const download = (value: (i: number) => string, from = '2025-11-01T00:00:00Z', count = 72) =>
  ['time,temperature (°C)', ...hours(from, count, value)].join('\n');

describe('load, loads, withdraw, record', () => {
  it('keeps a download, knows it again, reports what differs, and takes it back', async () => {
    const data = folder();
    const first = file(
      'first.csv',
      download(() => '4.00'),
    );
    const second = file(
      'second.csv',
      download(() => '4.50', '2025-11-03T00:00:00Z'),
    );
    const one = await json<LoadAnswer>([
      'load',
      first,
      '--station',
      'pool',
      '--create-stations',
      '--data',
      data,
    ]);
    expect(one.files[0]).toMatchObject({
      file: 'first.csv',
      stations: [
        {
          station: 'pool',
          readings: 72,
          first: '2025-11-01T00:00:00Z',
          last: '2025-11-03T23:00:00Z',
          min_c: 4,
          max_c: 4,
        },
      ],
      understood: { delimiter: ',', decimal: '.', unit: 'C' },
      load: '1',
      alreadyLoaded: false,
      differing: 0,
      refused: null,
    });
    const again = await json<LoadAnswer>(['load', first, '--station', 'pool', '--data', data]);
    expect(again.files[0]).toMatchObject({ alreadyLoaded: true, load: '1' });

    const two = await json<LoadAnswer>(['load', second, '--station', 'pool', '--data', data]);
    expect(two.files[0]).toMatchObject({ load: '2', differing: 24, largestDifference: 0.5 });
    const newest = await underice([
      'record',
      'pool',
      '--from',
      '2025-11-03',
      '--to',
      '2025-11-03',
      '--data',
      data,
    ]);
    expect(newest.out.split('\n')[0]).toBe('time_utc,temperature_c,flag');
    expect(newest.out).toContain('T12:00:00Z,4.5,');

    expect((await underice(['withdraw', '2', '--data', data])).status).toBe(0);
    const { loads } = await json<LoadsAnswer>(['loads', '--data', data]);
    expect(loads.map(({ load, withdrawn }) => [load, withdrawn === null])).toEqual([
      ['1', true],
      ['2', false],
    ]);
    const uncovered = await underice([
      'record',
      'pool',
      '--from',
      '2025-11-03',
      '--to',
      '2025-11-03',
      '--data',
      data,
    ]);
    expect(uncovered.out).toContain('T12:00:00Z,4,');
    expect((await underice(['withdraw', '2', '--data', data])).status).toBe(2);
  });

  it('stores nothing on a dry run', async () => {
    const data = folder();
    const path = file(
      'dry.csv',
      download(() => '3'),
    );
    const dry = await json<LoadAnswer>([
      'load',
      path,
      '--station',
      'p',
      '--create-stations',
      '--dry-run',
      '--data',
      data,
    ]);
    expect(dry.files[0]).toMatchObject({ load: null, refused: null, stations: [{ readings: 72 }] });
    expect((await json<LoadsAnswer>(['loads', '--data', data])).loads).toEqual([]);
  });

  it('asks where dates can be read in two ways, and takes the answer', async () => {
    const data = folder();
    const path = file('either.csv', 'date,temperature (°C)\n03/04/2026,1.0\n');
    const asked = await underice([
      'load',
      path,
      '--station',
      'p',
      '--zone',
      'UTC',
      '--create-stations',
      '--data',
      data,
    ]);
    expect(asked.status).toBe(2);
    expect(asked.out).toContain('--date-order');
    const answered = await json<LoadAnswer>([
      'load',
      path,
      '--station',
      'p',
      '--zone',
      'UTC',
      '--create-stations',
      '--date-order',
      'dmy',
      '--data',
      data,
    ]);
    expect(answered.files[0]?.stations[0]?.first.slice(0, 10)).toBe('2026-04-03');
  });

  it('loads a public file of hourly temperatures to the last value (vega-datasets, NOAA normals for Seattle)', async () => {
    const data = folder();
    const path = join(vega, 'seattle-weather-hourly-normals.csv');
    const rows = readFileSync(path, 'utf8')
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => line.split(','));
    const { files } = await json<LoadAnswer>([
      'load',
      path,
      '--station',
      'seattle',
      '--zone',
      'UTC-08:00',
      '--create-stations',
      '--data',
      data,
    ]);
    expect(files[0]?.stations[0]?.readings).toBe(rows.length);
    const said = await underice(['record', 'seattle', '--data', data]);
    const stored = said.out
      .trim()
      .split('\n')
      .slice(1)
      .map((line) => Number(line.split(',')[1]));
    expect(stored).toEqual(rows.map((row) => Number(row[2])));
  });

  it('loads what it can of several files and says of each what happened', async () => {
    const data = folder();
    const good = file(
      'good.csv',
      download(() => '2'),
    );
    const page = file('login.csv', '<!DOCTYPE html><html><body>Sign in</body></html>');
    const said = await underice([
      'load',
      good,
      page,
      '/no/such/file.csv',
      '--station',
      'p',
      '--create-stations',
      '--json',
      '--data',
      data,
    ]);
    const { files }: LoadAnswer = JSON.parse(said.out);
    expect(said.status).toBe(2);
    expect(files.map(({ load }) => load)).toEqual(['1', null, null]);
    expect(files[1]?.refused?.reason).toMatch(/page/i);
    expect(files[2]?.refused?.reason).toContain('file.csv');
  });

  it('refuses a station that is not in the season, and an unknown zone', async () => {
    const data = folder();
    const path = file(
      'alone.csv',
      download(() => '2'),
    );
    const stranger = await underice(['load', path, '--station', 'nowhere', '--data', data]);
    expect(stranger.status).toBe(2);
    expect(stranger.out).toContain('nowhere');
    const zone = await underice([
      'load',
      path,
      '--station',
      'p',
      '--zone',
      'Mars/Olympus',
      '--create-stations',
      '--data',
      data,
    ]);
    expect(zone.status).toBe(2);
    expect(zone.out).toContain('Mars/Olympus');
  });
});

describe('season', () => {
  const season = `group: { name: Test, zone: UTC-04:00 }
stations: [{ id: pool, reports: true }]
sites: [{ id: bend, station: pool }]
lots: [{ id: A, fertilised: 2025-11-01 12:00, eggs: 500, table: atlantic-salmon }]
boxes: [{ id: B1, site: bend, planted: 2025-11-01 15:00, fills: [{ lot: A, eggs: 500 }] }]
`;

  it('apply shows changes, export gives back what apply takes, byte for byte', async () => {
    const data = folder();
    const path = file('season.yaml', season);
    const dry = await json<{ applied: boolean; changes: string[] }>([
      'season',
      'apply',
      path,
      '--dry-run',
      '--data',
      data,
    ]);
    expect(dry.applied).toBe(false);
    expect(dry.changes.length).toBeGreaterThanOrEqual(4);
    expect((await underice(['season', 'apply', path, '--data', data])).status).toBe(0);
    const exported = (await underice(['season', 'export', '--data', data])).out;
    const again = file('exported.yaml', exported);
    expect((await json<{ changes: string[] }>(['season', 'apply', again, '--data', data])).changes).toEqual(
      [],
    );
    expect((await underice(['season', 'export', '--data', data])).out).toBe(exported);
  });

  it('without a single reading it says what it needs, not a date', async () => {
    const data = folder();
    await underice(['season', 'apply', file('season.yaml', season), '--data', data]);
    const { boxes } = await json<ForecastAnswer>(['forecast', '--as-of', '2025-12-01', '--data', data]);
    const hatch = boxes[0]?.windows.find(({ stage }) => stage === 'hatch');
    expect(hatch?.median).toEqual({ p10: null, p50: null, p90: null });
    expect(hatch?.unreached).toMatch(/cannot say/i);
  });

  it('refuses a season with a missing lot, with line, path and what would do, and keeps the old one', async () => {
    const data = folder();
    await underice(['season', 'apply', file('season.yaml', season), '--data', data]);
    const before = (await underice(['season', 'export', '--data', data])).out;
    const broken = await underice([
      'season',
      'apply',
      file('broken.yaml', season.replace('lot: A', 'lot: Z')),
      '--data',
      data,
    ]);
    expect(broken.status).toBe(2);
    expect(broken.err).toMatch(/5/);
    expect(broken.err).toContain('Z');
    expect((await underice(['season', 'export', '--data', data])).out).toBe(before);
  });
});

/** Every command by its names, and the program itself: what a person can put --help behind. */
function everyCommand(): string[][] {
  const nowhere = new PassThrough();
  const program = buildProgram({ language: 'en', env: {}, out: nowhere, err: nowhere, end: () => undefined });
  const below = (command: Command, names: string[]): string[][] => [
    names,
    ...command.commands.flatMap((child) => below(child, [...names, child.name()])),
  ];
  return below(program, []);
}

describe('the command line itself', () => {
  it.each([
    [['frcast'], /no command "frcast"/],
    [['forecast', '--boxes'], /--boxes/],
    [['load'], /needs file/],
    [['forecast', '--as-of', '2026-02-30'], /2026-02-30/],
    [['forecast', '--box'], /--box/],
    [['load', 'x.csv', '--unit', 'R'], /C, F, K/],
    [['withdraw', 'three'], /"three"/],
    [['record', 'nowhere'], /nowhere/],
    [['tables', 'trout'], /atlantic-salmon/],
    [['forecast', '--lang', 'de'], /en, fr/],
  ])('%j is refused in a sentence, without a stack trace', async (args, sentence) => {
    const said = await underice([...args, '--data', folder()]);
    expect(said.status).toBe(2);
    expect(said.err).toMatch(sentence);
    expect(said.err).not.toMatch(/\n\s+at |error:/);
    expect(said.err.trim().split('\n').length).toBeLessThanOrEqual(3);
  });

  it('takes its language from the option, the environment, else the terminal', async () => {
    const wrong = ['frcast', '--data', folder()];
    expect((await underice([...wrong, '--lang', 'fr'])).err).toContain('n’existe pas');
    expect((await underice(wrong, { UNDERICE_LANG: 'fr' })).err).toContain('n’existe pas');
    expect((await underice(wrong, { LANG: 'fr_CA.UTF-8' })).err).toContain('n’existe pas');
    expect((await underice(wrong)).err).toContain('There is no command');
  });

  it.each(everyCommand())('%j explains itself with an example in both languages', async (...name) => {
    const en = await underice([...name, '--help']);
    const fr = await underice([...name, '--help', '--lang', 'fr']);
    expect(en.status).toBe(0);
    expect(en.out).toMatch(new RegExp(`Example:\\n  underice ${name.slice(0, 1).join('')}`));
    expect(fr.out).toContain('Exemple\u00a0:');
    expect(fr.out).not.toMatch(/Usage:|Options:|Arguments:/);
  });

  it('the data folder may come from the environment', async () => {
    const data = folder();
    const said = await underice(['loads', '--json'], { UNDERICE_DATA: data });
    expect(JSON.parse(said.out)).toEqual({ loads: [] });
  });

  it('a data folder that cannot be is refused in a sentence', async () => {
    const path = file('a-file', 'not a folder');
    const said = await underice(['loads', '--data', path]);
    expect(said.status).toBeGreaterThan(0);
    expect(said.err).toContain('a-file');
  });
});

describe('as a process of its own', () => {
  it('ends with the status of its command, the answer on one stream and the reason on the other', async () => {
    const data = folder();
    const done = await undericeProcess(['loads', '--json'], { UNDERICE_DATA: data });
    expect(done).toEqual({ status: 0, out: `${JSON.stringify({ loads: [] }, null, 2)}\n`, err: '' });
    const refused = await undericeProcess(['frcast'], { LANG: 'fr_CA.UTF-8' });
    expect(refused).toMatchObject({ status: 2, out: '' });
    expect(refused.err).toMatch(/n’existe pas/);
    expect(refused.err).not.toMatch(/\n\s+at /);
    const failed = await undericeProcess(['loads', '--data', file('no-folder', 'a file')]);
    expect(failed.status).toBeGreaterThan(0);
    expect(failed.err).toContain('no-folder');
  });

  it('ends quietly where the reader of its answer leaves early, as head does', async () => {
    const data = folder();
    const path = file(
      'long.csv',
      download(() => '2', '2024-11-01T00:00:00Z', 9000),
    );
    await underice(['load', path, '--station', 'p', '--create-stations', '--data', data]);
    const main = new URL('../../dist/src/cli/main.js', import.meta.url).pathname;
    const child = spawn(process.execPath, [main, 'record', 'p', '--data', data], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
    let err = '';
    child.stderr.setEncoding('utf8').on('data', (text: string) => (err += text));
    child.stdout.once('data', () => child.stdout.destroy());
    expect(await new Promise((resolve) => child.on('close', resolve))).toBe(0);
    expect(err).toBe('');
  });
});
