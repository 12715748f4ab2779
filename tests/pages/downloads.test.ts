import { join } from 'node:path';
import type { Browser, Locator, Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { scratchFolder, service } from '../http/service.js';
import { answer, follow, newPage, openBrowser, textOf } from './browser.js';
import { ambiguous, dayNow, horaire, hourly, isoDay, pastYears } from './invented-water.js';

let browser: Browser;
let at = '';
let page: Page;
const today = dayNow();
beforeAll(async () => {
  browser = await openBrowser();
  at = (await service(join(scratchFolder(), 'empty'), {}, null)).address;
  page = await newPage(browser);
}, 60_000);

async function bring(name: string, text: string): Promise<void> {
  await page.goto(`${at}/downloads`);
  await page
    .locator('input[type=file]')
    .setInputFiles({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });
  await follow(page, page.getByRole('button', { name: 'Send and look' }));
  await page.waitForURL(/downloads\/[0-9a-f]{32}/);
}

async function forStation(station: string): Promise<void> {
  expect(await answer(page)).toContain('must be answered');
  await page.locator('form.sheet select[name=station]').selectOption(station);
  await follow(page, page.getByRole('button', { name: 'Read it this way' }));
}

const accept = () => follow(page, page.getByRole('button', { name: 'Accept it' }));

// One sitting, in order: each step stands on the one before.
describe('from an empty folder to a window, by hand', () => {
  it('leads to the first visit, and sets up a station, a lot and a box from one form', async () => {
    await page.goto(at);
    expect(page.url()).toContain('/first-visit');
    expect(await answer(page)).toContain('There is nothing here yet');
    await page.locator('input[name=group]').fill('Friends of the Invented Brook');
    await page.locator('input[name=zone]').fill('UTC');
    await page.locator('input[name=station]').fill('bend');
    await page.locator('input[name=fertilised]').fill(`${isoDay(today - 45)}T10:00`);
    await page.locator('input[name=eggs]').fill('2 000');
    await page.locator('input[name=site]').fill('bend');
    await page.locator('input[name=planted]').fill(`${isoDay(today - 45)}T14:00`);
    await follow(page, page.getByRole('button', { name: 'Set it up' }));
    expect(await answer(page)).toContain('1 of 4 steps');
  });

  it('takes the first downloads, asking which station they are of, and shows the first window', async () => {
    await bring('past.csv', pastYears(today - 200));
    await forStation('bend');
    await accept();
    expect(await answer(page)).toMatch(/^Load 1 stands/);
    await bring('autumn.csv', hourly(today - 45, today - 20));
    await forStation('bend');
    expect(await page.locator('figure svg').count()).toBe(1);
    await accept();
    await follow(page, page.getByRole('link', { name: 'Back to the season' }));
    expect(await answer(page)).toContain('is expected');
    expect(await textOf(page.locator('.boxes .water'))).toContain('21 days ago');
    await page.goto(`${at}/first-visit`);
    expect(await answer(page)).toContain('Everything is set up');
  });

  it('reads a French file as it is, and the windows sharpen', async () => {
    await bring('relevé du méandre.csv', horaire(today - 20, today));
    await forStation('bend');
    expect(await textOf(page.locator('main'))).toContain('Température (°C)');
    await accept();
    expect(await textOf(page.locator('main'))).toMatch(/\d+ days? narrower/);
    await page.goto(at);
    expect(await textOf(page.locator('.boxes .water'))).not.toContain('21 days');
  });

  it('asks which day a date is where it can be read in two ways, and takes the answer', async () => {
    await bring('march-or-april.csv', ambiguous());
    if (await page.locator('form.sheet select[name=station]').count()) await forStation('bend');
    expect(await textOf(page.locator('legend').first())).toContain('03/04/');
    await page.getByLabel('3 April').check();
    await follow(page, page.getByRole('button', { name: 'Read it this way' }));
    if (await page.locator('form.sheet select[name=station]').count()) await forStation('bend');
    expect(await answer(page)).toContain('3 readings of bend, on 3 April');
    await accept();
    expect(await answer(page)).toContain('Load 4 stands, with 3 readings');
  });

  it('withdraws a load, and what it showed is gone', async () => {
    await page.goto(`${at}/downloads`);
    await follow(page, page.getByRole('button', { name: 'Withdraw load 3' }));
    expect(await textOf(page.locator('main'))).toContain('withdrawn');
    await page.goto(at);
    expect(await textOf(page.locator('.boxes .water'))).toContain('21 days ago');
  });

  it('says of a file that is loaded already that it would change nothing, and lets it be left', async () => {
    await bring('again.csv', hourly(today - 45, today - 20));
    if (await page.locator('form.sheet select[name=station]').count()) await forStation('bend');
    expect(await answer(page)).toContain('loaded already');
    await follow(page, page.getByRole('button', { name: /^Leave it/ }));
    expect(await answer(page)).toContain('Nothing is waiting');
  });

  it('says in a sentence why a file is no download', async () => {
    await bring('letter.txt', 'Dear coordinator,\nthe river is high today.\n');
    expect(await textOf(page.locator('.refusal'))).toContain('Dear coordinator');
  });

  it('takes pasted text, and a name of script does not run', async () => {
    await page.goto(`${at}/downloads`);
    await page.getByText('Or paste the text').first().click();
    await page.locator('input[name=name]').fill('<img src=x onerror=alert(1)>.csv');
    await page.locator('textarea').fill(hourly(today - 3, today - 2));
    await follow(page, page.getByRole('button', { name: 'Look at it' }));
    expect(await textOf(page.locator('h1'))).toContain('<img src=x onerror=alert(1)>.csv');
    expect(await page.locator('img').count()).toBe(0);
  });

  it('keeps how a file was read when it is accepted, lists it in words, and lets it be removed', async () => {
    await page.goto(`${at}/downloads/layouts`);
    expect(await answer(page)).toContain('No layout is kept');
    const rows = (day: string) => `When;Water\n${day} 10:00;4,1\n${day} 11:00;4,2\n`;
    const year = new Date().getUTCFullYear() - 2;
    await bring('probe.csv', rows(`03/04/${year}`));
    for (let asked = 0; (await page.locator('form.sheet').count()) > 0; asked++) {
      expect(asked).toBeLessThan(5);
      const form = page.locator('form.sheet');
      if (await form.locator('select[name=station]').count())
        await form.locator('select[name=station]').selectOption('bend');
      if (await form.locator('input[name=zone]:not([type=hidden])').count())
        await form.locator('input[name=zone]').fill('UTC');
      if (await form.locator('input[name=unit]:not([type=hidden])').count())
        await form.getByLabel('°C').check();
      if (await form.locator('input[name=dateOrder]:not([type=hidden])').count())
        await form.getByLabel('3 April').check();
      if (await form.locator('input[name=column]:not([type=hidden])').count())
        await form.getByLabel('Water').check();
      await follow(page, page.getByRole('button', { name: 'Read it this way' }));
    }
    await page.getByText('Keep how it was read').click();
    await page.getByLabel('name of the layout').fill('Probe of the bend');
    await accept();
    expect(await textOf(page.locator('.note'))).toContain('The layout “Probe of the bend” is kept');
    await bring('probe next year.csv', rows(`05/06/${year}`));
    if (await page.locator('form.sheet select[name=station]').count()) await forStation('bend');
    expect(await answer(page)).toContain('on 5 June');
    await follow(page, page.getByRole('button', { name: /^Leave it/ }));
    await follow(page, page.getByRole('link', { name: 'Saved layouts (1)' }));
    expect(await textOf(page.locator('main'))).toContain('Reads files with the columns “When”, “Water”');
    expect(await textOf(page.locator('.facts'))).toContain('day, month, year');
    await follow(page, page.getByRole('button', { name: 'Remove the layout “Probe of the bend”' }));
    expect(await answer(page)).toContain('No layout is kept');
  });

  it('takes a dropped file', async () => {
    await page.goto(`${at}/downloads`);
    const dropped = await page.evaluateHandle(
      `(() => { const d = new DataTransfer(); d.items.add(new File([${JSON.stringify(hourly(today - 9, today - 8))}], 'dropped.csv')); return d; })()`,
    );
    await page.dispatchEvent('#drop', 'drop', { dataTransfer: dropped });
    await page.waitForURL(/downloads\/[0-9a-f]{32}/);
    expect(await textOf(page.locator('h1'))).toContain('dropped.csv');
  });

  it('does the whole of the weekly job by keyboard', async () => {
    const { keyboard } = page;
    const focused = page.locator(':focus');
    /** Tab until the focus is there, then what is pressed there. */
    const reach = async (there: Locator, ...keys: string[]) => {
      for (let i = 0; (await there.and(focused).count()) === 0; i++) {
        expect(i, `${there} is reached by Tab`).toBeLessThan(120);
        await keyboard.press('Tab');
      }
      // Where the focus is can be seen: the outline of ground.css, nothing over it.
      const outline =
        'getComputedStyle(document.activeElement).outlineStyle + getComputedStyle(document.activeElement).outlineWidth';
      expect(await page.evaluate<string>(outline), `${there} shows the focus`).toBe('solid3px');
      for (const key of keys) await keyboard.press(key);
    };
    const onward = (there: Locator) =>
      Promise.all([page.waitForEvent('domcontentloaded'), reach(there, 'Enter')]);
    await page.goto(at);
    expect(await textOf(page.locator('.boxes .water'))).toContain('21 days ago');
    await keyboard.press('Tab');
    expect(await focused.getAttribute('class')).toBe('skip');
    expect(await page.locator('.skip').boundingBox()).toMatchObject({ x: expect.any(Number) });
    await keyboard.press('Enter');
    await onward(page.locator('.boxes .name').first());
    expect(page.url()).toContain('/boxes/');
    await onward(page.locator('#places').getByRole('link', { name: 'Downloads' }));
    const [chooser] = await Promise.all([
      page.waitForEvent('filechooser'),
      reach(page.locator('#drop input[type=file]'), 'Enter'),
    ]);
    // With a spare sensor beside: which station, and which column, is asked.
    const rows = horaire(today - 20, today - 1).split('\r\n');
    const spare = rows.map((row, i) => `${row};${i === 0 ? 'Température, rechange (°C)' : '9,9'}`);
    const week = Buffer.from(spare.join('\r\n'));
    await chooser.setFiles({ name: 'semaine.csv', mimeType: 'text/csv', buffer: week });
    await onward(page.getByRole('button', { name: 'Send and look' }));
    await page.waitForURL(/downloads\/[0-9a-f]{32}/);
    const questions: string[] = [];
    while ((await page.locator('form.sheet').count()) > 0) {
      expect(questions.length).toBeLessThan(4);
      const asked = page.locator('form.sheet').locator('select, input:not([type=hidden])').first();
      questions.push((await asked.getAttribute('name')) ?? '');
      await reach(asked, questions.at(-1) === 'station' ? 'b' : 'Space');
      await onward(page.getByRole('button', { name: 'Read it this way' }));
    }
    expect(questions.toSorted()).toEqual(['column', 'station']);
    await onward(page.getByRole('button', { name: 'Accept it' }));
    expect(await answer(page)).toMatch(/^Load \d+ stands/);
    await onward(page.getByRole('link', { name: 'Back to the season' }));
    expect(await answer(page)).toContain('is expected');
    expect(await textOf(page.locator('.boxes .water'))).not.toContain('21 days');
  });
});

describe('editing', () => {
  it('adds a station by its form, refuses one that cannot be, and keeps what was typed', async () => {
    await page.goto(`${at}/editing/stations/new`);
    await page.locator('input[name=id]').fill('weir');
    await page.locator('select[name=kind]').selectOption('stream');
    await page.locator('input[name=latitude]').fill('147');
    await follow(page, page.getByRole('button', { name: 'Keep' }));
    expect(await textOf(page.locator('.refusal'))).toContain('147');
    await page.locator('input[name=latitude]').fill('47,1');
    await follow(page, page.getByRole('button', { name: 'Keep' }));
    await page.waitForURL('**/editing');
    expect(await textOf(page.locator('main'))).toContain('weir');
  });

  it('shows who changes the same thing at the same time that somebody else was first', async () => {
    const other = await newPage(browser);
    await other.goto(`${at}/editing/boxes/0`);
    await page.goto(`${at}/editing/boxes/0`);
    await page.locator('input[name=find]').fill('Under the alder');
    await follow(page, page.getByRole('button', { name: 'Keep' }));
    await page.waitForURL('**/editing');
    await other.locator('input[name=find]').fill('By the stone');
    await follow(other, other.getByRole('button', { name: 'Keep' }));
    expect(await textOf(other.locator('.refusal'))).toContain('Nothing was changed');
    expect(await other.locator('input[name=find]').inputValue()).toBe('By the stone');
    await other.context().close();
  });

  it('shows what the whole file would change before it is taken over', async () => {
    await page.goto(`${at}/editing/file`);
    const text = await page.locator('textarea').inputValue();
    await page.locator('textarea').fill(text.replace('Under the alder', 'Under the old alder'));
    await follow(page, page.getByRole('button', { name: 'See what would change' }));
    expect(await textOf(page.locator('.note'))).toContain('Under the old alder');
  });

  it('adds a development table, and refuses one whose days rise with the temperature', async () => {
    await page.goto(`${at}/tables`);
    for (const [name, value] of [
      ['name', 'Brook stock'],
      ['id', 'brook-stock'],
      ['species', 'Salvelinus'],
      ['source', 'hatchery records'],
    ] as const)
      await page.locator(`input[name=${name}]`).fill(value);
    await page.locator('textarea').fill('2 100\n6 120');
    await follow(page, page.getByRole('button', { name: 'Keep' }));
    expect(await textOf(page.locator('.refusal'))).toContain('120');
    await page.locator('textarea').fill('2 180\n6 80,5');
    await follow(page, page.getByRole('button', { name: 'Keep' }));
    await page.waitForURL('**/tables/brook-stock');
    expect(await page.locator('figure svg').count()).toBe(1);
  });
});
