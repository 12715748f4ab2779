/// <reference lib="dom" />
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pino } from 'pino';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { serve } from '../src/http/serve.js';
import { readSettings } from '../src/settings/index.js';
import { inventedFolder } from './invented-folder.js';
import { type BenchRow, lessIsBetter, median } from './row.js';

/** What is promised of the pages on the phone. */
const PROMISE = { kilobytes: 150, milliseconds: 1000 };
/** A slow phone: Chromium's own "6x slowdown". */
const SLOWDOWN = 6;
/** Slow 3G: 400 kbit/s each way, 400 ms between a question and its answer. */
const PLAIN_3G = { offline: false, latency: 400, downloadThroughput: 50_000, uploadThroughput: 50_000 };
/** Chromium's own "Slow 3G": each answer comes five times as late. */
const SLOW_3G = { ...PLAIN_3G, latency: 2000 };
const OPENINGS = 5;
const PHONE = { width: 360, height: 740 };

const places = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** How heavy the field pages are, and how soon a slow phone that has them shows them again. */
export async function fieldBench(): Promise<BenchRow[]> {
  const executablePath = process.env.UNDERICE_CHROMIUM ?? places.find((place) => existsSync(place));
  if (executablePath === undefined) {
    console.error(
      'Without Chromium the field pages are not measured: install it with "apt-get install chromium".',
    );
    return [];
  }
  const scratch = mkdtempSync(join(tmpdir(), 'underice-bench-'));
  const folder = join(scratch, 'season');
  await (await inventedFolder(folder, { stations: 10, boxes: 40, readings: 100_000 })).close();
  const { settings } = readSettings({ folder, file: null, env: {}, flags: { port: '0' } });
  const serving = await serve(folder, settings, { log: pino({ level: 'silent' }) });
  const browser = await chromium.launch({
    executablePath,
    args: ['--headless', '--no-sandbox', '--disable-gpu'],
  });
  try {
    const context = await browser.newContext({ viewport: PHONE });
    const weighed = weigh(context);
    const page = await context.newPage();
    await page.goto(`${serving.address}/field`);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
    await page.click('#prepare');
    await page.waitForFunction(() => /\d/.test(document.querySelector('#prepared')?.textContent ?? ''));
    const kilobytes = (await weighed()) / 1000;
    await slowed(page);
    const times: number[] = [];
    for (let i = 0; i < OPENINGS; i++) times.push(await opened(page));
    const first: BenchRow[] = [];
    for (const [line, name] of [
      [PLAIN_3G, 'slow 3G'],
      [SLOW_3G, 'slow 3G, answers five times as late'],
    ] as const) {
      const opening = () => firstOpened(browser, line, `${serving.address}/field`, '#new-plant');
      const took = [await opening(), await opening(), await opening()];
      const bare = await firstOpened(browser, line, `${serving.address}/healthz`, 'body');
      first.push(
        lessIsBetter(`field page opened for the very first time, ${name}, CPU 6x`, median(took), 'ms', {
          name: 'an empty page on the same line',
          value: Math.round(bare),
        }),
      );
    }
    return [
      ...first,
      lessIsBetter('field pages, all of them, unpacked', kilobytes, 'kB', {
        name: 'promised',
        value: PROMISE.kilobytes,
      }),
      lessIsBetter(
        'field page opened on a slow phone (CPU 6x, slow 3G) that has it, 40 boxes prepared',
        median(times),
        'ms',
        { name: 'promised', value: PROMISE.milliseconds },
      ),
    ];
  } finally {
    await browser.close();
    await serving.close();
    rmSync(scratch, { recursive: true, force: true });
  }
}

/** Bytes of everything that came, as the browser unpacked it. */
function weigh(context: BrowserContext): () => Promise<number> {
  const bodies: Promise<number>[] = [];
  context.on('response', (response) => {
    bodies.push(
      response.body().then(
        (body) => body.byteLength,
        () => 0,
      ),
    );
  });
  return async () => (await Promise.all(bodies)).reduce((sum, one) => sum + one, 0);
}

async function slowed(page: Page, line = SLOW_3G): Promise<void> {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN });
  await session.send('Network.enable');
  await session.send('Network.emulateNetworkConditions', line);
}

/** The very first time, with nothing kept: the line is what it waits for, so an empty page stands beside it. */
async function firstOpened(
  browser: Browser,
  line: typeof SLOW_3G,
  address: string,
  shown: string,
): Promise<number> {
  const context = await browser.newContext({ viewport: PHONE });
  const page = await context.newPage();
  await slowed(page, line);
  await page.goto(address, { waitUntil: 'commit' });
  await page.waitForSelector(shown);
  const took = await page.evaluate(() => performance.now());
  await context.close();
  return took;
}

/** From the tap to the first button that can be pressed, milliseconds. */
async function opened(page: Page): Promise<number> {
  await page.reload({ waitUntil: 'commit' });
  await page.waitForSelector('#new-plant');
  return page.evaluate(
    () =>
      new Promise<number>((resolve) => {
        requestAnimationFrame(() => resolve(performance.now()));
      }),
  );
}
