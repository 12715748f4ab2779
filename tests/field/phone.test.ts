import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { type BrowserContext, chromium, type Page } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { openOwnGroup } from '../../src/group/index.js';
import { renderSeason, type Season, seasonFrom } from '../../src/season/index.js';
import { chromiumPath } from '../browser-setup.js';
import { ask, scratchFolder, service } from '../http/service.js';
import { QUIET } from '../pages/browser.js';
import { type River, river } from './river.js';

const picture = sharp({ create: { width: 320, height: 240, channels: 3, background: '#336688' } });

/** A volunteer's phone: a browser of its own with a disk of its own, 360 pixels wide. */
const folder = scratchFolder();
let way: River;
let direct = '';
let context: BrowserContext | null = null;

beforeEach(() => way?.network('open'));

beforeAll(async () => {
  const season = join(folder, 'season');
  const group = await openOwnGroup(season);
  const written = {
    group: { name: 'Brumelore', zone: 'America/Moncton' },
    stations: [{ id: 'pool' }],
    loggers: [{ id: 'L-1' }, { id: 'L-2' }],
    sites: ['one', 'two', 'three', 'four'].map((id) => ({ id, station: 'pool' })),
    lots: [{ id: 'A', fertilised: '2025-11-04 10:00', eggs: 20_000, table: 'atlantic-salmon' }],
    seasonalCurve: { monthly: [0, 0, 0, 0.8, 8, 15, 19, 19, 15.5, 10, 4, 0.3] },
  };
  await group.applySeason(renderSeason(seasonFrom(written, 'test')), 'test', 'tests');
  await group.close();
  way = await river(folder);
  const serving = await service(season, { address: way.address }, null);
  way.to(serving.port);
  direct = `http://127.0.0.1:${serving.port}`;
});

afterAll(async () => {
  await context?.close();
  way?.close();
});

/** Opens the phone's browser, the disk it had before still in it; one at a time. */
async function phone(name: string, daysOff = 0): Promise<Page> {
  await context?.close();
  const disk = join(folder, name);
  mkdirSync(disk, { recursive: true });
  context = await chromium.launchPersistentContext(disk, {
    executablePath: chromiumPath(),
    args: [...QUIET, ...way.flags],
    viewport: { width: 360, height: 740 },
    locale: 'en-CA',
  });
  const page = context.pages()[0] ?? (await context.newPage());
  // A phone on a crowded machine is slow, not wrong.
  page.setDefaultTimeout(90_000);
  if (daysOff !== 0) await context.clock.setSystemTime(Date.now() + daysOff * 86_400_000);
  return page;
}

/** The page of the phone that is open. */
function openPage(): Page {
  const page = context?.pages()[0];
  if (page === undefined) throw new Error('no phone is open');
  return page;
}

async function season(): Promise<Season> {
  const { body } = await ask(direct, '/api/v1/season');
  return seasonFrom(body, 'season');
}

async function prepared(page: Page): Promise<void> {
  await page.goto(`${way.address}/field`);
  await page.evaluate(() => navigator.serviceWorker.ready.then(() => true));
  await page.click('#prepare');
  await page.waitForFunction(() => /Prepared/.test(document.querySelector('#prepared')?.textContent ?? ''));
}

async function plant(page: Page, site: string, box: string, eggs = '1000'): Promise<void> {
  await page.click('#new-plant');
  await page.check(`#q-site input[value="${site}"]`);
  await page.click('#next');
  await page.fill('#q-box input[type=text]', box);
  await page.click('#next');
  await page.check('#q-lot input[value="A"]');
  await page.fill('#q-eggs input', eggs);
  await page.click('#keep');
}

const state = (page: Page) => page.locator('#state strong');

describe('an autumn day of twenty boxes at four sites', () => {
  test('is entered without network and arrives once, through a closed browser, lost answers and an update', async () => {
    let page = await phone('first');
    await prepared(page);
    way.network('cut');
    await page.reload();
    await page.waitForSelector('#new-plant');
    const sites = ['one', 'two', 'three', 'four'];
    for (let i = 0; i < 20; i++) await plant(page, sites[Math.floor(i / 5)] ?? '', `B${i + 1}`);
    await page.waitForFunction(() =>
      /^20 not sent yet/.test(document.querySelector('#state')?.textContent ?? ''),
    );

    page = await phone('first');
    await page.goto(`${way.address}/field`);
    await page.waitForSelector('#send');
    expect(await state(page).textContent()).toBe('20 not sent yet');

    // Every entry arrives, and the phone does not learn of it.
    way.network('half');
    await page.click('#send');
    await expect.poll(async () => (await season()).boxes.length, { timeout: 30_000 }).toBe(20);
    await page.waitForSelector('#state .refusal');
    expect(await state(page).textContent()).toBe('20 not sent yet');

    way.update();
    way.network('open');
    await page.reload();
    await page.waitForFunction(() =>
      /Everything is sent/.test(document.querySelector('#state')?.textContent ?? ''),
    );
    const { boxes, entries } = await season();
    expect(boxes.map(({ id, site, fills }) => [id, site, fills.map(({ eggs }) => eggs)])).toEqual(
      Array.from({ length: 20 }, (_, i) => [`B${i + 1}`, sites[Math.floor(i / 5)], [1000]]),
    );
    expect(entries.filter(({ state }) => state === 'taken')).toHaveLength(20);
  });

  test('a second phone, its clock a day fast, enters one of the boxes too: both are kept and told apart', async () => {
    const page = await phone('second', 1);
    await prepared(page);
    await plant(page, 'one', 'B1', '900');
    await page.waitForSelector('#entries li.waiting');
    expect(await page.locator('#entries li.waiting').textContent()).toMatch(/planted already/);
    await page.click('#new-visit');
    await page.check('#q-site input[value="two"]');
    await page.click('#next');
    await page.fill('#q-celsius input', '4,5');
    await page.click('#keep');
    await page.waitForSelector('#entries li.taken');
    const { boxes, entries, visits } = await season();
    expect(boxes[0]?.fills).toHaveLength(1);
    expect(new Set(entries.map(({ phone }) => phone)).size).toBe(2);
    expect(entries.at(-1)?.fast).toBeGreaterThan(86_000);
    expect(visits[0]?.hand[0]?.celsius).toBe(4.5);
    expect(Math.abs(Date.parse(visits[0]?.when.at ?? '') - Date.now())).toBeLessThan(600_000);
  });
});

describe('a lifting day of twenty boxes at four sites', () => {
  test('is tallied with one thumb and without network, and arrives once each', async () => {
    const page = await phone('lifter');
    await prepared(page);
    way.network('cut');
    await page.reload();
    await page.waitForSelector('#new-tally');
    // What a thumb must hit is at least 48 pixels high (WCAG 2.5.5 asks for 44), and nothing lies beyond the edge.
    await page.click('#new-tally');
    const small = await page.evaluate(
      () =>
        [...document.querySelectorAll('button, .choice, input:not([type=radio])')].filter((one) => {
          const { height, right } = one.getBoundingClientRect();
          return height > 0 && (height < 48 || right > innerWidth);
        }).length,
    );
    expect(small).toBe(0);
    await page.click('#back');
    const sites = ['one', 'two', 'three', 'four'];
    for (let i = 0; i < 20; i++) {
      await page.click('#new-tally');
      await page.check(`#q-site input[value="${sites[Math.floor(i / 5)]}"]`);
      await page.click('#next');
      await page.check(`#q-box input[value="B${i + 1}"]`);
      await page.click('#next');
      await page.fill('#q-empty input', `${900 + i}`);
      await page.fill('#q-dead input', '60');
      await page.fill('#q-alive input', '0');
      if (i === 0) expect(await page.textContent('#q-alive .hint')).toBe('960 counted of 1,000 planted');
      if (i === 19) {
        // The last is counted in more detail: what the dead had died of, silt, damage.
        for (let screen = 0; screen < 2; screen++) await page.click('#next');
        await page.fill('#q-siltMm input', '12,5');
        await page.fill('#q-damage input', 'lid torn');
        await page.click('#next');
        await page.fill('#q-fungus input', '40');
        await page.fill('#q-cannotTell input', '20');
      }
      await page.click('#keep');
    }
    await page.click('#new-check');
    await page.check('#q-site input[value="one"]');
    await page.click('#next');
    await page.check('#q-box input[value="B2"]');
    await page.click('#next');
    await page.fill('#q-alive input', '300');
    await page.click('#keep');
    await page.waitForFunction(() => /^21 not/.test(document.querySelector('#state')?.textContent ?? ''));
    // They arrive and the phone does not learn of it: sent again, each is there once.
    way.network('half');
    await page.click('#send');
    await expect.poll(async () => (await season()).tallies.length, { timeout: 30_000 }).toBe(20);
    await page.waitForSelector('#state .refusal');
    way.network('open');
    await page.click('#send');
    await page.waitForFunction(() =>
      /Everything is/.test(document.querySelector('#state')?.textContent ?? ''),
    );
    const { tallies, boxes, checkedAndPutBack } = await season();
    expect(tallies.map(({ box, empty, dead, alive }) => [box, empty, dead, alive])).toEqual(
      Array.from({ length: 20 }, (_, i) => [`B${i + 1}`, 900 + i, 60, 0]),
    );
    expect(tallies.at(-1)).toMatchObject({
      siltMm: 12.5,
      damage: 'lid torn',
      kinds: { fungus: 40, cannotTell: 20 },
    });
    expect(checkedAndPutBack).toMatchObject([{ box: 'B2', alive: 300 }]);
    expect(boxes.every(({ lifted }) => lifted !== null)).toBe(true);
  });
});

describe('before anything can be lost', () => {
  test('a grouped number is asked about, and a full phone keeps what was typed on the screen', async () => {
    const page = openPage();
    await page.reload();
    await page.waitForSelector('#new-plant');
    await plant(page, 'one', 'C1', '13 000');
    expect(await page.locator('#q-eggs .refusal').textContent()).toMatch(/13000/);
    await page.fill('#q-eggs input', '77');
    // The disk refuses, as a full one does.
    await page.evaluate(() => {
      const put = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function (value: unknown, key?: IDBValidKey) {
        if (this.name === 'entries') throw new DOMException('full', 'QuotaExceededError');
        return put.call(this, value, key);
      };
    });
    await page.click('#keep');
    await page.waitForSelector('.refusal:not([hidden])');
    expect(await page.locator('.refusal:not([hidden])').textContent()).toMatch(/NOT kept/);
    expect(await page.inputValue('#q-eggs input')).toBe('77');
    // The browser is started again with room: what was typed is still there.
    await page.reload();
    await page.waitForSelector('#keep');
    expect(await page.locator('h2').textContent()).toMatch(/Eggs into a box/);
  });

  test('without a secure context it says so before the first entry', async () => {
    // A phone that has never met the service: one that has would insist on TLS (Strict-Transport-Security).
    const page = await phone('third');
    await page.goto(`${way.plain}/field`);
    await page.waitForSelector('#insecure');
    expect(await page.locator('#insecure').textContent()).toMatch(/was not opened over https/);
    await page.goto(`${way.address}/field`);
    await page.waitForSelector('#new-plant');
    expect(await page.locator('#insecure').count()).toBe(0);
  });

  test('the pages weigh under 150 KB in all, fit 360 pixels, and speak French without network', async () => {
    const page = await phone('fourth');
    way.weighed();
    await prepared(page);
    expect(way.weighed()).toBeLessThan(150_000);
    way.network('cut');
    await page.reload();
    await page.click('#language');
    await page.waitForFunction(() => document.documentElement.lang === 'fr-CA');
    await expect.poll(() => page.locator('h1').textContent()).toMatch(/Sur le terrain/);
    const wide = await page.evaluate(() => document.documentElement.scrollWidth);
    expect(wide).toBeLessThanOrEqual(360);
    way.network('open');
  });
});

/** Taps and typed fields of a walk: what a person's hands do, whatever the machine needs. */
class Hands {
  taps = 0;
  fields = 0;
  constructor(private readonly page: Page) {}
  async tap(what: string): Promise<void> {
    this.taps++;
    await this.page.locator(what).first().click();
  }
  async type(what: string, text: string): Promise<void> {
    this.taps++;
    this.fields++;
    await this.page.locator(what).first().fill(text);
  }
  async pick(nth: number, value: string): Promise<void> {
    this.taps += 2;
    await this.page.locator('.row select').nth(nth).selectOption(value);
  }
}

describe('as a new volunteer: from stripping day to a window', () => {
  test.each([
    ['en', { lot: 'V1', female: 'F1', male: 'M1', box: 'W1', logger: 'L-1' }],
    ['fr', { lot: 'V2', female: 'F2', male: 'M2', box: 'W2', logger: 'L-2' }],
  ])('without network, on a phone (%s)', async (language, { lot, female, male, box, logger }) => {
    const page = await phone(`walk-${language}`);
    const hands = new Hands(page);
    const said = (selector: string) => page.locator(selector).first().textContent();
    const began = Date.now();
    await prepared(page);
    if (language === 'fr') await hands.tap('#language');
    way.network('cut');
    await page.reload();
    await page.waitForSelector('#new-adult');
    // The adults and their cross: the phone offers what it wrote down itself.
    await hands.tap('#new-adult');
    await hands.type('#q-id input', female);
    await hands.tap('#q-sex input[value=female]');
    await hands.tap('#next');
    await hands.type('#q-lengthCm input', '71,5');
    await hands.tap('#keep');
    await hands.tap('#new-adult');
    await hands.type('#q-id input', male);
    await hands.tap('#q-sex input[value=male]');
    await hands.tap('#keep');
    await hands.tap('#new-cross');
    await hands.tap(`#q-female input[value="${female}"]`);
    await hands.tap(`#q-males input[value="${male}"]`);
    await hands.tap('#next');
    await hands.type('#q-lot input', lot);
    await hands.tap('#keep');
    // The lot: counted by displacement, with the error of three repeats, before anything is sent.
    await hands.tap('#new-strip');
    await hands.tap(`#q-lot input[value="${lot}"]`);
    await hands.tap('#q-table input[value="atlantic-salmon"]');
    await hands.tap('#next');
    await hands.tap('#q-counted input[value=displacement]');
    for (const [i, amount] of ['12,4', '12,6', '12,5'].entries()) {
      await hands.type(`#q-samples .row >> nth=${i} >> input >> nth=0`, '100');
      await hands.type(`#q-samples .row >> nth=${i} >> input >> nth=1`, amount);
    }
    await hands.type('#q-total input', '250');
    // 300 eggs of 37.5 mL: 8 a mL; residuals 0.8, -0.8, 0; t of 2 degrees of freedom 4.303: 2000 ± 40.
    expect((await said('#q-samples .hint'))?.replaceAll(/\s/g, ' ')).toMatch(
      language === 'fr' ? /2 000; entre 1 960 et 2 040 \(95 %\)/ : /2,000; between 1,960 and 2,040 \(95%\)/,
    );
    await hands.tap('#next');
    expect(await page.isChecked(`#q-parents input[value="${female}"]`)).toBe(true);
    await hands.type('#q-controlEggs input', '100');
    await hands.type('#q-disinfectedWith input', 'iodophor');
    await hands.type('#q-disinfectedMinutes input', '10');
    await hands.tap('#keep');
    // A box, part by part: what speaks against it is heard before the eggs go in, of a lot no service knows yet.
    await hands.tap('#new-plant');
    await hands.tap('#q-site input[value="two"]');
    await hands.tap('#next');
    await hands.type('#q-box input[type=text]', box);
    await hands.type('#q-part input[type=text]', 'left half');
    await hands.tap('#next');
    await hands.tap(`#q-lot input[value="${lot}"]`);
    expect(await said(`#q-lot label:has([value="${lot}"])`)).toMatch(/1[,\u00a0\u202f]900/);
    await hands.type('#q-eggs input', '1000');
    await hands.tap('#next');
    await hands.type('#q-transportC input', '8');
    await hands.type('#q-siteC input', '3,5');
    expect(await said('#q-siteC .caution')).toMatch(
      language === 'fr' ? /trop différentes.*plus froid/ : /too far apart.*colder than advised/,
    );
    await hands.tap('#keep');
    await hands.tap('#new-plant');
    await hands.tap('#next');
    await hands.tap(`#q-box input[value="${box}"]`);
    expect(await said('#q-part .caution')).toMatch(language === 'fr' ? /déjà des œufs/ : /eggs already/);
    await hands.type('#q-part input[type=text]', 'right half');
    await hands.tap('#next');
    await hands.tap(`#q-lot input[value="${lot}"]`);
    await hands.type('#q-eggs input', '901');
    expect(await said('#q-eggs .caution')).toMatch(language === 'fr' ? /en reste/ : /lot has left/);
    await hands.type('#q-eggs input', '900');
    await hands.tap('#keep');
    // The visit, closed half-way with the photograph taken: it is still there.
    await hands.tap('#new-visit');
    await hands.tap('#next');
    await hands.type('#q-celsius input', '3,5');
    await hands.tap('#q-ice input[value=none]');
    await hands.tap('#next');
    await hands.tap('#q-loggers > button');
    await hands.pick(0, logger);
    await hands.pick(1, 'in');
    await hands.pick(2, 'tied-to-box');
    await hands.pick(3, box);
    const shows = new Date(Date.now() + 100_000).toTimeString().slice(0, 8);
    await hands.type('.row input[type=time]', shows);
    await hands.tap('#next');
    await page.setInputFiles('#q-photographs input[type=file]', {
      name: 'bank.jpg',
      mimeType: 'image/jpeg',
      buffer: await picture.clone().jpeg().toBuffer(),
    });
    await page.waitForFunction(() =>
      /1/.test(document.querySelector('#q-photographs .hint')?.textContent ?? ''),
    );
    await page.reload();
    await page.waitForSelector('#q-photographs');
    await hands.tap('#keep');
    // A slip of the finger is put right before it is sent.
    await page.waitForFunction(() => document.querySelectorAll('#entries li.unsent').length === 7);
    await hands.tap('#entries li.unsent:last-child button');
    await hands.tap('#next');
    await hands.type('#q-lengthCm input', '72,5');
    await hands.tap('#keep');
    await page.waitForFunction(() => document.querySelectorAll('#entries li.unsent').length === 7);
    way.network('open');
    await hands.tap('#send');
    await page.waitForFunction(() => document.querySelectorAll('#entries li.taken').length === 7);
    await hands.tap('#state a');
    const row = page.locator('.boxes li', { has: page.getByRole('link', { name: box, exact: true }) });
    await row.waitFor();
    expect(await row.locator('.strip .median').count()).toBeGreaterThanOrEqual(2);
    const seconds = (Date.now() - began) / 1000;
    expect(await page.locator('html').getAttribute('lang')).toBe(`${language}-CA`);

    const { lots, boxes, broodstock, crosses, visits, deployments } = await season();
    expect(broodstock.find(({ id }) => id === female)).toMatchObject({ lengthCm: 72.5 });
    expect(crosses.find(({ id }) => id === `${female}-${male}`)).toMatchObject({ lot });
    expect(lots.find(({ id }) => id === lot)).toMatchObject({
      eggs: 2000,
      parents: [female, male],
      control: { eggs: 100 },
      disinfected: { with: 'iodophor', minutes: 10 },
    });
    expect(boxes.find(({ id }) => id === box)?.fills).toMatchObject([
      { part: 'left half', eggs: 1000 },
      { part: 'right half', eggs: 900 },
    ]);
    expect(visits.at(-1)?.photographs).toHaveLength(1);
    const laid = deployments.find((one) => one.logger === logger);
    expect(laid).toMatchObject({ box, lay: 'tied-to-box', station: 'pool' });
    expect(Math.abs((laid?.clockChecks[0]?.fast ?? 0) - 100)).toBeLessThanOrEqual(90);
    // What the machine and the hands need of the walk; a person adds reading. Recorded, not asserted.
    console.info(
      `stripping day to a window (${language}): ${seconds.toFixed(1)} s, ${hands.taps} taps, ${hands.fields} fields typed`,
    );
  });
});
