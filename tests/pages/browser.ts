import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Locator,
  type Page,
} from 'playwright-core';
import { afterAll, expect } from 'vitest';
import { chromiumPath } from '../browser-setup.js';

export const QUIET = [
  '--headless',
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
];

export const PHONE = { width: 360, height: 740 };
export const LAPTOP = { width: 1280, height: 800 };

/** Requests that tried to leave loopback, by any page of this test file: there must be none. */
const strayed: string[] = [];

/** Real Chromium, ended after the tests; a request that leaves loopback is stopped and fails them. */
export async function openBrowser(): Promise<Browser> {
  const browser = await chromium.launch({ executablePath: chromiumPath(), args: QUIET });
  afterAll(async () => {
    await browser.close();
    expect(strayed).toEqual([]);
  });
  return browser;
}

export async function newPage(browser: Browser, options: BrowserContextOptions = {}): Promise<Page> {
  const context = await browser.newContext({ viewport: LAPTOP, locale: 'en-CA', ...options });
  await keepHome(context);
  const page = await context.newPage();
  page.on('pageerror', (error) => strayed.push(`script failed: ${error.message}`));
  return page;
}

async function keepHome(context: BrowserContext): Promise<void> {
  await context.route(/.*/, (route) => {
    const { hostname, protocol } = new URL(route.request().url());
    if (protocol === 'data:' || hostname === '127.0.0.1' || hostname === 'localhost') return route.continue();
    strayed.push(route.request().url());
    return route.abort();
  });
}

/** The sentence at the top of a page. */
export const answer = (page: Page): Promise<string> => textOf(page.locator('.answer'));

/** What of an element a person sees: text that is hidden does not count. */
export function textOf(locator: Locator): Promise<string> {
  // biome-ignore lint/performance/useDomNodeTextContent: textContent would count what is hidden
  return locator.innerText();
}

/** Presses what leads to another page, and waits until that page is there. */
export async function follow(page: Page, leads: Locator): Promise<void> {
  await Promise.all([page.waitForEvent('domcontentloaded'), leads.click()]);
}
