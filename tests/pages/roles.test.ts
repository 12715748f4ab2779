import type { Browser, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { sampleFolder, service, threeAccounts } from '../http/service.js';
import { follow, newPage, openBrowser } from './browser.js';

let browser: Browser;
let at = '';
beforeAll(async () => {
  browser = await openBrowser();
  const folder = await sampleFolder();
  await threeAccounts(folder);
  at = (await service(folder)).address;
}, 120_000);

async function signedIn(name: string): Promise<Page> {
  const page = await newPage(browser);
  await page.goto(`${at}/downloads`);
  await page.locator('input[name=name]').fill(name);
  await page.locator('input[name=password]').fill(`${name}-password`);
  await follow(page, page.getByRole('button', { name: 'Sign in' }));
  await page.waitForURL('**/downloads');
  return page;
}

describe('sign-in', () => {
  it.each([
    { name: 'Coral', sends: 1, withdraws: true, notes: 1 },
    { name: 'Crewe', sends: 1, withdraws: false, notes: 1 },
    { name: 'Reade', sends: 0, withdraws: false, notes: 0 },
  ])('$name is led on to where they were going, and sees only what they may do', async (who) => {
    const page = await signedIn(who.name);
    expect(await page.locator('#drop').count()).toBe(who.sends);
    expect((await page.getByRole('button', { name: /^Withdraw/ }).count()) > 0).toBe(who.withdraws);
    await page.goto(`${at}/boxes/B1`);
    expect(await page.locator('#observed form').count()).toBe(who.notes);
    await follow(page, page.getByRole('button', { name: 'Sign out' }));
    await page.goto(at);
    expect(page.url()).toContain('/sign-in');
    await page.context().close();
  });

  it('shows nothing of the group before', async () => {
    const page = await newPage(browser);
    await page.goto(at);
    expect(page.url()).toContain('/sign-in');
    expect(await page.content()).not.toContain('Brumelore');
    await page.context().close();
  });
});
