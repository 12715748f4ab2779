import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { openOwnGroup } from '../../src/group/index.js';
import { closeEarlierSample } from '../../src/group/sample-earlier.js';
import { sampleWinterDay } from '../../src/group/sample-season.js';
import { sampleFolder, scratchFolder, service } from '../http/service.js';
import { LAPTOP, newPage, openBrowser, PHONE } from './browser.js';

/*
 * Every page against WCAG 2.2 AA as axe-core checks it (dequelabs/axe-core, its own rules and thresholds: the oracle
 * is not ours), in both languages, light and dark, on a phone and a laptop.
 */
const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const RULES = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

const PAGES = [
  '/',
  '/?sort=next',
  '/boxes/F2',
  '/spells',
  '/boxes/B1/filled',
  '/stations',
  '/stations/upper',
  '/downloads',
  '/messages',
  '/messages/mailbox',
  '/survival',
  '/report',
  '/report/funder',
  '/report?season=2024-2025&map=exact',
  '/report/funder?season=2024-2025',
  '/survival?season=2024-2025',
  '/report/permits',
  '/hindcast',
  '/lifting',
  '/lifting/outcome',
  '/lifting/sheets/2026-06-03/braid',
  '/tally',
  '/tally/B1',
  '/autumn',
  '/autumn/grid?plan=yes',
  '/autumn/sheet',
  '/autumn/earlier',
  '/autumn/entries',
  '/autumn/enter/plant',
  '/autumn/enter/visit',
  '/autumn/enter/strip',
  '/autumn/grid',
  '/field',
  '/tables',
  '/tables?left=atlantic-salmon&right=brook-trout',
  '/tables/atlantic-salmon',
  '/editing',
  '/editing/boxes/3',
  '/editing/lots/new',
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
  '/sign-in',
];

let browser: Browser;
let at = '';
let empty = '';
beforeAll(async () => {
  browser = await openBrowser();
  const folder = await sampleFolder();
  const group = await openOwnGroup(folder);
  await closeEarlierSample(group, 'tests');
  await group.close();
  at = (await service(folder, {}, sampleWinterDay, true)).address;
  empty = (await service(`${scratchFolder()}/empty`)).address;
}, 120_000);

/** Every pair of language, scheme and width; all eight together say nothing that these four do not. */
const looks = (
  [
    ['en-CA', 'light', LAPTOP],
    ['en-CA', 'dark', PHONE],
    ['fr-CA', 'light', PHONE],
    ['fr-CA', 'dark', LAPTOP],
  ] as const
).map(([locale, colorScheme, viewport]) => ({ locale, colorScheme, viewport, wide: viewport.width }));

describe('axe finds nothing', () => {
  it.each(looks)(
    '$locale, $colorScheme, $wide px',
    async ({ locale, colorScheme, viewport }) => {
      const page = await newPage(browser, { locale, colorScheme, viewport });
      const found: string[] = [];
      for (const path of PAGES) found.push(...(await violations(page, `${at}${path}`)));
      found.push(...(await violations(page, `${empty}/first-visit`)));
      expect(found).toEqual([]);
      expect(await page.locator('html').getAttribute('lang')).toBe(locale);
      await page.context().close();
    },
    180_000,
  );
});

async function violations(page: Page, address: string): Promise<string[]> {
  const answered = await page.goto(address);
  // Drawn by its script: without it there is next to nothing to check.
  if (address.endsWith('/field')) await page.waitForSelector('main button');
  expect(answered?.status(), address).toBe(200);
  await page.evaluate(axe);
  const results = await page.evaluate<AxeResults>(
    `axe.run(document, { runOnly: ${JSON.stringify(RULES)}, resultTypes: ['violations'] })`,
  );
  expect(results.passes.length, address).toBeGreaterThan(5);
  const sideways = await page.evaluate<number>('document.documentElement.scrollWidth - innerWidth');
  return [
    ...results.violations.map(({ id, nodes }) => `${address} ${id}: ${nodes[0]?.html.slice(0, 160)}`),
    ...(sideways > 0 ? [`${address} is ${sideways} px too wide`] : []),
  ];
}
