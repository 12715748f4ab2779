import fc from 'fast-check';
import Papa from 'papaparse';
import { expect, it } from 'vitest';
import { pairs, take, utf8 } from '../reading.js';

/** A cell as RFC 4180 writes it: quoted where it must be, and here and there where it need not. */
const cell = (text: string, always: boolean) =>
  always || /[",;\t|]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;

const note = fc.string({
  unit: fc.constantFrom('a', 'é', ' ', '"', ',', ';', '|', '\t', '0', '-', '’'),
  maxLength: 8,
});
const row = fc.record({
  step: fc.integer({ min: 1, max: 500 }),
  hundredths: fc.integer({ min: -200, max: 2500 }),
  before: note,
  after: note,
  quotes: fc.boolean(),
});
const file = fc.record({
  delimiter: fc.constantFrom(',', ';', '\t', '|'),
  end: fc.constantFrom('\n', '\r\n'),
  rows: fc.array(row, { minLength: 3, maxLength: 40 }),
  piece: fc.integer({ min: 1, max: 200 }),
});

it('reads well-formed files as papaparse does', async () => {
  await fc.assert(
    fc.asyncProperty(file, async ({ delimiter, end, rows, piece }) => {
      let minute = 0;
      const lines = rows.map(({ step, hundredths, before, after, quotes }) => {
        minute += step;
        const time = new Date(Date.UTC(2025, 10, 1) + minute * 60_000).toISOString().slice(0, 16);
        const value = (hundredths / 100).toFixed(2);
        return [before, time, value, after].map((text) => cell(text, quotes)).join(delimiter);
      });
      const text = `${['Note', 'Time (UTC)', 'Temp (°C)', 'Event'].join(delimiter)}${end}${lines.join(end)}${end}`;
      const oracle = Papa.parse<string[]>(text, { delimiter, skipEmptyLines: true }).data.slice(1);
      const { report, taken } = await take(utf8(text), {}, undefined, piece);
      expect(pairs(taken)).toEqual(oracle.map(([, time, value]) => [`${time}:00Z`, Number(value)]));
      expect(report.unusable.count).toBe(0);
    }),
    { numRuns: 200 },
  );
});
