/// <reference lib="dom" />
/*
 * Draws the pictures of the README: the sample season's pages as Chromium shows them, into docs/pictures. Run it after
 * `npm run build`, with `npm run pictures`; it needs Chromium (Debian: apt-get install chromium).
 */
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import type { Browser, Page } from 'playwright-core';
import sharp from 'sharp';
import { SAMPLE_DATES } from '../sample-logs/plan.js';
import { openOwnGroup } from '../src/group/index.js';
import { sampleWinterDay } from '../src/group/sample-season.js';
import { serve } from '../src/http/serve.js';
import { enterTally } from '../src/lifting/index.js';
import { readSettings } from '../src/settings/index.js';
import { openChromium, sampleSeasons, WHO } from './sample.js';

interface Picture {
  readonly name: string;
  readonly path: string;
  readonly size: { readonly width: number; readonly height: number };
  readonly locale: 'en-CA' | 'fr-CA';
  readonly colorScheme: 'light' | 'dark';
  /** The day the season is shown at: deep winter, or the summer after it, its boxes counted. */
  readonly when?: 'counted';
  /** What a person does on the page before it is drawn. */
  readonly first?: (page: Page) => Promise<void>;
}

const LAPTOP = { width: 1280, height: 720 };
const PHONE = { width: 360, height: 740 };

/** Prepared for the day, then up to the screen where transport and site water are typed. */
async function planting(page: Page): Promise<void> {
  await page.click('#prepare');
  await page.waitForFunction(() => /\d/.test(document.querySelector('#prepared')?.textContent ?? ''));
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
  {
    name: 'survival',
    path: '/survival?season=2024-2025',
    size: { width: 1000, height: 1000 },
    locale: 'en-CA',
    colorScheme: 'light',
    when: 'counted',
  },
  {
    name: 'report',
    path: '/report?season=2024-2025',
    size: { width: 1000, height: 1000 },
    locale: 'en-CA',
    colorScheme: 'light',
    when: 'counted',
  },
  {
    name: 'bilan',
    path: '/report/funder',
    size: { width: 1000, height: 1000 },
    locale: 'fr-CA',
    colorScheme: 'light',
    when: 'counted',
  },
];

/** What the sample season's boxes are given as counts, so that it stands beside the closed one: invented. */
const COUNTED = { U1: 714, U2: 688, F1: 602, F2: 455, B1: 574, A1: 806 } as const;
const COUNTED_ON = '2026-06-16';

async function draw(browser: Browser, at: string, to: string, drawn: readonly Picture[]): Promise<void> {
  for (const { name, path, size, locale, colorScheme, first } of drawn) {
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

const scratch = await mkdtemp(join(tmpdir(), 'underice-pictures-'));
const to = join(process.cwd(), 'docs/pictures');
await mkdir(to, { recursive: true });
const folder = join(scratch, 'season');
await sampleSeasons(folder);
const browser = await openChromium();

/** The season's pages as they stood on a day. */
async function drawnAt(day: number, drawn: readonly Picture[]): Promise<void> {
  const { settings } = readSettings({ folder, file: null, env: {}, flags: { port: '0' } });
  const serving = await serve(folder, settings, { standingAt: day, log: pino({ level: 'silent' }) });
  try {
    await draw(browser, serving.address, to, drawn);
  } finally {
    await serving.close();
  }
}

try {
  await drawnAt(
    sampleWinterDay,
    pictures.filter(({ when }) => when === undefined),
  );
  const counting = await openOwnGroup(folder);
  for (const [box, empty] of Object.entries(COUNTED)) {
    const eggs = (await counting.season()).boxes
      .find(({ id }) => id === box)
      ?.fills.reduce((sum, fill) => sum + fill.eggs, 0);
    if (eggs === undefined) throw new Error(`The sample season has no box ${box}.`);
    const tally = { box, when: COUNTED_ON, empty, dead: eggs - empty, alive: 0, counter: 'first counter' };
    await enterTally(counting, tally, WHO);
  }
  await counting.close();
  await drawnAt(
    Date.parse(`${SAMPLE_DATES[1]}T00:00Z`) / 86_400_000,
    pictures.filter(({ when }) => when === 'counted'),
  );
} finally {
  await browser.close();
  await rm(scratch, { recursive: true, force: true });
}
