import type { Browser } from 'playwright-core';
import { getDocumentProxy } from 'unpdf';
import { beforeAll, describe, expect, it } from 'vitest';
import { ask, json, sampleFolder, service } from '../http/service.js';
import { newPage, openBrowser } from './browser.js';

/* What comes out of the printer, read back by PDF.js. */
const BOXES = Array.from({ length: 36 }, (_, i) => `P${i + 10}`);

let browser: Browser;
let at = '';
beforeAll(async () => {
  browser = await openBrowser();
  at = (await service(await sampleFolder())).address;
  const season = await ask(at, '/api/v1/season');
  const one = await ask(at, '/api/v1/season/boxes/U1');
  const fills = [{ lot: 'A', eggs: 50, planted: '2025-11-04 16:30' }];
  const boxes = BOXES.map((id) => ({ ...one.body, id, fills }));
  const put = await ask(
    at,
    '/api/v1/season',
    json(
      'PUT',
      { ...season.body, boxes, visits: [], observed: [], deployments: [], entries: [] },
      { 'If-Match': season.headers.get('ETag') ?? '' },
    ),
  );
  if (put.status !== 200) throw new Error(put.text);
}, 120_000);

interface Piece {
  readonly text: string;
  /** Of its baseline, points from the lower edge, and its height. */
  readonly y: number;
  readonly height: number;
}

interface Sheet {
  readonly height: number;
  readonly pieces: readonly Piece[];
}

/** Every page's text, and where it stands. */
async function printed(path: string, format: 'A4' | 'Letter', locale = 'en-CA'): Promise<readonly Sheet[]> {
  const page = await newPage(browser, { locale });
  await page.goto(`${at}${path}`);
  const pdf = await page.pdf({ format, printBackground: true });
  await page.context().close();
  const document = await getDocumentProxy(new Uint8Array(pdf));
  const sheets: Sheet[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const sheet = await document.getPage(number);
    const { items } = await sheet.getTextContent();
    const pieces = items.flatMap((item) =>
      'str' in item && item.str.trim() !== ''
        ? [{ text: item.str, y: Number(item.transform[5]), height: item.height }]
        : [],
    );
    sheets.push({ height: sheet.view[3] ?? 0, pieces });
  }
  await document.cleanup();
  return sheets;
}

const textOf = ({ pieces }: Sheet): string => pieces.map(({ text }) => text).join(' ');
/** 14 mm of margin, in points, less what a letter's tail hangs below its line. */
const MARGIN = 36;

describe('the season on paper', () => {
  it.each(['A4', 'Letter'] as const)(
    '%s: each row whole, each page full, nothing in the margins',
    async (format) => {
      const sheets = await printed('/', format);
      expect(sheets.length).toBeGreaterThanOrEqual(2);
      for (const box of BOXES) {
        const on = sheets.filter((sheet) => sheet.pieces.some(({ text }) => text.trim() === box));
        expect(on.length, `${box} stands on a page`).toBeGreaterThanOrEqual(1);
      }
      // A row is its name and its strip, with a date at each of the stages: a cut one would leave them on two pages.
      for (const sheet of sheets) {
        const rows = sheet.pieces.filter(({ text }) => BOXES.includes(text.trim()));
        const hatches = sheet.pieces.filter(({ text }) => /^hatch \d+ \w+$/.test(text.trim()));
        const inRows = rows.filter(({ y }) => hatches.some((hatch) => hatch.y < y && y - hatch.y < 60));
        expect(inRows.length).toBe(hatches.length);
        for (const { y, height } of sheet.pieces) {
          expect(y).toBeGreaterThanOrEqual(MARGIN);
          expect(y + height).toBeLessThanOrEqual(sheet.height - MARGIN);
        }
      }
      const hatches = sheets.flatMap(({ pieces }) =>
        pieces.filter(({ text }) => /^hatch \d/.test(text.trim())),
      );
      expect(hatches).toHaveLength(BOXES.length);
      expect(textOf(sheets.at(-1) ?? { height: 0, pieces: [] })).toContain('Before you act on a date');
      // Only the last page may be half empty: a page break before a section would waste the ones before it.
      for (const { height, pieces } of sheets.slice(0, -1))
        expect(Math.min(...pieces.map(({ y }) => y))).toBeLessThan(height / 4);
    },
  );
});

describe('a box on paper', () => {
  it('each chart with its finding above it and its axis below on one page, in French', async () => {
    const sheets = await printed('/boxes/P10', 'A4', 'fr-CA');
    const text = sheets.map(textOf);
    for (const finding of [/Eau à .+ mesurés/, /Lot A\s?: \d+ % du chemin/, /degrés-jours accumulés/]) {
      const on = sheets.find((sheet) => finding.test(textOf(sheet)));
      expect(on, String(finding)).toBeDefined();
      const above = on?.pieces.find(({ text }) => /mesurés|du chemin|accumulés/.test(text))?.y ?? 0;
      const months = on?.pieces.filter(
        ({ text, y }) => /^1er (déc|janv|févr|mars|avr|mai)/.test(text.trim()) && y < above,
      );
      expect(months?.length, String(finding)).toBeGreaterThanOrEqual(4);
    }
    expect(text.join(' ')).toContain('Avant d’agir d’après une date');
    expect(text.join(' ')).not.toMatch(/Retour|Conserver/);
  });
});
