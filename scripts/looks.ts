/// <reference lib="dom" />
/*
 * Every page in its eight looks (two languages, laptop and phone, light and dark) and in print, as pictures for a person to
 * look at: `npm run looks -- FOLDER [--only /autumn,/field] [--at ADDRESS]`. Run it after `npm run build`; it needs
 * Chromium, and for prints pdftoppm (Debian: apt-get install chromium poppler-utils). Beside the single pictures lies a
 * sheet a page. Without --at it serves the sample season with an earlier one closed in it, on loopback.
 */
import { spawnSync } from 'node:child_process';
import { mkdir, mkdtemp, readdir, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { pino } from 'pino';
import type { Browser, Page } from 'playwright-core';
import sharp from 'sharp';
import { sampleWinterDay } from '../src/group/sample-season.js';
import { serve } from '../src/http/serve.js';
import { readSettings } from '../src/settings/index.js';
import { EMPTY_PAGES, PAGES, REFUSED, WAITING } from './every-page.js';
import { openChromium, sampleSeasons } from './sample.js';

const LAPTOP = { name: 'laptop', size: { width: 1280, height: 800 }, shown: 620 };
const PHONE = { name: 'phone', size: { width: 360, height: 740 }, shown: 300 };
const LOCALES = ['en-CA', 'fr-CA'] as const;
const SCHEMES = ['light', 'dark'] as const;
/** Pages go on below; a picture ends here. */
const LONGEST = 4000;
const SHEET_LONGEST = 1500;

const { values: asked, positionals } = parseArgs({
  allowPositionals: true,
  options: { only: { type: 'string' }, at: { type: 'string' } },
});
const to = positionals[0];
if (to === undefined) throw new Error('State the folder for the pictures: npm run looks -- FOLDER.');

const only = asked.only?.split(',');
const wanted = (path: string) => only === undefined || only.some((start) => path.startsWith(start));
const fileName = (path: string) => path.replace(/^\//, '').replace(/[^\w-]+/g, '_') || 'season';

interface Piece {
  readonly picture: Buffer;
  readonly width: number;
}

/** Pictures of one page beside each other, small. */
async function sheetOf(pieces: readonly Piece[], file: string): Promise<void> {
  const small = await Promise.all(
    pieces.map(async ({ picture, width }) => {
      const { data, info } = await sharp(picture).resize({ width }).toBuffer({ resolveWithObject: true });
      const height = Math.min(info.height, SHEET_LONGEST);
      return {
        width,
        height,
        data: await sharp(data).extract({ left: 0, top: 0, width, height }).png().toBuffer(),
      };
    }),
  );
  const width = small.reduce((sum, one) => sum + one.width + 8, 0);
  const height = Math.max(...small.map((one) => one.height));
  let left = 0;
  const composed = small.map((one) => {
    const at = { input: one.data, left, top: 0 };
    left += one.width + 8;
    return at;
  });
  await sharp({ create: { width, height, channels: 3, background: '#888' } })
    .composite(composed)
    .png({ palette: true })
    .toFile(file);
}

async function pictureOf(page: Page, address: string): Promise<Buffer> {
  // A page that is being worked out asks to be looked at again: that must not cut the visit short.
  await page.goto(address, { waitUntil: 'networkidle' }).catch(() => page.goto(address));
  const height = await page.evaluate<number>('document.documentElement.scrollHeight');
  const { width } = page.viewportSize() ?? LAPTOP.size;
  return page.screenshot({
    fullPage: true,
    clip: { x: 0, y: 0, width, height: Math.min(height, LONGEST) },
  });
}

async function printed(page: Page, address: string, file: string): Promise<void> {
  await page.goto(address, { waitUntil: 'networkidle' }).catch(() => page.goto(address));
  await writeFile(`${file}.pdf`, await page.pdf({ format: 'Letter', preferCSSPageSize: true }));
  spawnSync('pdftoppm', ['-r', '60', '-png', `${file}.pdf`, file]);
}

async function look(browser: Browser, at: string, path: string, folder: string): Promise<void> {
  const name = fileName(path);
  const pieces = new Map<string, Piece>();
  for (const locale of LOCALES) {
    for (const { name: device, size, shown } of [LAPTOP, PHONE]) {
      for (const colorScheme of SCHEMES) {
        const context = await browser.newContext({ viewport: size, locale, colorScheme });
        const page = await context.newPage();
        const picture = await pictureOf(page, `${at}${path}`);
        const key = `${device}-${locale.slice(0, 2)}-${colorScheme}`;
        await sharp(picture)
          .png({ palette: true })
          .toFile(join(folder, `${name}-${key}.png`));
        pieces.set(key, { picture, width: shown });
        if (device === 'laptop' && colorScheme === 'light')
          await printed(page, `${at}${path}`, join(folder, `${name}-print-${locale.slice(0, 2)}`));
        await context.close();
      }
    }
  }
  const of = (keys: readonly string[]) => keys.flatMap((key) => pieces.get(key) ?? []);
  await sheetOf(
    of(['laptop-en-light', 'laptop-fr-dark', 'phone-fr-light', 'phone-en-dark']),
    join(folder, `sheet-${name}-1.png`),
  );
  await sheetOf(
    of(['laptop-fr-light', 'laptop-en-dark', 'phone-en-light', 'phone-fr-dark']),
    join(folder, `sheet-${name}-2.png`),
  );
  const prints = (await readdir(folder)).filter(
    (file) => file.startsWith(`${name}-print-`) && file.endsWith('.png'),
  );
  const first = ['en', 'fr'].flatMap((language) =>
    prints.filter((file) => file.startsWith(`${name}-print-${language}`)).slice(0, 2),
  );
  if (first.length === 0) return;
  const sheets = await Promise.all(
    first.map(async (file) => ({ picture: await sharp(join(folder, file)).toBuffer(), width: 460 })),
  );
  await sheetOf(sheets, join(folder, `sheet-${name}-print.png`));
}

/** What waits to be accepted, as their pages' addresses. */
async function waiting(at: string): Promise<string[]> {
  const paths: string[] = [];
  for (const [name, text] of Object.entries(WAITING)) {
    const sent = await fetch(`${at}/api/v1/files/${name}.csv`, {
      method: 'PUT',
      body: text,
      headers: { 'Content-Type': 'application/octet-stream' },
    });
    const { files }: { files: { file: string }[] } = JSON.parse(await sent.text());
    for (const { file } of files) paths.push(`/downloads/${file}?station=ford`);
  }
  return paths;
}

const scratch = await mkdtemp(join(tmpdir(), 'underice-looks-'));
await mkdir(to, { recursive: true });
const browser = await openChromium();

async function served(folder: string, at: number): Promise<Awaited<ReturnType<typeof serve>>> {
  const { settings } = readSettings({ folder, file: null, env: {}, flags: { port: '0' } });
  return serve(folder, settings, { standingAt: at, mailbox: true, log: pino({ level: 'silent' }) });
}

try {
  if (asked.at !== undefined) {
    for (const path of only ?? PAGES) await look(browser, asked.at, path, to);
  } else {
    const folder = join(scratch, 'season');
    await sampleSeasons(folder);
    const sample = await served(folder, sampleWinterDay);
    const empty = await served(join(scratch, 'empty'), sampleWinterDay);
    try {
      const paths = [...PAGES, ...REFUSED, ...(wanted('/downloads/') ? await waiting(sample.address) : [])];
      for (const path of paths.filter(wanted)) await look(browser, sample.address, path, to);
      if (only === undefined) {
        const bare = join(to, 'empty');
        await mkdir(bare, { recursive: true });
        for (const path of EMPTY_PAGES) await look(browser, empty.address, path, bare);
      }
    } finally {
      await sample.close();
      await empty.close();
    }
  }
} finally {
  await browser.close();
  await rm(scratch, { recursive: true, force: true });
}
