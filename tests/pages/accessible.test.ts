import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, it, vi } from 'vitest';
import { openOwnGroup } from '../../src/group/index.js';
import { closeEarlierSample } from '../../src/group/sample-earlier.js';
import { sampleWinterDay } from '../../src/group/sample-season.js';
import { ask, sampleFolder, scratchFolder, send, service } from '../http/service.js';
import { follow, LAPTOP, newPage, openBrowser, PHONE } from './browser.js';

/*
 * Every page against WCAG 2.2 AA as axe-core checks it (dequelabs/axe-core, its own rules and thresholds: the oracle
 * is not ours), in both languages, light and dark, on a phone and a laptop.
 */
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

const PAGES = [
  '/',
  '/?sort=next',
  '/?as_of=2026-06-20',
  '/boxes/B1',
  '/boxes/F2',
  '/spells',
  '/boxes/B1/filled',
  '/stations',
  '/stations/upper',
  '/stations/bridge?from=2026-01-01&to=2026-01-20',
  '/downloads',
  '/downloads/layouts',
  '/messages',
  '/messages/mailbox',
  '/survival',
  '/report',
  '/report/funder',
  '/report?season=2024-2025&map=exact',
  '/report/funder?season=2024-2025',
  '/survival?season=2024-2025',
  '/report/permits',
  '/report/next',
  '/hindcast',
  '/lifting',
  '/lifting/outcome',
  '/lifting/sheets/2026-06-03/braid',
  '/tally',
  '/tally/B1',
  '/autumn',
  '/autumn/sites/upper-pool',
  '/autumn/grid?plan=yes',
  '/autumn/sheet',
  '/autumn/earlier',
  '/autumn/entries',
  '/autumn/enter/plant',
  '/autumn/enter/visit',
  '/autumn/enter/strip',
  '/autumn/enter/adult',
  '/autumn/enter/cross',
  '/autumn/enter/find',
  '/autumn/enter/check',
  '/autumn/enter/tally',
  '/autumn/grid',
  '/field',
  '/tables',
  '/tables?left=atlantic-salmon&right=brook-trout',
  '/tables/atlantic-salmon',
  '/editing',
  '/editing/boxes/3',
  '/editing/lots/new',
  '/editing/stations/0',
  '/editing/deployments/0',
  '/editing/loggers/new',
  '/editing/sites/0',
  '/editing/file',
  '/editing/history',
  '/first-visit',
  '/help',
  '/help/numbers',
  '/account',
  '/accounts',
  '/accounts/tokens',
  '/accounts/audit',
  '/calendars',
  '/keeping?check=now',
  '/sign-in',
  '/api/v1',
];

/** Refusals: their pages are read too. */
const REFUSED = ['/nowhere', '/boxes/nowhere', '/stations/nowhere', '/tables/nowhere'];

/** Forms that come back with what is wrong. */
const WRONG: readonly { path: string; fields: readonly (readonly [string, string])[] }[] = [
  { path: '/editing/stations/0', fields: [['latitude', '147']] },
  { path: '/editing/file', fields: [['text', 'group: { name: X, zone: Mars }']] },
  {
    path: '/sign-in',
    fields: [
      ['name', 'Nobody'],
      ['password', 'guess-of-somebody'],
    ],
  },
];

/** Downloads that wait: understood with lines that cannot be used, with a question, refused. */
const WAITING = {
  understood:
    'Date Time (UTC),Temperature (°C)\n2026-02-01 10:00,0.4\n2026-02-01 11:00,ERR\n2026-02-01 12:00,0.5\n',
  asked: 'Date Time (UTC),Temperature (°C)\n03/04/2025 10:00,4.0\n03/04/2025 11:00,4.1\n',
  refused: 'Dear coordinator,\nthe river is high today.\n',
};

let browser: Browser;
let at = '';
let empty = '';
let files: string[] = [];
/** A message as it is read in the browser, as a mail program shows it, and the way out of them. */
let letters: string[] = [];
beforeAll(async () => {
  browser = await openBrowser();
  const folder = await sampleFolder();
  const group = await openOwnGroup(folder);
  await closeEarlierSample(group, 'tests');
  await group.close();
  at = (await service(folder, {}, sampleWinterDay, true)).address;
  files = [];
  for (const [name, text] of Object.entries(WAITING)) {
    const said = await ask(at, `/api/v1/files/${name}.csv`, send('PUT', 'application/octet-stream', text));
    const [file] = Array.isArray(said.body.files) ? said.body.files : [];
    files.push(`/downloads/${file.file}?station=ford`);
  }
  // Messages are written in a round of their own, once the river was judged.
  const written = async () => {
    const { text } = await ask(at, '/messages/mailbox');
    letters = ['letters', 'unsubscribe'].flatMap(
      (kind) => new RegExp(`/${kind}/[\\w-]+`).exec(text)?.[0] ?? [],
    );
    if (letters.length < 2) throw new Error('no message yet');
  };
  await vi.waitFor(written, { timeout: 100_000, interval: 500 });
  empty = (await service(`${scratchFolder()}/empty`)).address;
}, 180_000);

const looks = (['en-CA', 'fr-CA'] as const).flatMap((locale) =>
  [LAPTOP, PHONE].map((viewport) => ({ locale, viewport, wide: viewport.width })),
);

describe('axe finds nothing', () => {
  it.each(looks)(
    '$locale, $wide px, light and dark',
    async ({ locale, viewport }) => {
      const page = await newPage(browser, { locale, viewport });
      const found: string[] = [];
      for (const path of [...PAGES, ...files]) found.push(...(await violations(page, `${at}${path}`)));
      for (const path of ['/first-visit', '/stations', '/downloads', '/editing'])
        found.push(...(await violations(page, `${empty}${path}`)));
      for (const path of letters) found.push(...(await violations(page, `${at}${path}`)));
      for (const path of REFUSED) found.push(...(await violations(page, `${at}${path}`, 404)));
      for (const { path, fields } of WRONG) {
        await page.goto(`${at}${path}`);
        for (const [name, value] of fields) await page.locator(`main [name=${name}]`).first().fill(value);
        await follow(page, page.locator('main form[method=post] button[type=submit]').first());
        await page.waitForSelector('.refusal');
        found.push(...(await violationsHere(page, `refused at ${path}`)));
      }
      expect(found).toEqual([]);
      expect(await page.locator('html').getAttribute('lang')).toBe(locale);
      await page.context().close();
    },
    360_000,
  );
});

async function violations(page: Page, address: string, status = 200): Promise<string[]> {
  // Hindcasts that are being worked out ask to be looked at again: that must not cut this visit short.
  const answered = await page.goto(address).catch(() => page.goto(address));
  // Drawn by its script: without it there is next to nothing to check.
  if (address.endsWith('/field')) await page.waitForSelector('main button');
  expect(answered?.status(), address).toBe(status);
  return violationsHere(page, address);
}

async function violationsHere(page: Page, address: string): Promise<string[]> {
  await page.evaluate(axe);
  const found: string[] = [];
  for (const colorScheme of ['dark', 'light'] as const) {
    await page.emulateMedia({ colorScheme });
    const results = await page.evaluate<AxeResults>(
      `axe.run(document, { runOnly: ${JSON.stringify(RULES)}, resultTypes: ['violations'] })`,
    );
    expect(results.passes.length, address).toBeGreaterThan(5);
    found.push(
      ...results.violations.map(
        ({ id, nodes }) => `${address} ${colorScheme} ${id}: ${nodes[0]?.html.slice(0, 160)}`,
      ),
    );
  }
  const sideways = await page.evaluate<number>('document.documentElement.scrollWidth - innerWidth');
  return [...found, ...(sideways > 0 ? [`${address} is ${sideways} px too wide`] : [])];
}
