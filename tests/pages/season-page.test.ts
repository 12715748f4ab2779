import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { sampleFolder, service } from '../http/service.js';
import { answer, follow, newPage, openBrowser, PHONE, textOf } from './browser.js';

let browser: Browser;
let at = '';
beforeAll(async () => {
  browser = await openBrowser();
  at = (await service(await sampleFolder())).address;
}, 120_000);

const BOXES = ['U1', 'U2', 'F1', 'F2', 'B1', 'A1'];

/** The lowest point of what a person came for: the windows of the last box. */
async function lowest(page: Page): Promise<number> {
  const last = await page.locator('.boxes .strip').last().boundingBox();
  return (last?.y ?? Number.NaN) + (last?.height ?? Number.NaN);
}

describe('the season at a glance', () => {
  it('says the answer in words and shows six boxes without scrolling on a phone of 360 px', async () => {
    const page = await newPage(browser, { viewport: PHONE });
    await page.goto(at);
    expect(await answer(page)).toMatch(
      /^Eggs in \d of 6 boxes have probably eyed up\. Hatch is expected between /,
    );
    expect(await page.locator('.boxes .name').allInnerTexts()).toEqual(BOXES);
    expect(await lowest(page)).toBeLessThanOrEqual(PHONE.height);
    await page.context().close();
  });

  it.each(['', '?as_of=2026-06-20', '?as_of=2025-12-20'])(
    'names no two months on one another, and none over the edge, on a phone in French (%s)',
    async (asked) => {
      const page = await newPage(browser, { viewport: PHONE, locale: 'fr-CA' });
      await page.goto(`${at}/${asked}`);
      const names = await page.locator('.months text').all();
      const boxes = (await Promise.all(names.map((name) => name.boundingBox())))
        .flatMap((box) => (box === null ? [] : [box]))
        .sort((a, b) => a.x - b.x);
      expect(boxes.length).toBeGreaterThanOrEqual(3);
      for (const [i, { x, width }] of boxes.entries()) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x + width).toBeLessThanOrEqual(boxes[i + 1]?.x ?? PHONE.width);
      }
      await page.context().close();
    },
  );

  it('leads everywhere from a button on a phone, by keyboard too, and by a row of places on a laptop', async () => {
    const page = await newPage(browser, { viewport: PHONE });
    await page.goto(at);
    const links = page.locator('#places a');
    expect(await links.first().isVisible()).toBe(false);
    expect(await textOf(page.locator('.bar .here'))).toBe('Season');
    await page.locator('.bar .menu').focus();
    await page.keyboard.press('Enter');
    for (const link of await links.all()) {
      const box = await link.boundingBox();
      expect(box === null ? -1 : box.x).toBeGreaterThanOrEqual(0);
      expect((box?.x ?? 999) + (box?.width ?? 0)).toBeLessThanOrEqual(PHONE.width);
      expect((box?.y ?? 9999) + (box?.height ?? 0)).toBeLessThanOrEqual(PHONE.height);
      expect(box?.height).toBeGreaterThanOrEqual(24);
    }
    await page.keyboard.press('Escape');
    await links.first().waitFor({ state: 'hidden' });
    await page.locator('.bar .menu').click();
    await follow(page, page.getByRole('link', { name: 'Stations' }));
    expect(await textOf(page.locator('.bar .here'))).toBe('Stations');
    await page.context().close();
    const wide = await newPage(browser);
    await wide.goto(at);
    expect(await wide.locator('.bar .menu').isVisible()).toBe(false);
    expect(await wide.locator('#places a').last().isVisible()).toBe(true);
    await wide.context().close();
  });

  it('says it in French to a French browser, and keeps the language a person chooses', async () => {
    const page = await newPage(browser, { locale: 'fr-CA' });
    await page.goto(at);
    expect(await answer(page)).toMatch(/œillés.*L’éclosion est attendue entre le /);
    await follow(page, page.locator('a.language'));
    expect(await answer(page)).toContain('Hatch is expected');
    await page.goto(`${at}/stations`);
    expect(await page.locator('html').getAttribute('lang')).toBe('en-CA');
    await page.context().close();
  });

  it('reads the same without any script, charts included', async () => {
    const page = await newPage(browser, { javaScriptEnabled: false });
    await page.goto(at);
    expect(await page.locator('.boxes .strip').count()).toBe(6);
    await follow(page, page.getByRole('link', { name: 'B1' }).first());
    expect(await page.locator('figure svg').count()).toBeGreaterThanOrEqual(3);
    expect(await page.locator('.cautions li').count()).toBe(3);
    await page.goto(`${at}/stations/upper`);
    expect(await page.locator('figure svg').count()).toBe(1);
    await page.context().close();
  });

  it('loads less than 60 KB of style and script', async () => {
    const page = await newPage(browser);
    let bytes = 0;
    page.on('response', async (response) => {
      if (/\.(css|js)/.test(response.url())) bytes += (await response.body()).byteLength;
    });
    await page.goto(at, { waitUntil: 'networkidle' });
    expect(bytes).toBeGreaterThan(1000);
    expect(bytes).toBeLessThan(60_000);
    await page.context().close();
  });

  it('is walked by keyboard: past the navigation, into a box, and back', async () => {
    const page = await newPage(browser);
    await page.goto(at);
    await page.keyboard.press('Tab');
    expect(await page.evaluate<string>('document.activeElement.className')).toBe('skip');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Tab');
    expect(await page.evaluate<string>('document.activeElement.textContent')).toBe('U1');
    await page.keyboard.press('Enter');
    await page.waitForURL('**/boxes/U1');
    expect(await answer(page)).toContain('1,000 eggs');
    await page.context().close();
  });

  it.each([
    ['A4', 718],
    ['Letter', 739],
  ])('prints on %s with nothing cut and the cautions on it', async (format, width) => {
    const page = await newPage(browser, { viewport: { width, height: 1000 } });
    await page.goto(at);
    await page.emulateMedia({ media: 'print' });
    expect(
      await page.evaluate<number>('document.documentElement.scrollWidth - innerWidth'),
    ).toBeLessThanOrEqual(0);
    for (const box of BOXES)
      expect(await page.getByText(box, { exact: true }).first().isVisible()).toBe(true);
    expect(await page.locator('.cautions').isVisible()).toBe(true);
    expect(await page.locator('.bar').isVisible()).toBe(false);
    const sheet = (await page.pdf({ format, printBackground: true })).toString('latin1');
    expect(sheet.startsWith('%PDF-')).toBe(true);
    expect(sheet.match(/\/Type \/Page\b(?!s)/g)?.length).toBeLessThanOrEqual(2);
    await page.context().close();
  });

  it('looks back: as of a day in June every box has hatched', async () => {
    const page = await newPage(browser);
    await page.goto(`${at}/?as_of=2026-06-20`);
    expect(await answer(page)).toMatch(/all 6 boxes have probably (hatched|buttoned up|left the gravel)/);
    await page.context().close();
  });
});

describe('a box', () => {
  it('takes a stage that was seen, and shows it with who may undo it', async () => {
    const page = await newPage(browser);
    await page.goto(`${at}/boxes/B1`);
    await page.locator('input[name=date]').fill('2026-02-12');
    await page.locator('select[name=stage]').selectOption('eye-up');
    await page.locator('input[name=seen]').fill('48');
    await page.locator('input[name=of]').fill('50');
    await follow(page, page.getByRole('button', { name: 'Keep' }));
    expect(await textOf(page.locator('#observed'))).toContain('12 February 2026: eye-up, 48 of 50 eggs');
    await page.goto(`${at}/editing/history`);
    expect(await textOf(page.locator('main'))).toContain('Version 2');
    await follow(page, page.getByRole('button', { name: 'Go back to version 1' }));
    await page.goto(`${at}/boxes/B1`);
    expect(await textOf(page.locator('#observed'))).toContain('Nobody has noted a stage');
    await page.context().close();
  });

  it('refuses an observation that cannot be, keeps what was typed, and changes nothing', async () => {
    const page = await newPage(browser);
    await page.goto(`${at}/boxes/B1`);
    await page.locator('input[name=seen]').fill('many');
    await follow(page, page.getByRole('button', { name: 'Keep' }));
    expect(await textOf(page.locator('.refusal'))).toContain('many');
    expect(await page.locator('input[name=seen]').inputValue()).toBe('many');
    await page.context().close();
  });
});
