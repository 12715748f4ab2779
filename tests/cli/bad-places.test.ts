import { mkdirSync, readdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { join } from 'node:path';
import { DuckDBInstance } from '@duckdb/node-api';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { freePort, Influxd } from '../../bench/influxd.js';
import type { LoadsAnswer } from '../../src/group/answers.js';
import { json, scratchFolder, underice } from './terminal.js';

/* What a person is told where the data folder or the server is not what it should be; nothing is changed by it. */
const scratch = scratchFolder();
const STORE = 'underice.duckdb';
const download = join(scratch, 'pool.csv');
const readings = Array.from(
  { length: 48 },
  (_, i) => `${new Date(Date.UTC(2025, 10, 1, i)).toISOString()},${(i % 9) / 2}`,
);
writeFileSync(download, `time,temperature (°C)\n${readings.join('\n')}\n`);
const loaded = async (data: string) => {
  const said = await underice(['load', download, '--station', 'pool', '--create-stations', '--data', data]);
  expect(said).toMatchObject({ status: 0, err: '' });
  return data;
};

/** A refusal in one or two sentences in each language, and no answer. */
async function refused(args: readonly string[], english: RegExp, french: RegExp): Promise<void> {
  for (const [language, sentence] of [
    ['en', english],
    ['fr', french],
  ] as const) {
    const { status, out, err } = await underice([...args, '--lang', language]);
    expect(status).toBeGreaterThan(0);
    expect(out).toBe('');
    expect(err).toMatch(sentence);
    expect(err.trimEnd().split('\n')).toHaveLength(1);
    expect(err).not.toMatch(/Error|\.js|undefined/);
  }
}

describe('a store file', () => {
  it.each<[string, (file: string) => Promise<void> | void, RegExp, RegExp]>([
    [
      'that is a text file',
      (file) => writeFileSync(file, 'date,temp\n'.repeat(900)),
      /not a season of Underice/,
      /n’est pas une saison/,
    ],
    [
      'that was cut short',
      (file) => truncateSync(file, 100_000),
      /incomplete|damaged/,
      /incompl|abîm|endommag/,
    ],
    ['of a newer version', newer, /newer Underice/, /plus récent/],
  ])('%s', async (_, spoil, english, french) => {
    const data = await loaded(join(scratch, `store-${readdirSync(scratch).length}`));
    const file = join(data, STORE);
    await spoil(file);
    const before = readFileSync(file);
    for (const command of [
      ['loads'],
      ['load', download],
      ['verify'],
      ['backup', join(scratch, 'never.underice')],
    ])
      await refused([...command, '--data', data], english, french);
    expect(readFileSync(file).equals(before)).toBe(true);
    expect(readdirSync(data)).toEqual([STORE]);
    expect(readdirSync(scratch)).not.toContain('never.underice');
  });
});

async function newer(file: string): Promise<void> {
  const instance = await DuckDBInstance.create(file);
  const connection = await instance.connect();
  await connection.run('INSERT INTO migration VALUES (99, 0)');
  connection.closeSync();
  instance.closeSync();
}

it('a path with spaces, quotes, accents and more than two hundred characters does for every command', async () => {
  const place = join(scratch, `L'hiver "26" à Saint-Élie ${'é'.repeat(60)}`, 'x'.repeat(120));
  const data = await loaded(join(place, 'données'));
  expect(data.length).toBeGreaterThan(200);
  const backup = join(place, 'sauvegarde d’été.underice');
  for (const command of [
    ['record', 'pool'],
    ['verify'],
    ['backup', backup],
    ['export', '--all', join(place, 'tout')],
  ])
    expect(await underice([...command, '--data', data])).toMatchObject({ status: 0, err: '' });
  const restored = join(place, 'restauré');
  expect((await underice(['restore', backup, '--data', restored])).status).toBe(0);
  const record = ['record', 'pool', '--data'];
  expect((await underice([...record, restored])).out).toBe((await underice([...record, data])).out);
});

describe('a server', () => {
  let influxd: Influxd;
  beforeAll(async () => {
    influxd = await Influxd.start({ extra: 'auth-enabled = true' });
    await influxd.ask(`CREATE USER keeper WITH PASSWORD 'salmon' WITH ALL PRIVILEGES`);
  });
  afterAll(() => influxd.end());
  const settings = (data: string, url: string, more: string) =>
    writeFileSync(join(data, 'settings.yaml'), `influxUrl: ${url}\ninfluxDatabase: river\n${more}\n`);
  const keeper = 'influxUser: keeper\ninfluxPassword: salmon';
  const copy = (data: string) => ['copy-store', '--to', 'influx', '--data', data];

  it('of another kind, or with a wrong token or password, takes nothing: the readings stay where they are', async () => {
    const data = await loaded(join(scratch, 'wrong'));
    const other = createServer((_, response) => response.writeHead(200).end('<html>hello</html>'));
    const port = await freePort();
    await new Promise<void>((resolve) => other.listen(port, '127.0.0.1', resolve));
    settings(data, `http://127.0.0.1:${port}`, '');
    await refused(copy(data), /not an InfluxDB server/, /n’est pas un serveur InfluxDB/);
    other.closeAllConnections();
    other.close();
    const wrong = /does not accept the user, password or token/;
    const faux = /n’accepte pas/;
    settings(data, influxd.url, 'influxToken: keeper:trout');
    await refused(copy(data), wrong, faux);
    settings(data, influxd.url, 'influxUser: keeper\ninfluxPassword: trout');
    await refused(copy(data), wrong, faux);
    expect((await json<LoadsAnswer>(['loads', '--data', data])).loads).toHaveLength(1);
    expect(await json(['verify', '--data', data])).toMatchObject({ whole: true, readings: 48 });
  });

  it('whose database is gone is named, and the backup made before has everything', async () => {
    const data = await loaded(join(scratch, 'moved'));
    settings(data, influxd.url, keeper);
    expect(await underice(copy(data))).toMatchObject({ status: 0, err: '' });
    const backup = join(scratch, 'moved.underice');
    expect((await underice(['backup', backup, '--data', data])).status).toBe(0);
    await fetch(`${influxd.url}/query`, {
      method: 'POST',
      headers: { Authorization: `Basic ${Buffer.from('keeper:salmon').toString('base64')}` },
      body: new URLSearchParams({ q: 'DROP DATABASE "river"' }),
    });
    await refused(['loads', '--data', data], /no database or bucket "river"/, /«\u00a0river\u00a0»/);
    const restored = join(scratch, 'from-server');
    mkdirSync(restored);
    expect((await underice(['restore', backup, '--data', restored])).status).toBe(0);
    expect(await json(['verify', '--data', restored])).toMatchObject({ whole: true, readings: 48 });
  });
});
