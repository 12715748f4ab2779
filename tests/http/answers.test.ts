import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, describe, expect, it } from 'vitest';
import { csvOf, csvText } from '../../src/http/csv.js';
import { underice } from '../cli/terminal.js';
import { ask, json, sampleDownload, sampleFolder, scratchFolder, send, service } from './service.js';

let at = '';
let folder = '';
beforeAll(async () => {
  folder = await sampleFolder();
  at = (await service(folder)).address;
}, 60_000);

const get = (path: string) => ask(at, `/api/v1${path}`);
const lines = (text: string) => text.trimEnd().split('\r\n');

describe('the API answers as the command line does', () => {
  it('forecast', async () => {
    const said = await underice(['forecast', '--as-of', '2026-02-15', '--json', '--data', folder]);
    expect((await get('/forecast?as_of=2026-02-15')).body).toEqual(JSON.parse(said.out));
  });

  it('a record', async () => {
    const said = await underice([
      'record',
      'weir',
      '--from',
      '2026-01-01',
      '--to',
      '2026-01-03',
      '--data',
      folder,
    ]);
    const { text } = await get('/stations/weir/record.csv?from=2026-01-01&to=2026-01-03');
    expect(lines(text)).toEqual(said.out.trimEnd().split('\n'));
  });

  it('tables', async () => {
    const said = await underice(['tables', '--json', '--data', folder]);
    expect((await get('/tables')).body).toEqual(JSON.parse(said.out));
  });
});

describe('the forecast as CSV', () => {
  it('has three rows for every window of every lot, with the dates of the JSON', async () => {
    const [head, ...rows] = lines((await get('/forecast.csv')).text);
    expect(head).toBe('as_of,box,site,lot,eggs,stage,egg,p10,p50,p90,passed');
    const { boxes } = JSON.parse((await get('/forecast')).text);
    const windows = boxes.flatMap((box: { lots: { windows: unknown[] }[] }) =>
      box.lots.flatMap((lot) => lot.windows),
    );
    expect(rows).toHaveLength(3 * windows.length);
    expect(rows[1]).toContain(boxes[0].lots[0].windows[0].median.p50);
  });
});

describe('cells of CSV', () => {
  // OWASP, CSV Injection: = + - @, tab and carriage return begin a formula (memory).
  it.each([
    ['=1+1', "'=1+1"],
    ['+1', "'+1"],
    ['-1', "'-1"],
    ['@SUM(A1)', "'@SUM(A1)"],
    ['\t=1', "'\t=1"],
    ['=a,"b"', '"\'=a,""b"""'],
    ['plain', 'plain'],
    ['a=b', 'a=b'],
    ['two\nlines', '"two\nlines"'],
  ])('%j becomes %j', (given, cell) => expect(csvText(given)).toBe(cell));
});

describe('a page of figures', () => {
  it.each([
    ['/', ['window']],
    ['/boxes/U1', ['window', 'progress', 'projected']],
    ['/stations/upper', ['record', 'checks']],
    ['/spells', ['spell']],
    ['/lifting', ['lifting']],
    ['/lifting/outcome', ['lifting']],
    ['/tally', ['survival']],
    ['/survival', ['survival']],
    ['/report', ['survival']],
    ['/autumn', ['eggs']],
    ['/stations', ['record']],
    ['/tables', ['tables']],
    ['/downloads', ['understood']],
  ])('%s gives the same as JSON and CSV, and says how it was worked out', async (path, about) => {
    const { text } = await ask(at, path);
    const links = [...text.matchAll(/<a href="(\/(?:api\/v1|report-files)\/[^"]+)"/g)].map(([, link]) =>
      (link ?? '').replaceAll('&amp;', '&'),
    );
    const csv = links.filter((link) => /\.csv(\?|$)/.test(link));
    expect(csv.length).toBeGreaterThan(0);
    expect(links.length).toBeGreaterThan(csv.length);
    for (const link of links) {
      const { status } = await fetch(`${at}${link}`, { method: 'HEAD' });
      expect(status, link).toBe(200);
    }
    const help = await ask(at, '/help/numbers');
    for (const figure of about) {
      expect(text).toContain(`/help/numbers#${figure}`);
      expect(help.text).toContain(`id="${figure}"`);
    }
  });
});

describe('a list as CSV', () => {
  it('has a column for whatever any row has, and no cell that a spreadsheet runs', () => {
    const rows = [
      { a: 1, b: { c: -2, d: '=x' } },
      { b: null, e: ['p', '+q'] },
      { e: [], f: [{ g: 1 }] },
    ];
    expect(csvOf(rows)).toEqual(['a,b.c,b.d,b,e,f', "1,-2,'=x,,,", ',,,,p; +q,', ',,,,,"{""g"":1}"']);
    expect(csvOf([])).toEqual(['']);
  });

  it.each([
    ['lifting', 'days', 'date'],
    ['loads', 'loads', 'load'],
    ['eggs', 'lots', 'lot'],
  ])('%s.csv says what %s.json says, a row each', async (list, key, name) => {
    const { body } = await get(`/${list}`);
    const rows = Array.isArray(body[key]) ? body[key] : [];
    const csv = lines((await get(`/${list}.csv`)).text);
    const at = csv[0]?.split(',').indexOf(name) ?? -1;
    expect(rows.length).toBeGreaterThan(1);
    expect(csv.slice(1).map((line) => line.split(',')[at])).toEqual(rows.map((row) => row[name]));
  });

  it.each(['tallies', 'stations', 'tables', 'lifting/outcome'])('%s.csv is there', async (list) => {
    const said = await get(`/${list}.csv`);
    expect(said.status).toBe(200);
    expect(said.headers.get('Content-Type')).toContain('text/csv');
  });
});

describe('a record for drawing', () => {
  it('of years has no more points than asked for, and the extremes of the whole', async () => {
    const { body, text } = await get('/stations/weir/record?points=500');
    const { time, min, max, mean }: Record<string, number[]> = JSON.parse(text);
    expect(time?.length).toBeLessThanOrEqual(510);
    expect(Number(body.step_seconds)).toBeGreaterThanOrEqual(86_400);
    const all = lines((await get('/stations/weir/record.csv?daily=false')).text)
      .slice(1)
      .map((line) => Number(line.split(',')[1]));
    // Kept days leave out what is not measured well enough: the extremes of the whole lie at or beyond theirs.
    expect(Math.max(...(max ?? []))).toBeLessThanOrEqual(Math.max(...all));
    expect(Math.max(...(max ?? []))).toBeGreaterThan(Math.max(...all) - 0.5);
    for (const [i, low] of (min ?? []).entries()) {
      expect(low).toBeLessThanOrEqual(mean?.[i] ?? Number.NaN);
      expect(max?.[i]).toBeGreaterThanOrEqual(mean?.[i] ?? Number.NaN);
    }
  });

  it('of a day is the readings themselves', async () => {
    const { body } = await get('/stations/weir/record?from=2026-01-10T00:00:00Z&to=2026-01-11T00:00:00Z');
    expect(body).toMatchObject({ step_seconds: 0 });
    expect(body.mean).toEqual(body.max);
    expect(Array.isArray(body.time) && body.time.length).toBe(24);
  });

  it('between: the steps hold every reading once', async () => {
    const range = 'from=2026-01-01T00:00:00Z&to=2026-02-01T00:00:00Z';
    const whole = await get(`/stations/weir/record?${range}&points=4000`);
    const steps = await get(`/stations/weir/record?${range}&points=50`);
    const extremes = ({ text }: { text: string }) => {
      const { min, max }: Record<string, number[]> = JSON.parse(text);
      return [Math.min(...(min ?? [])), Math.max(...(max ?? []))];
    };
    expect(extremes(steps)).toEqual(extremes(whole));
    expect(Number(steps.body.step_seconds)).toBeGreaterThan(3600);
  });

  it('of a station without readings, or of a quantity it has not, is empty', async () => {
    expect(await get('/stations/weir/record?quantity=discharge')).toMatchObject({
      status: 200,
      body: { time: [] },
    });
  });
});

describe('pages of a list', () => {
  it('lead through the whole of it, once each', async () => {
    const all: unknown[] = [];
    let cursor: unknown = null;
    do {
      const query: string = cursor === null ? '' : `&cursor=${cursor}`;
      const { body } = await get(`/loads?limit=5${query}`);
      all.push(...(Array.isArray(body.loads) ? body.loads : []));
      cursor = body.next;
    } while (cursor !== null);
    expect(all).toEqual((await get('/loads?limit=1000')).body.loads);
    expect(all.length).toBeGreaterThan(10);
  });

  it.each([
    '/loads?cursor=nonsense',
    '/boxes?limit=0',
    '/boxes?limit=99999',
    '/forecast?as_of=2026-02-30',
    '/stations/weir/record?from=yesterday',
  ])('%s is refused', async (path) => expect((await get(path)).status).toBe(422));
});

describe('a download through the API', () => {
  it('is understood, asked about, accepted, and withdrawn', async () => {
    const own = (await service(join(scratchFolder(), 'new'))).address;
    const bytes = new Uint8Array(readFileSync(sampleDownload('hatchery-tank.csv')));
    const sent = await ask(
      own,
      '/api/v1/files/hatchery-tank.csv',
      send('PUT', 'application/octet-stream', bytes),
    );
    const { file }: { file: string } = JSON.parse(sent.text).files[0];
    const load = (asked: object) => ask(own, '/api/v1/loads', json('POST', { files: [{ file }], ...asked }));
    const stated = { station: 'tank', zone: 'UTC-04:00', createStations: true };
    expect((await load({ dryRun: true })).body).toMatchObject({
      files: [{ refused: { reason: expect.any(String) } }],
    });
    const tried = await load({ dryRun: true, ...stated });
    expect(tried.body).toMatchObject({ files: [{ refused: null, load: null }], previews: [{ file }] });
    const done = await load(stated);
    expect(done.body).toMatchObject({ files: [{ refused: null, load: '1' }] });
    expect((await ask(own, '/api/v1/files')).body).toEqual({ files: [] });
    expect((await ask(own, '/api/v1/stations')).body).toMatchObject({ stations: [{ station: 'tank' }] });
    const withdraw = () => ask(own, '/api/v1/loads/1/withdraw', { method: 'POST' });
    expect(await withdraw()).toMatchObject({ status: 200, body: { withdrawn: expect.any(String) } });
    expect(await withdraw()).toMatchObject({ status: 409, body: { code: 'already-withdrawn' } });
  });
});
