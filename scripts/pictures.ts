/// <reference lib="dom" />
/*
 * Draws the pictures of the README: the sample season's pages as Chromium shows them, into docs/pictures. Run it after
 * `npm run build`, with `npm run pictures`; it needs Chromium (Debian: apt-get install chromium).
 */
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import { type Browser, chromium, type Page } from 'playwright-core';
import sharp from 'sharp';
import { openOwnGroup } from '../src/group/index.js';
import { loadSampleSeason, sampleWinterDay } from '../src/group/sample-season.js';
import { serve } from '../src/http/serve.js';
import { readSettings } from '../src/settings/index.js';

interface Picture {
  readonly name: string;
  readonly path: string;
  readonly size: { readonly width: number; readonly height: number };
  readonly locale: 'en-CA' | 'fr-CA';
  readonly colorScheme: 'light' | 'dark';
  /** What a person does on the page before it is drawn. */
  readonly first?: (page: Page) => Promise<void>;
}

const LAPTOP = { width: 1280, height: 720 };
const PHONE = { width: 360, height: 740 };

/** Prepared for the day, then up to the screen where transport and site water are typed. */
async function planting(page: Page): Promise<void> {
  await page.click('#prepare');
  await page.waitForFunction(() => /20\d\d/.test(document.querySelector('#prepared')?.textContent ?? ''));
  await page.click('#new-plant');
  await page.check('#q-site input[value="braid"]');
  await page.click('#next');
  await page.fill('#q-box input[type=text]', 'B2');
  await page.click('#next');
  await page.check('#q-lot input[value="A"]');
  await page.fill('#q-eggs input', '650');
  await page.click('#next');
  await page.fill('#q-transportC input', '8,5');
  await page.fill('#q-siteC input', '5');
}

const pictures: readonly Picture[] = [
  { name: 'season', path: '/', size: LAPTOP, locale: 'en-CA', colorScheme: 'light' },
  { name: 'saison-telephone', path: '/', size: PHONE, locale: 'fr-CA', colorScheme: 'dark' },
  {
    name: 'box',
    path: '/boxes/B1',
    size: { width: 1000, height: 1000 },
    locale: 'en-CA',
    colorScheme: 'light',
  },
  { name: 'lifting', path: '/lifting', size: LAPTOP, locale: 'en-CA', colorScheme: 'light' },
  { name: 'autumn', path: '/autumn', size: LAPTOP, locale: 'en-CA', colorScheme: 'light' },
  { name: 'automne', path: '/autumn', size: LAPTOP, locale: 'fr-CA', colorScheme: 'light' },
  { name: 'field', path: '/field', size: PHONE, locale: 'en-CA', colorScheme: 'light', first: planting },
  { name: 'terrain', path: '/field', size: PHONE, locale: 'fr-CA', colorScheme: 'light', first: planting },
];

const places = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

async function draw(browser: Browser, at: string, to: string): Promise<void> {
  for (const { name, path, size, locale, colorScheme, first } of pictures) {
    const page = await browser.newPage({ viewport: size, locale, colorScheme });
    await page.goto(`${at}${path}`, { waitUntil: 'networkidle' });
    await first?.(page);
    // A few colours: a picture of a page needs no more, and the checkout stays small.
    await sharp(await page.screenshot())
      .png({ palette: true, colours: 96, effort: 10 })
      .toFile(join(to, `${name}.png`));
    await page.close();
  }
}

const executablePath = process.env.UNDERICE_CHROMIUM ?? places.find((place) => existsSync(place));
if (executablePath === undefined)
  throw new Error('Pictures need Chromium: install it with "apt-get install chromium".');
const scratch = await mkdtemp(join(tmpdir(), 'underice-pictures-'));
const to = join(process.cwd(), 'docs/pictures');
await mkdir(to, { recursive: true });
const folder = join(scratch, 'season');
const group = await openOwnGroup(folder);
await loadSampleSeason(group, 'pictures');
await group.close();
const { settings } = readSettings({ folder, file: null, env: {}, flags: { port: '0' } });
const serving = await serve(folder, settings, {
  standingAt: sampleWinterDay,
  log: pino({ level: 'silent' }),
});
const browser = await chromium.launch({
  executablePath,
  args: ['--headless', '--no-sandbox', '--disable-gpu'],
});
try {
  await draw(browser, serving.address, to);
} finally {
  await browser.close();
  await serving.close();
  await rm(scratch, { recursive: true, force: true });
}
