/*
 * Draws the pictures of the README: the sample season's pages as Chromium shows them, into docs/pictures. Run it after
 * `npm run build`, with `npm run pictures`; it needs Chromium (Debian: apt-get install chromium).
 */
import { existsSync } from 'node:fs';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import { type Browser, chromium } from 'playwright-core';
import { openOwnGroup } from '../src/group/index.js';
import { loadSampleSeason, sampleWinterDay } from '../src/group/sample-season.js';
import { serve } from '../src/http/serve.js';
import { readSettings } from '../src/settings/index.js';

interface Picture {
  readonly name: string;
  readonly path: string;
  readonly width: number;
  readonly height: number;
  readonly locale: 'en-CA' | 'fr-CA';
  readonly colorScheme: 'light' | 'dark';
}

const pictures: readonly Picture[] = [
  { name: 'season', path: '/', width: 1280, height: 800, locale: 'en-CA', colorScheme: 'light' },
  { name: 'saison-telephone', path: '/', width: 360, height: 740, locale: 'fr-CA', colorScheme: 'dark' },
  { name: 'box', path: '/boxes/B1', width: 1000, height: 1100, locale: 'en-CA', colorScheme: 'light' },
  {
    name: 'station',
    path: '/stations/weir',
    width: 1000,
    height: 760,
    locale: 'en-CA',
    colorScheme: 'light',
  },
];

const places = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

async function draw(browser: Browser, at: string, to: string): Promise<void> {
  for (const { name, path, width, height, locale, colorScheme } of pictures) {
    const page = await browser.newPage({ viewport: { width, height }, locale, colorScheme });
    await page.goto(`${at}${path}`, { waitUntil: 'networkidle' });
    await page.screenshot({ path: join(to, `${name}.png`) });
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
