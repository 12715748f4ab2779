import { mkdirSync, readdirSync, rmSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { Feeds } from '../../src/feeds/index.js';
import type { Group } from '../../src/group/index.js';
import type { News } from '../../src/messages/index.js';
import { feedLines } from '../../src/pages/messages/lists.js';
import { feedSchema } from '../../src/settings/schema.js';
import { MORNING, river } from '../messages/river.js';
import { webServer } from '../messages/sink.js';
import { temporaryFolder } from '../store/temporary.js';

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const iso = (at: number) => new Date(at).toISOString().slice(0, 19);

/** An hourly download of water near freezing. */
function download(from: number, hours: number): string {
  const rows = Array.from(
    { length: hours },
    (_, i) => `${iso(from + i * HOUR)}Z,${(0.1 + (i % 7) / 50).toFixed(2)}`,
  );
  return `Time (UTC),Temperature (°C)\n${rows.join('\n')}\n`;
}

/** What is visible, by instant. */
async function shown(group: Group): Promise<Record<string, string>> {
  const found: [string, string][] = [];
  for await (const line of group.record({ station: 'pool', from: null, to: null, daily: false })) {
    const [at = '', value = ''] = line.split(',');
    if (at.startsWith('2')) found.push([at, Number(value).toFixed(2)]);
  }
  return Object.fromEntries(found);
}

/** Feeds of a group with one station, and what was told of them. */
async function feeding(feeds: readonly unknown[], { named = ['127.0.0.1'], megabytes = 5 } = {}) {
  const { group } = await river();
  const told: News[] = [];
  const open = () =>
    new Feeds({
      group,
      book: group.outbox,
      feeds: feeds.map((feed) => feedSchema.parse(feed)),
      named,
      megabytes,
      seconds: 2,
      tell: async (_, __, news) => void told.push(...news.map((one) => one.news)),
      failed: (_, error) => {
        throw error;
      },
    });
  const made = open();
  const round = (at: number, all = false) => made.round(at, new AbortController().signal, all);
  const line = async () => (await feedLines(await made.list(), 'en'))[0];
  const standing = async () => (await group.loads()).filter(({ withdrawn }) => withdrawn === null);
  const readings = async () =>
    (await group.stations()).flatMap(({ records }) => records).reduce((sum, one) => sum + one.readings, 0);
  return { group, feeds: made, open, round, line, standing, readings, told };
}

describe('an address that is asked', () => {
  test('by its ETag; what it gives is loaded through the same door; a longer file replaces its load', async () => {
    let body = download(MORNING - 2 * DAY, 24);
    const asked: (string | undefined)[] = [];
    const { url } = await webServer((request, response) => {
      const etag = `"${body.length}"`;
      asked.push(request.headers['if-none-match']);
      if (request.headers['if-none-match'] === etag) return void response.writeHead(304).end();
      response.writeHead(200, { ETag: etag, 'Content-Type': 'text/csv' }).end(body);
    });
    const { round, line, standing, readings } = await feeding([
      { id: 'weir', url: `${url}/pool.csv`, station: 'pool' },
    ]);
    await round(MORNING);
    expect(await line()).toMatchObject({
      row: { state: 'fresh', fresh: MORNING, next: MORNING + HOUR },
      answer: '24 new readings.',
    });
    await round(MORNING + HOUR - 1);
    expect(asked).toHaveLength(1);
    await round(MORNING + HOUR);
    expect(asked[1]).toBe(`"${body.length}"`);
    expect(await line()).toMatchObject({
      row: { state: 'unchanged', fresh: MORNING },
      answer: 'The same as last time.',
    });
    body = download(MORNING - 2 * DAY, 30);
    await round(MORNING + 2 * HOUR);
    expect(await line()).toMatchObject({ row: { state: 'fresh' }, answer: '6 new readings.' });
    expect(await readings()).toBe(30);
    expect(await standing()).toHaveLength(1);
  });

  test('that holds the last three days, read every hour, leaves one standing load a month; nothing visible changes', async () => {
    const window = 72;
    let at = Date.parse('2025-12-31T12:00Z');
    const rows = (from: number, hours: number, value: (i: number) => number) =>
      Array.from({ length: hours }, (_, i) => `${iso(from + i * HOUR)}Z,${value(i).toFixed(2)}`);
    const number = (one: number) => (one / HOUR) % 50;
    /** At some hour the provider puts a value right, and gives it so from then on. */
    const right = at - 10 * HOUR;
    const given = () =>
      rows(at - window * HOUR, window, (i) => {
        const one = at - (window - i) * HOUR;
        return one === right && at >= right + 12 * HOUR ? 0.55 : number(one) / 100;
      });
    const { url } = await webServer(
      (_, response) => void response.end(`Time (UTC),Temperature (°C)\n${given().join('\n')}\n`),
    );
    const { group, round, standing, readings } = await feeding([
      { id: 'weir', url: `${url}/last-days.csv`, station: 'pool' },
    ]);
    const begin = at;
    const expected = new Map<string, string>();
    const poll = async () => {
      for (const line of given()) expected.set(line.slice(0, 20), line.slice(21));
      await round(at, true);
      at += HOUR;
    };
    for (let polls = 0; polls < 5; polls++) await poll();
    // A person loads the logger's own download over a part of it: that stays on top.
    const path = join(temporaryFolder(), 'own.csv');
    const own = rows(begin - 60 * HOUR, 30, () => 0.77);
    writeFileSync(path, `Time (UTC),Temperature (°C)\n${own.join('\n')}\n`);
    const asked = { station: 'pool' };
    const [loaded] = await group.load({
      files: [{ path }],
      asked,
      createStations: false,
      dryRun: false,
      who: 'Ann',
      progress: null,
    });
    for (const line of own) expected.set(line.slice(0, 20), line.slice(21));
    for (let polls = 0; polls < 4; polls++) await poll();
    expect(await readings()).toBe(expected.size);
    expect(await shown(group)).toEqual(Object.fromEntries(expected));
    // The newest, both months as far as they were gathered before and after the person's, that one, and what it covers.
    expect((await standing()).length).toBeLessThanOrEqual(6);
    expect((await standing()).map(({ file }) => file)).toContain('weir 2025-12');
    await group.withdraw(String(loaded?.load), 'Ann');
    expect(await readings()).toBe(expected.size);
    const last = await shown(group);
    expect(last[`${iso(right)}Z`]).toBe('0.55');
    expect(Object.values(last)).not.toContain('0.77');
    expect((await group.verify()).findings).toEqual([]);
  });

  test('on start asks for what it missed, and says what the provider no longer keeps', async () => {
    const paths: string[] = [];
    let body = download(MORNING - 40 * DAY, 24);
    const { url } = await webServer((request, response) => {
      paths.push(request.url ?? '');
      response.end(body);
    });
    const feed = { id: 'weir', url: `${url}/pool?from={from}&to={to}`, station: 'pool', keepsDays: 30 };
    const { round, open, told, readings } = await feeding([feed]);
    await round(MORNING - 39 * DAY);
    expect(told).toEqual([]);
    body = download(MORNING - 30 * DAY, 48);
    await open().round(MORNING, new AbortController().signal, true);
    // 14 January less the 30 days it keeps, to the day after.
    expect(paths.at(-1)).toBe('/pool?from=2025-12-15&to=2026-01-15');
    expect(await readings()).toBe(72);
    expect(told).toEqual([
      {
        kind: 'feed-gap',
        feed: 'weir',
        station: 'pool',
        from: MORNING - 39 * DAY - HOUR,
        to: MORNING - 30 * DAY,
      },
    ]);
  });

  test('that gives yesterday’s file for ever is told once, after the stated silence', async () => {
    const body = download(MORNING - 2 * DAY, 24);
    const { url } = await webServer((_, response) => void response.end(body));
    const { round, line, told } = await feeding([{ id: 'weir', url, station: 'pool', silentHours: 48 }]);
    for (let hours = 0; hours <= 100; hours += 10) await round(MORNING + hours * HOUR);
    expect(told).toEqual([{ kind: 'feed-silent', feed: 'weir', since: MORNING, hours: 50 }]);
    expect(await line()).toMatchObject({ row: { state: 'unchanged' }, answer: 'The same as last time.' });
  });

  test('that gives HTML: refused in a sentence, nothing stored, asked anew', async () => {
    let body = '<!doctype html><html><body><h1>Maintenance</h1></body></html>';
    const { url } = await webServer((_, response) => void response.setHeader('ETag', '"same"').end(body));
    const { round, line, readings } = await feeding([{ id: 'weir', url, station: 'pool' }]);
    await round(MORNING);
    expect(await line()).toMatchObject({
      row: { state: 'refused', fresh: null },
      answer: expect.stringMatching(/^It is not a download: .*(HTML|web page)/i),
    });
    body = download(MORNING - DAY, 3);
    await round(MORNING + HOUR);
    expect(await line()).toMatchObject({ row: { state: 'fresh' } });
    expect(await readings()).toBe(3);
  });

  test('that breaks off in the middle of a file: nothing of it is stored, tried again with growing pauses', async () => {
    const body = download(MORNING - 2 * DAY, 24);
    let whole = false;
    const { url } = await webServer((_, response) => {
      response.writeHead(200, { 'Content-Length': body.length });
      if (whole) return void response.end(body);
      response.write(body.slice(0, 300), () => response.destroy());
    });
    const { round, line, readings } = await feeding([{ id: 'weir', url, station: 'pool' }]);
    await round(MORNING);
    expect(await line()).toMatchObject({
      row: { state: 'failing', tries: 1, next: MORNING + 60_000 },
      answer: '127.0.0.1 broke off in the middle.',
    });
    await round(MORNING + 60_000);
    expect(await line()).toMatchObject({ row: { tries: 2, next: MORNING + 180_000 } });
    expect(await readings()).toBe(0);
    whole = true;
    await round(MORNING + 180_000);
    expect(await line()).toMatchObject({ row: { state: 'fresh', tries: 0 } });
    expect(await readings()).toBe(24);
  });

  test('whose readings are of next year: none is stored, and it says how many', async () => {
    const later = download(MORNING + 365 * DAY, 3);
    let body = download(MORNING - DAY, 20) + later.slice(later.indexOf('\n') + 1);
    const { url } = await webServer((_, response) => void response.end(body));
    const { round, line, readings } = await feeding([{ id: 'weir', url, station: 'pool' }]);
    await round(MORNING);
    expect(await line()).toMatchObject({
      row: { state: 'fresh' },
      answer: '20 new readings, 3 lines not usable.',
    });
    expect(await readings()).toBe(20);
    body = later;
    await round(MORNING + HOUR);
    expect(await line()).toMatchObject({
      row: { state: 'refused' },
      answer: expect.stringMatching(/3 of 3 lines cannot be used.*lies in the future/),
    });
    expect(await readings()).toBe(20);
  });

  test.each(['http://127.0.0.1:9/', 'http://192.168.1.20/', 'http://localhost:9/', 'http://[::1]:9/'])(
    'in the private network (%s) is refused unless the settings name it',
    async (url) => {
      const { round, line } = await feeding([{ id: 'weir', url, station: 'pool' }], { named: [] });
      await round(MORNING);
      expect(await line()).toMatchObject({
        row: { state: 'failing' },
        answer: expect.stringContaining('privateAddresses'),
      });
    },
  );

  test('that redirects into the private network, is too large, answers 503 or nothing', async () => {
    const { url } = await webServer((request, response) => {
      if (request.url === '/inside')
        return void response.writeHead(302, { Location: 'http://10.0.0.7/' }).end();
      if (request.url === '/large') return void response.end(Buffer.alloc(2_000_000));
      if (request.url === '/busy') return void response.writeHead(503).end();
      response.end();
    });
    const answers = [];
    for (const path of ['/inside', '/large', '/busy', '/empty']) {
      const { round, line } = await feeding([{ id: 'weir', url: `${url}${path}`, station: 'pool' }], {
        megabytes: 1,
      });
      await round(MORNING);
      answers.push((await line())?.answer);
    }
    expect(answers).toEqual([
      expect.stringContaining('redirects to http://10.0.0.7, in this machine or the network around it'),
      '127.0.0.1 sent more than 1 MB: given up.',
      expect.stringContaining('answered 503'),
      'An empty answer.',
    ]);
  });
});

describe('a folder that is watched', () => {
  test('every new file once, also one that changed; half-written, hidden and other files are left or refused', async () => {
    const folder = temporaryFolder();
    const put = (name: string, text: string, restedSeconds = 60) => {
      writeFileSync(join(folder, name), text);
      const then = Date.now() / 1000 - restedSeconds;
      utimesSync(join(folder, name), then, then);
    };
    const { round, line, readings, standing } = await feeding([
      { id: 'dropped', folder, station: 'pool', everyMinutes: 1 },
    ]);
    await round(MORNING);
    expect(await line()).toMatchObject({ row: { state: 'unchanged' } });
    put('one.csv', download(MORNING - 9 * DAY, 10));
    put('.hidden.csv', download(MORNING - 8 * DAY, 10));
    put('two.csv.part', download(MORNING - 7 * DAY, 10));
    put('fresh.csv', download(MORNING - 6 * DAY, 10), 0);
    put('notes.txt', 'nothing but words in here');
    mkdirSync(join(folder, 'deeper.csv'));
    await round(MORNING + 60_000);
    expect(await line()).toMatchObject({
      row: { state: 'fresh' },
      answer: '2 new files, 10 new readings; one file refused.',
    });
    await round(MORNING + 120_000);
    expect(await line()).toMatchObject({ row: { state: 'unchanged' } });
    put('one.csv', download(MORNING - 9 * DAY, 12), 50);
    await round(MORNING + 180_000);
    expect(await line()).toMatchObject({ answer: 'one new file, 2 new readings.' });
    expect(await readings()).toBe(12);
    expect(await standing()).toHaveLength(1);
  });

  test('that gets a new name every hour leaves one standing load a month, and nothing visible is lost', async () => {
    const folder = temporaryFolder();
    const begin = Date.parse('2025-12-30T00:00Z');
    const expected = new Map<string, string>();
    /** Each file holds the last so many hours up to its own; one reading is put right later. */
    const put = (hour: number, window: number, value = (i: number) => (i % 50) / 100) => {
      const rows = Array.from({ length: window }, (_, k) => {
        const i = hour - window + 1 + k;
        return [`${iso(begin + i * HOUR)}Z`, value(i).toFixed(2)] as const;
      });
      for (const [at, one] of rows) expected.set(at, one);
      const name = `weir-${iso(begin + hour * HOUR).replaceAll(':', '')}.csv`;
      writeFileSync(
        join(folder, name),
        `Time (UTC),Temperature (°C)\n${rows.map((row) => row.join(',')).join('\n')}\n`,
      );
      // The folder is read oldest first.
      const then = Date.now() / 1000 - 10_000 + hour;
      utimesSync(join(folder, name), then, then);
      return name;
    };
    const { group, round, open, standing, readings } = await feeding([
      { id: 'dropped', folder, station: 'pool', everyMinutes: 1 },
    ]);
    let at = MORNING;
    const next = () => {
      at += 60_000;
      return at;
    };
    const poll = () => round(next(), true);
    // An hour to a file, then six hours that overlap, with one reading put right on the way.
    for (let hour = 0; hour < 6; hour++) {
      put(hour, 1);
      await poll();
    }
    for (let hour = 6; hour < 12; hour++) {
      put(hour, 6, (i) => (i === 7 && hour > 9 ? 0.91 : (i % 50) / 100));
      await poll();
    }
    // Where the files begin to overlap, one of them covers a part of the month's load: another is begun beside it.
    expect((await standing()).map(({ file }) => file).sort()).toEqual([
      'dropped 2025-12',
      'dropped 2025-12',
      'weir-2025-12-30T110000.csv',
    ]);
    // Weeks off, then forty files at once, over the turn of the month; the old files are gone by then.
    for (const name of readdirSync(folder)) rmSync(join(folder, name));
    for (let hour = 12; hour < 52; hour++) put(hour, 3);
    await open().round(next(), new AbortController().signal, true);
    expect((await standing()).map(({ file }) => file).sort()).toEqual([
      'dropped 2025-12',
      'dropped 2025-12',
      'dropped 2026-01',
      'weir-2026-01-01T030000.csv',
    ]);
    // A download of its own, of twelve days, keeps a load that can be taken back.
    const own = put(24 * 14, 24 * 12, () => 0.77);
    await poll();
    expect((await standing()).map(({ file }) => file)).toContain(own);
    expect(await readings()).toBe(expected.size);
    expect(await shown(group)).toEqual(Object.fromEntries(expected));
    expect((await shown(group))[`${iso(begin + 7 * HOUR)}Z`]).toBe('0.91');
    expect((await group.verify()).findings).toEqual([]);
  });

  test('that is not there is said to be missing', async () => {
    const { round, line } = await feeding([{ id: 'dropped', folder: '/nowhere/at/all', station: 'pool' }]);
    await round(MORNING);
    expect(await line()).toMatchObject({
      row: { state: 'failing', tries: 1 },
      answer: expect.stringContaining('/nowhere/at/all'),
    });
  });
});

test('readings that a station sends: each once, one standing load a month', async () => {
  const { feeds, standing, readings, line } = await feeding([]);
  const send = (from: number, count: number) =>
    feeds.push(
      'pool',
      Array.from({ length: count }, (_, i) => ({ at: from + i * HOUR, celsius: 0.1 + i / 100 })),
      'weir token',
      MORNING,
    );
  expect(await send(MORNING - 20 * HOUR, 1)).toMatchObject({ fresh: 1 });
  expect(await send(MORNING - 20 * HOUR, 4)).toMatchObject({ fresh: 3 });
  expect(await send(MORNING - 20 * HOUR, 4)).toMatchObject({ fresh: 0 });
  expect(await send(MORNING - 10 * HOUR, 2)).toMatchObject({ fresh: 2 });
  expect(await send(Date.parse('2025-12-31T22:00Z'), 4)).toMatchObject({ fresh: 4 });
  expect(await readings()).toBe(10);
  expect((await standing()).map(({ file }) => file).sort()).toEqual(['pool 2025-12.csv', 'pool 2026-01.csv']);
  expect(await line()).toMatchObject({
    id: 'push pool',
    row: { state: 'fresh' },
    answer: '4 new readings sent to us.',
  });
  await expect(feeds.push('nowhere', [{ at: MORNING, celsius: 1 }], 'x', MORNING)).rejects.toThrow(
    'feeds-unknown-station',
  );
});
