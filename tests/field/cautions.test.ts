import { join } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { shippedTables } from '../../forecasting/index.js';
import { handling } from '../../src/autumn/index.js';
import { entryCautions, preparedDay } from '../../src/field/index.js';
import type { PreparedLot } from '../../src/field/prepared.js';
import { openOwnGroup } from '../../src/group/index.js';
import { plantingWords } from '../../src/pages/client/field/checks.js';
import { readSeason, renderSeason, seasonFrom } from '../../src/season/index.js';
import { say } from '../../src/words/index.js';
import { ask, json, type Said, scratchFolder, send, service } from '../http/service.js';

/* What a person hears before eggs go in, by each way they can be entered. */
const HOUR = 3_600_000;
const now = Date.now();
const wall = (at: number) => new Date(at).toISOString().slice(0, 16).replace('T', ' ');
const written = {
  group: { name: 'Brumelore', zone: 'UTC' },
  stations: [{ id: 'pool' }],
  sites: [{ id: 'bend', station: 'pool' }],
  lots: [
    { id: 'fresh', fertilised: wall(now - 6 * HOUR), eggs: 2500, table: 'atlantic-salmon' },
    { id: 'old', fertilised: wall(now - 240 * HOUR), eggs: 2500, table: 'atlantic-salmon' },
  ],
  boxes: [
    { id: 'E1', site: 'bend', compartments: 1000 },
    { id: 'E2', site: 'bend', compartments: 1000 },
    { id: 'E3', site: 'bend', compartments: 1000 },
  ],
};

let at = '';
beforeAll(async () => {
  const folder = join(scratchFolder(), 'season');
  const group = await openOwnGroup(folder);
  await group.applySeason(renderSeason(seasonFrom(written, 'test')), 'test', 'tests');
  await group.close();
  at = (await service(folder, {}, null)).address;
}, 60_000);

const headers = { Cookie: 'underice_visit=0123456789abcdef', 'Sec-Fetch-Site': 'same-origin' };
const desk = {
  get: (path: string) => ask(at, path, { headers }),
  /** Posts the form of a page, with the csrf field the page gave. */
  async post(path: string, fields: Record<string, string>, to = path): Promise<Said> {
    const csrf = /name="csrf" value="([^"]+)"/.exec((await this.get(path)).text)?.[1] ?? '';
    const body = new URLSearchParams({ csrf, ...fields }).toString();
    return ask(at, to, send('POST', 'application/x-www-form-urlencoded', body, headers));
  },
};

const season = async () => (await ask(at, '/api/v1/season')).text;

describe('a planting', () => {
  test('by the API: what is to be heard comes with the answer, in the language asked for', async () => {
    const entry = (id: string, lot: string, transportC: string, siteC: string) => ({
      id,
      kind: 'plant',
      entered: new Date(now).toISOString(),
      fields: { site: 'bend', box: id, lot, eggs: '100', transportC, siteC },
    });
    const entries = [
      entry('calm-box', 'fresh', '6', '6'),
      entry('warm-box', 'fresh', '8', '5'),
      entry('cold-box', 'fresh', '3', '2'),
      entry('late-box', 'old', '6', '6'),
    ];
    const said = await ask(at, '/api/v1/entries', {
      ...json('POST', { now: new Date(now).toISOString(), entries }),
      headers: { 'Content-Type': 'application/json', 'Accept-Language': 'fr' },
    });
    const heard = Array.isArray(said.body.entries) ? said.body.entries.map(({ cautions }) => cautions) : [];
    expect(said.status).toBe(200);
    expect(heard[0]).toEqual([]);
    expect(heard[1]).toEqual([expect.stringContaining('plus de 2,0\u00a0°C d’écart')]);
    expect(heard[2]).toEqual([expect.stringContaining('Le site est à 2,0\u00a0°C')]);
    expect(heard[3]).toEqual([expect.stringContaining('ne le déplacez pas')]);
  });

  test('at the desk: said once before it is kept, then kept as it is', async () => {
    const fields = {
      entry: 'desk-entry-1',
      site: 'bend',
      box: 'D1',
      lot: 'fresh',
      eggs: '50',
      transportC: '9,5',
      siteC: '4,5',
    };
    const first = await desk.post('/autumn/enter/plant', fields);
    expect(first.status).toBe(200);
    expect(first.text).toContain('The transport water is at 9.5\u00a0°C and the site at 4.5\u00a0°C');
    expect(first.text).toContain('value="D1"');
    expect(await season()).not.toContain('D1');
    const heard = /name="heard" value="([^"]*)"/.exec(first.text)?.[1] ?? '';
    const second = await desk.post('/autumn/enter/plant', { ...fields, heard });
    expect(second.status).toBe(303);
    expect(await season()).toContain('D1');
  });

  test('in the grid: the eggs that are nowhere yet fill the empty boxes, none lost and none made', async () => {
    const { text } = await desk.get('/autumn/grid?plan=yes');
    const values = (name: string) =>
      [...text.matchAll(new RegExp(`<input name="${name}"[^>]*? value="([^"]+)"`, 'g'))].map(
        ([, value]) => value,
      );
    expect(values('box')).toEqual(['E1', 'E2', 'E3', 'E3']);
    expect(values('lot')).toEqual(['fresh', 'fresh', 'fresh', 'old']);
    // 2,500 less the 300 and 50 planted above: 2,150 in E1, E2 and part of E3, which the old lot fills up.
    expect(values('eggs')).toEqual(['1000', '1000', '150', '850']);
  });
});

describe('the grid', () => {
  test('says what is to be heard once before anything is kept, then keeps it as it is', async () => {
    const row = { row: 'grid-row-1', site: 'bend', box: 'G1', lot: 'fresh', eggs: '50', transportC: '9,5' };
    const fields = { ...row, siteC: '4,5' };
    const first = await desk.post('/autumn/grid', fields, '/autumn/enter/grid');
    expect(first.status).toBe(200);
    expect(first.text).toContain('The transport water is at 9.5\u00a0°C and the site at 4.5\u00a0°C');
    expect(first.text).toContain('value="G1"');
    expect(await season()).not.toContain('G1');
    const heard = /name="heard" value="([^"]+)"/.exec(first.text)?.[1] ?? '';
    // What was heard of another box does not count.
    const other = await desk.post('/autumn/grid', { ...fields, box: 'G2', heard }, '/autumn/enter/grid');
    expect(other.status).toBe(200);
    const second = await desk.post('/autumn/grid', { ...fields, heard }, '/autumn/enter/grid');
    expect(second.status).toBe(303);
    expect(await season()).toContain('G1');
    expect(await season()).not.toContain('G2');
  });

  test('a lot in no box and a box that holds no eggs are said on the autumn’s page, in both languages', async () => {
    const said = await ask(at, '/api/v1/season');
    const idle = { id: 'idle', fertilised: wall(now - HOUR), eggs: 10, table: 'atlantic-salmon' };
    const lots = Array.isArray(said.body.lots) ? [...said.body.lots, idle] : [idle];
    const tag = { 'If-Match': said.headers.get('ETag') ?? '' };
    expect((await ask(at, '/api/v1/season', json('PUT', { ...said.body, lots }, tag))).status).toBe(200);
    const { text } = await desk.get('/autumn');
    expect(text).toContain('Lot idle is in no box yet.');
    expect(text).toContain('Box E1 holds no eggs yet.');
    const french = await ask(at, '/autumn', { headers: { ...headers, 'Accept-Language': 'fr' } });
    expect(french.text).toContain('L’incubateur E1 ne contient pas encore d’œufs.');
  });
});

describe('on the phone, without network', () => {
  test('the same is heard as at the desk', async () => {
    const folder = join(scratchFolder(), 'season');
    const group = await openOwnGroup(folder);
    await group.applySeason(renderSeason(seasonFrom(written, 'test')), 'test', 'tests');
    const { lots } = await preparedDay(group);
    await group.close();
    const [fresh, old] = lots;
    const heard = (lot: PreparedLot | undefined, transport: string, site: string, hours = 0) =>
      plantingWords(lot, transport, site, now + hours * HOUR);
    expect(heard(fresh, '6', '6')).toEqual([]);
    expect(heard(fresh, '8,5', '6')).toEqual(['temper-now']);
    expect(heard(fresh, '3', '3,5')).toEqual(['cold-start']);
    expect(heard(old, '6', '6')).toEqual(['must-not-handle']);
    expect(heard(undefined, '', '')).toEqual([]);
    const table = shippedTables.find(({ id }) => id === 'atlantic-salmon');
    if (table === undefined) throw new Error('no such table');
    const { hoursLeft } = handling(table, 6, 6);
    expect(heard(fresh, '6', '6', hoursLeft - 12)).toEqual(['handle-soon']);
    expect(heard(fresh, '6', '6', hoursLeft + 12)).toEqual(['must-not-handle']);
  });
});

test('a logger whose memory does not last to the lifting is warned of where it is put in', () => {
  const season = readSeason(
    `group: { name: Tallowmere, zone: America/Halifax }
stations:
  - { id: upper, latitude: 46.1, longitude: -66.2 }
sites:
  - { id: bend, station: upper }
loggers:
  - { id: L1, memory: 43000, interval: 5 }
  - { id: L2, memory: 43000, interval: 15 }
  - { id: L3 }
`,
    'season.yaml',
  );
  const heard = (rows: readonly unknown[]) =>
    entryCautions(season, [], {
      kind: 'visit',
      entered: '2025-11-04T15:00:00Z',
      fields: { site: 'bend', when: '2025-10-28 12:00', loggers: rows },
    });
  const row = { did: 'in', logger: 'L1', station: '', lay: 'in-box', box: '' };
  // 43,000 readings at one every 5 minutes are 149.3 days: 26 March; boxes come out by 15 July at the latest (ours).
  const [one, ...others] = heard([row]);
  expect(others).toEqual([]);
  expect(one).toMatchObject({
    code: 'autumn-logger-full',
    with: { logger: 'L1', memory: 43_000, interval: 5 },
  });
  expect(one === undefined ? '' : say('en', one)).toContain(
    'full on 26 March 2026, before the lifting (15 July 2026)',
  );
  expect(one === undefined ? '' : say('fr', one)).toContain(
    'pleine le 26 mars 2026, avant la levée (15 juillet 2026)',
  );
  // Long enough; nobody knows; on the bank; only read: nothing.
  for (const other of [
    { ...row, logger: 'L2' },
    { ...row, logger: 'L3' },
    { ...row, lay: 'bank' },
    { ...row, did: 'read' },
    'no row',
  ])
    expect(heard([other])).toEqual([]);
});
