import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DownloadRefused } from '../../../adapters/index.js';
import { type Layout, sampleRecord } from './layout.js';
import { layouts } from './layouts.js';
import { delimitedLayouts } from './layouts-delimited.js';
import { type Read, readThrough } from './through.js';

/**
 * Not those about one change of the clocks (the damaged line may be the only one that shows it), and no encoding
 * that strange bytes in one line can outweigh.
 */
const steady = delimitedLayouts.filter(
  ({ file, anyDate }) => anyDate && !/utf-16|code-page|\.gz$/.test(file),
);

const readingsOf = ({ got }: Read): string[] =>
  got.flatMap(({ key, at, value }) =>
    at.map((instant, i) => `${key.station} ${key.quantity} ${instant} ${value[i]}`),
  );

const readLayoutFile = (layout: Layout, bytes: Uint8Array): Promise<Read> =>
  readThrough(bytes, layout.asked, layout.known, layout.file);

/** One line, anywhere among the readings but the first and last ones, replaced by something else. */
function withLine(bytes: Uint8Array, line: number, replaced: string): Uint8Array {
  const lines = Buffer.from(bytes).toString('latin1').split('\n');
  lines[line] = Buffer.from(replaced, 'utf8').toString('latin1');
  return new Uint8Array(Buffer.from(lines.join('\n'), 'latin1'));
}

const junk = fc.oneof(
  fc.string({ maxLength: 60 }),
  fc.string({ unit: 'binary', maxLength: 60 }),
  fc.constantFrom(
    '"',
    '""""',
    ',,,,,,,',
    ';;;;',
    '\t\t',
    '2025',
    'Date,Time',
    '1,2,3,4,5,6,7,8',
    'Infinity,NaN',
    '=HYPERLINK("http://example.org")',
    '9999-99-99 99:99:99,99',
    '0,0',
    '\0\0\0\0\0\0',
  ),
);

describe('a damaged line', () => {
  it('costs itself at most: every other reading comes out as it was', async () => {
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...steady), fc.nat(60), junk, async (layout, place, replaced) => {
        const bytes = layout.write(sampleRecord(layout));
        const whole = readingsOf(await readLayoutFile(layout, bytes));
        const lines = Buffer.from(bytes).toString('latin1').split('\n').length;
        const line = Math.min(lines - 12, lines - 100 + 25 + place);
        const damaged = readingsOf(
          await readLayoutFile(layout, withLine(bytes, Math.max(8, line), replaced.replace(/[\r\n]/g, ' '))),
        );
        const lost = whole.filter((reading) => !damaged.includes(reading));
        const more = damaged.filter((reading) => !whole.includes(reading));
        expect(lost.length).toBeLessThanOrEqual(1);
        expect(more.length).toBeLessThanOrEqual(1);
      }),
      { numRuns: 400, seed: 17 },
    );
  });
});

describe('bytes changed, cut or doubled anywhere', () => {
  const damage = fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true, maxExcluded: true }),
    length: fc.nat(400),
    how: fc.constantFrom('cut', 'double', 'fill', 'end'),
    byte: fc.nat(255),
  });

  it('are refused or read, and nothing else happens', async () => {
    await fc.assert(
      fc.asyncProperty(fc.constantFrom(...layouts), damage, async (layout, { at, length, how, byte }) => {
        const bytes = Buffer.from(layout.write(sampleRecord(layout)));
        const from = Math.floor(at * bytes.length);
        const [before, middle, after] = [
          bytes.subarray(0, from),
          bytes.subarray(from, from + length),
          bytes.subarray(from + length),
        ];
        const parts = {
          cut: [before, after],
          double: [before, middle, middle, after],
          fill: [before, Buffer.alloc(middle.length, byte), after],
          end: [before],
        }[how];
        const outcome = await readLayoutFile(layout, new Uint8Array(Buffer.concat(parts))).catch(
          (error: unknown) => error,
        );
        if (outcome instanceof Error) expect(outcome).toBeInstanceOf(DownloadRefused);
        else expect(outcome).toHaveProperty('report');
      }),
      { numRuns: 600, seed: 18 },
    );
  });
});
