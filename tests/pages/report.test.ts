import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { getDocumentProxy } from 'unpdf';
import { beforeAll, describe, expect, it } from 'vitest';
import { openOwnGroup } from '../../src/group/index.js';
import { closeEarlierSample } from '../../src/group/sample-earlier.js';
import { loadSampleSeason } from '../../src/group/sample-season.js';
import { ask, json, scratchFolder, service, signIn, threeAccounts, visitor } from '../http/service.js';
import { newPage, openBrowser, textOf } from './browser.js';

const CLOSED = '2024-2025';
let browser: Browser;
let at = '';
let folder = '';
beforeAll(async () => {
  folder = join(scratchFolder(), 'season');
  const group = await openOwnGroup(folder);
  await loadSampleSeason(group, 'tests');
  await closeEarlierSample(group, 'tests');
  await group.close();
  at = (await service(folder)).address;
  browser = await openBrowser();
}, 120_000);

/** US Letter less the margins of the print style (14 mm), at 96 points an inch. */
const PAPER = { width: Math.round(8.5 * 96 - (2 * 14 * 96) / 25.4), height: 900 };
const pagesOf = (pdf: Buffer) => pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;

describe('the report printed', () => {
  it.each(['en-CA', 'fr-CA'])(
    'cuts no table and no chart, and a funder’s page is one (%s)',
    async (locale) => {
      const page = await newPage(browser, { locale, viewport: PAPER });
      for (const path of [
        '/report',
        '/report/funder',
        '/report/permits',
        '/survival',
        '/lifting',
        '/lifting/sheets/2026-06-03/braid',
        '/autumn/sheet',
      ]) {
        await page.goto(`${at}${path}?season=${CLOSED}&map=exact`);
        await page.emulateMedia({ media: 'print' });
        const beyond = await page.evaluate(() =>
          [...document.querySelectorAll('table, svg, figure, p, li')]
            .filter((one) => one.getClientRects().length > 0)
            .filter((one) => one.getBoundingClientRect().right > document.documentElement.clientWidth + 1)
            .map((one) => `${one.tagName} ${one.textContent?.slice(0, 40)}`),
        );
        expect(beyond, path).toEqual([]);
        const words = await page.evaluate(() =>
          [...document.querySelectorAll('th')]
            .filter((one) => one.getClientRects().length > 0 && one.scrollWidth > one.clientWidth + 1)
            .map((one) => one.textContent),
        );
        expect(words, path).toEqual([]);
        if (path !== '/report/funder') continue;
        for (const format of ['Letter', 'A4']) expect(pagesOf(await page.pdf({ format }))).toBe(1);
      }
      await page.context().close();
    },
  );
});

describe('a funder’s page is one', () => {
  it.each(['en-CA', 'fr-CA'])('also with twenty sites of 200 letters (%s)', async (locale) => {
    const named = join(scratchFolder(), 'named');
    const group = await openOwnGroup(named);
    const each = (line: (i: number) => string) => Array.from({ length: 20 }, (_, i) => line(i)).join('\n');
    const long = (i: number) => `Site ${i} ${'below the third bend '.repeat(10)}`.slice(0, 200);
    await group.applySeason(
      `group: { name: Invented, zone: UTC }
stations: [{ id: s }]
sites:
${each((i) => `  - { id: s${i}, name: "${long(i)}", station: s }`)}
lots: [{ id: A, fertilised: 2025-11-04 10:00, eggs: 40000, table: atlantic-salmon }]
boxes:
${each((i) => `  - { id: B${i}, site: s${i}, planted: 2025-11-04 17:00, fills: [{ lot: A, eggs: 1000 }] }`)}
${each((i) => `  - { id: C${i}, site: s${i}, planted: 2025-11-04 17:00, fills: [{ lot: A, eggs: 1000 }] }`)}
tallies:
${each((i) => `  - { box: B${i}, when: 2026-06-12, empty: ${500 + i}, dead: ${500 - i}, alive: 0 }`)}
${each((i) => `  - { box: C${i}, when: 2026-06-12, empty: ${600 + i}, dead: ${400 - i}, alive: 0 }`)}`,
      'season.yaml',
      'tests',
    );
    await group.close();
    const there = (await service(named, {}, null)).address;
    const page = await newPage(browser, { locale, viewport: PAPER });
    await page.goto(`${there}/report/funder`);
    for (const format of ['Letter', 'A4']) expect(pagesOf(await page.pdf({ format }))).toBe(1);
    // What is not named is counted.
    expect(await textOf(page.locator('.funder'))).toMatch(
      locale === 'fr-CA' ? /et 19 de plus/ : /and 19 more/,
    );
    await page.context().close();
  });
});

describe('no printed page ends with what belongs to the next', () => {
  it.each(['en-CA', 'fr-CA'])('a heading, or the head of a table (%s)', async (locale) => {
    const page = await newPage(browser, { locale, viewport: PAPER });
    for (const path of ['/report', '/survival']) {
      await page.goto(`${at}${path}?season=${CLOSED}&map=exact`);
      const heads = await page.evaluate(() =>
        [...document.querySelectorAll('h2, h3, thead th, figcaption')].map((one) =>
          (one.textContent ?? '').toLowerCase().replaceAll('\u00a0', ' '),
        ),
      );
      for (const format of ['Letter', 'A4'] as const) {
        const sheets = await linesOf(await page.pdf({ format }));
        expect(sheets.length).toBeGreaterThan(1);
        for (const lines of sheets.slice(0, -1)) {
          const last = lines.at(-1)?.toLowerCase() ?? '';
          expect(heads, `${path} ${format}`).not.toContain(last);
        }
      }
    }
    await page.context().close();
  });
});

/** The text of every page of a PDF, piece by piece, from the top down (read by PDF.js). */
async function linesOf(pdf: Buffer): Promise<string[][]> {
  const document = await getDocumentProxy(new Uint8Array(pdf));
  const sheets: string[][] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const { items } = await (await document.getPage(number)).getTextContent();
    const pieces = items.flatMap((item) =>
      'str' in item && item.str.trim() !== ''
        ? [{ text: item.str.trim().replaceAll('\u00a0', ' '), y: Number(item.transform[5]) }]
        : [],
    );
    sheets.push(pieces.toSorted((a, b) => b.y - a.y).map(({ text }) => text));
  }
  await document.cleanup();
  return sheets;
}

describe('the pages of survival and the report', () => {
  it('show the closed season beside the open one, in both languages', async () => {
    const english = (await ask(at, '/survival?season=2024-2025', { headers: { 'Accept-Language': 'en' } }))
      .text;
    expect(english).toContain(
      'At most 73% of the eggs came out of the box (63% to 82%): 4,410 of 6,000 in 6 boxes.',
    );
    expect(english).toContain('An empty compartment held an egg that left'.toLowerCase().slice(3));
    expect(english).toContain('boxes 70–80%, eggs in the wild about 10% (common practice, no source)');
    expect(english).toContain('Two boxes at one site, or one, cannot tell site from lot');
    const french = (await ask(at, '/survival?season=2024-2025', { headers: { 'Accept-Language': 'fr' } }))
      .text;
    expect(french).toContain('alevin vésiculé');
    expect(french).toContain('Au plus 73\u00a0% des œufs');
    const open = (await ask(at, '/report')).text;
    expect(open).toContain('2025-2026, open');
    expect(open).toContain('This season is not closed');
    expect((await ask(at, '/report?season=1999-2000')).status).toBe(404);
    expect((await ask(at, `/report-files/nothing.csv?season=${CLOSED}`)).status).toBe(404);
  });

  it('give every file, the API the same figures', async () => {
    const file = await ask(at, `/report-files/report.html?season=${CLOSED}&map=coarse`);
    expect(file.headers.get('Content-Disposition')).toContain('attachment');
    expect(file.text).toContain('<style>');
    expect(file.text).not.toContain('<!--underice');
    expect(file.text).not.toMatch(/(?:src|href)="(?:http|\/)/);
    const { body } = await ask(at, `/api/v1/survival?season=${CLOSED}`);
    expect(body).toMatchObject({ season: CLOSED, countingError: expect.closeTo(4.95, 2) });
    expect((await ask(at, `/api/v1/seasons/${CLOSED}/late`)).body).toEqual({ season: CLOSED, changes: [] });
    expect((await ask(at, '/api/v1/seasons/closed')).body.closed).toMatchObject([{ season: CLOSED }]);
    expect((await ask(at, '/api/v1/seasons/next')).status).toBe(409);
  });

  it.each([
    ['the coordinator', { by: ' the coordinator ' }],
    [null, {}],
  ])('where nobody signs in the API closes a season by the name it is given: %s', async (by, body) => {
    const open = (await service(join(scratchFolder(), 'open'))).address;
    const empty = await ask(open, '/report');
    expect(empty.text).toContain('Season without eggs yet');
    expect(empty.text).not.toContain('-: season -');
    const document = {
      group: { name: 'Invented', zone: 'UTC' },
      stations: [{ id: 's' }],
      sites: [{ id: 'bend', station: 's' }],
      lots: [{ id: 'A', fertilised: '2025-11-04 10:00', eggs: 1000, table: 'atlantic-salmon' }],
      boxes: [
        { id: 'B1', site: 'bend', planted: '2025-11-04 17:00', fills: [{ lot: 'A', eggs: 1000 }] },
        { id: 'B2', site: 'bend' },
      ],
      tallies: [{ box: 'B1', when: '2026-06-17', found: 'not-found' }],
    };
    const put = await ask(open, '/api/v1/season', json('PUT', document, { 'If-Match': '"season-0"' }));
    expect(put.status).toBe(200);
    expect((await ask(open, '/')).text).toContain('Nothing can be said of the eggs in one box yet');
    const closed = await ask(open, '/api/v1/seasons/close', json('POST', body));
    expect(closed.body).toMatchObject({ season: '2025-2026', by });
    expect((await ask(open, '/api/v1/seasons/closed')).body.closed).toMatchObject([{ by }]);
    const again = await ask(open, '/api/v1/seasons/close', json('POST', body));
    expect(again.body.detail).toContain(`by ${by ?? 'somebody'}: it is closed once`);
    const report = (await ask(open, '/report')).text;
    if (by === null) expect(report).toMatch(/This season was closed on [^<]*\d: its figures/);
    else expect(report).toContain(`by ${by}: its figures`);
  });

  it('tells nothing of visits that are later than the day looked at', async () => {
    const winter = (await ask(at, '/autumn')).text;
    expect(winter).toContain('20 Jan 2026');
    expect(winter).not.toMatch(/\d (?:Apr|Jun|April|June) 2026, \d|18 April 2026/);
    expect((await ask(at, '/report')).text).toContain('5 visits written down');
  });

  it('only a coordinator closes a season; what is refused is said on the page', async () => {
    const other = join(scratchFolder(), 'season');
    const group = await openOwnGroup(other);
    await group.applySeason(
      `group: { name: Invented, zone: UTC }
stations: [{ id: s }]
sites: [{ id: bend, station: s }]
lots: [{ id: A, fertilised: 2025-11-04 10:00, eggs: 1000, table: atlantic-salmon }]
boxes: [{ id: B1, site: bend, planted: 2025-11-04 17:00, fills: [{ lot: A, eggs: 1000 }] }]`,
      'season.yaml',
      'tests',
    );
    await group.close();
    await threeAccounts(other);
    const there = (await service(other, {}, null)).address;
    const crew = visitor(there, other, await signIn(there, other, 'Crewe'));
    expect((await crew.post('/report/close', {})).status).toBe(403);
    const coral = visitor(there, other, await signIn(there, other, 'Coral'));
    const refused = await coral.post('/report/close', {});
    expect(refused.status).toBe(422);
    expect(refused.text).toContain('no tally at all');
    await coral.post('/boxes/B1/tally', { when: '2026-06-17', found: 'not-found' });
    const tallied = await coral.get('/api/v1/tallies');
    expect(tallied.body.tallies).toHaveLength(1);
    const early = await coral.get('/report/next');
    expect(early.status).toBe(200);
    expect(early.text).toContain('Next season');
    expect(early.text).toContain('Close season 2025-2026 first: the next one takes its place.');
    expect(early.text).toContain('href="/report#close"');
    expect((await coral.get('/')).text).not.toContain('is closed');
    expect((await coral.post('/report/close', {})).status).toBe(303);
    expect((await coral.get('/')).text).toContain(
      'Season 2025-2026 is closed: what came of its eggs stands in its report.',
    );
    expect((await coral.get('/report')).text).toContain('This season was closed on');
    expect((await coral.get('/report/next')).text).toContain('Begin the season after 2025-2026');
    expect((await coral.post('/report/next', {})).status).toBe(303);
    expect((await coral.get('/api/v1/boxes')).body.boxes).toEqual([]);
  });
});
