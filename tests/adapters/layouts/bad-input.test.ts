import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import type { AdapterRemark } from '../../../adapters/index.js';
import { sameReadings } from './compare.js';
import { expectedOf } from './layouts-delimited.js';
import { type InventedSeries, invent } from './record.js';
import { refusalOf, text } from './refused.js';
import { plainStyle, type Style } from './style.js';
import { type Read, readThrough } from './through.js';
import { write } from './write.js';

const series: InventedSeries = invent({
  seed: 3,
  stations: ['weir-pool'],
  first: Date.UTC(2025, 10, 14, 16),
  stepMinutes: 60,
  readings: 100,
})[0]!;

const latin = (content: string): Uint8Array => new Uint8Array(Buffer.from(content, 'latin1'));
const plain = (style: Partial<Style> = {}): string =>
  Buffer.from(write(series, { ...plainStyle, ...style })).toString();

/** The plain download with its lines changed; line 0 is the header. */
function changed(
  change: (line: string, number: number) => string | readonly string[],
  style: Partial<Style> = {},
): Uint8Array {
  const lines = plain(style).trimEnd().split('\n').flatMap(change);
  return text(`${lines.join('\n')}\n`);
}

const without = (dropped: (i: number) => boolean): InventedSeries => {
  const rows = [...series.at.keys()].filter((i) => !dropped(i));
  return { ...series, at: rows.map((i) => series.at[i]!), value: rows.map((i) => series.value[i]!) };
};

const only = (read: Read, kept: InventedSeries): void => sameReadings(read, expectedOf(kept, plainStyle));
const reasons = ({ report }: Read): string[] => report.unusable.examples.map(({ reason }) => reason.code);
const said = ({ report }: Read): string[] => report.assumed.map(({ code }: AdapterRemark) => code);

describe('a file that is no download is refused whole', () => {
  it.each([
    ['an empty file', text(''), /^(?:formats\.empty|empty-file)$/],
    ['blank lines', text('\n\n\n'), /^(?:formats\.empty|empty-file|no-readings-found)$/],
    ['an empty file, gzipped', new Uint8Array(gzipSync('')), /^(?:formats\.empty|empty-file)$/],
    [
      'a photograph',
      latin(`\xff\xd8\xff\xe1\0\x18Exif\0\0${'\x80\x11,;\n'.repeat(400)}`),
      /^formats\.picture$/,
    ],
    [
      'a login page saved as .csv',
      text('<!DOCTYPE html>\n<html><body><form>Sign in <input type="password"></form></body></html>'),
      /^formats\.login-page$/,
    ],
    [
      'a login page, gzipped',
      new Uint8Array(gzipSync('<html><body>Log in</body></html>')),
      /^formats\.login-page$/,
    ],
    [
      'a binary logger file',
      latin(Array.from({ length: 3000 }, (_, i) => String.fromCharCode((i * 89 + 7) % 256)).join('')),
      /^formats\.binary$/,
    ],
    [
      'a workbook',
      latin('PK\x03\x04\x14\0\x06\0\x08\0\0\0!\0[Content_Types].xml\0\0xl/workbook.xml'),
      /^formats\.workbook$/,
    ],
    [
      'a letter',
      text(
        Array.from({ length: 40 }, () => 'Dear coordinator, the ice came early and the logger is gone.').join(
          '\n',
        ),
      ),
      /^no-readings-found$/,
    ],
    ['headers without rows', text('Date and time (UTC),Temperature (°C)\n'), /^headers-without-readings$/],
    [
      'a preamble and headers without rows',
      text('Station: weir\nUnit: °C\nDate and time,Temperature\n'),
      /^headers-without-readings$/,
    ],
    ['a gzip that is cut short', new Uint8Array(gzipSync(plain())).subarray(0, 400), /^damaged-gzip$/],
  ])('%s', async (_, bytes, code) => {
    const refusal = await refusalOf(bytes, { zone: 'UTC' });
    expect(refusal.remark.code).toMatch(code);
    expect(refusal.exit).toBe(2);
  });
});

describe('numbers that cannot be a river’s', () => {
  it('in most lines refuse the file', async () => {
    const refusal = await refusalOf(
      changed((line, i) => (i === 0 ? line : `${line.split(',')[0]},${400 + i}.2`)),
    );
    expect(refusal.remark.code).toMatch(/^(?:not-a-river|mostly-unusable)$/);
  });

  it('in one line cost that line: −300 °C', async () => {
    const read = await readThrough(changed((line, i) => (i === 7 ? `${line.split(',')[0]},-300` : line)));
    only(
      read,
      without((i) => i === 6),
    );
    expect(read.report.unusable).toMatchObject({
      count: 1,
      examples: [{ line: 8, reason: { code: 'line-impossible-value' } }],
    });
  });

  it('two columns of bare numbers that nothing explains', async () => {
    const rows = Array.from({ length: 50 }, (_, i) => `${i + 1},${(3 + i / 10).toFixed(1)}`);
    const refusal = await refusalOf(text(`${rows.join('\n')}\n`), { zone: 'UTC' });
    expect(refusal.remark.code).toMatch(/^(?:unexplained-columns|no-readings-found)$/);
  });

  it('no unit where the values allow more than one ask for it', async () => {
    const warm = changed((line, i) =>
      i === 0 ? 'Date and time,Temperature' : `${line.split(',')[0]},${(34 + i / 50).toFixed(2)}`,
    );
    const refusal = await refusalOf(warm);
    expect(refusal.remark.code).toBe('no-unit');
    expect(refusal.question?.code).toBe('which-unit');
    const read = await readThrough(warm, { unit: 'F' });
    expect(read.got[0]?.value[0]).toBeCloseTo((34.02 - 32) / 1.8, 4);
  });
});

describe('a file that ends too soon', () => {
  it('loses half a last line and nothing else', async () => {
    const whole = plain();
    for (const missing of [4, 9, 16]) {
      const read = await readThrough(text(whole.slice(0, -missing)));
      only(
        read,
        without((i) => i === 99),
      );
      expect(read.report.unusable.count).toBe(1);
    }
  });

  it('does not take a value that lost its last decimal', async () => {
    const read = await readThrough(text(plain().slice(0, -2)));
    only(
      read,
      without((i) => i === 99),
    );
    expect(reasons(read)).toEqual(['line-cut-short']);
  });

  it('keeps a whole last line that only lacks its line end', async () => {
    const read = await readThrough(text(plain().slice(0, -1)));
    only(read, series);
    expect(read.report.unusable.count).toBe(0);
  });

  it('or in the zeros a power cut leaves', async () => {
    const read = await readThrough(text(`${plain()}${'\0'.repeat(5000)}`));
    only(read, series);
  });
});

describe('lines without end', () => {
  const bounded = 400 * 2 ** 20;

  it('a million columns cost one line', async () => {
    const read = await readThrough(changed((line, i) => (i === 40 ? [line, ','.repeat(1e6)] : [line])));
    only(read, series);
    expect(read.report.unusable.examples[0]?.line).toBe(42);
  });

  it('a million columns and nothing else are refused', async () => {
    const refusal = await refusalOf(text(Array.from({ length: 1e6 }, () => '1.5').join(',')), {
      zone: 'UTC',
    });
    expect(refusal.remark.code).toBe('no-readings-found');
  });

  it('a line of 1 GB is refused, and never held', async () => {
    const chunk = text('x'.repeat(1 << 16));
    const before = process.memoryUsage().rss;
    const { readDownload, DownloadRefused } = await import('../../../adapters/index.js');
    const endless = {
      name: 'endless.csv',
      size: 1 << 30,
      async *open() {
        for (let i = 0; i < 1 << 14; i++) yield chunk;
      },
    };
    const sink = { take: () => {}, startAgain: () => {} };
    const reading = readDownload(endless, { zone: 'UTC' }, { zoneOf: () => null }, sink);
    await expect(reading).rejects.toBeInstanceOf(DownloadRefused);
    expect(process.memoryUsage().rss - before).toBeLessThan(bounded);
  });

  it('a line of 100 MB between readings costs one line', async () => {
    const [head, tail] = [plain(), plain().split('\n').slice(1).join('\n').replaceAll('2025-', '2024-')];
    const middle = text('y'.repeat(1 << 20));
    const { readDownload } = await import('../../../adapters/index.js');
    const { Collected } = await import('./through.js');
    const sink = new Collected();
    const source = {
      name: 'one long line.csv',
      size: null,
      async *open() {
        yield text(head);
        for (let i = 0; i < 100; i++) yield middle;
        yield text(`\n${tail}`);
      },
    };
    const report = await readDownload(source, {}, { zoneOf: () => null }, sink);
    expect(sink.all()[0]?.at.length).toBe(200);
    expect(report.unusable).toMatchObject({
      count: 1,
      examples: [{ line: 102, reason: { code: 'line-too-long' } }],
    });
  });

  it('a stray quote costs its own line at most', async () => {
    const read = await readThrough(changed((line, i) => (i === 50 ? `"${line}` : line)));
    only(
      read,
      without((i) => i === 49),
    );
  });
});

describe('a file that changes on its way', () => {
  it('a stray line with another delimiter is counted', async () => {
    const read = await readThrough(changed((line, i) => (i % 60 === 5 ? line.replace(',', ';') : line)));
    only(
      read,
      without((i) => (i + 1) % 60 === 5),
    );
    expect(read.report.unusable.count).toBe(2);
  });

  it('mixed delimiters in half of the lines refuse the file', async () => {
    const refusal = await refusalOf(changed((line, i) => (i % 2 === 1 ? line.replace(',', ';') : line)));
    expect(refusal.exit).toBe(2);
  });

  it.each([
    ['another delimiter', (line: string) => line.replace(',', ';'), 'line-other-delimiter'],
    ['swapped columns', (line: string) => line.split(',').reverse().join(','), 'line-columns-moved'],
  ])(
    '%s from before the middle on refuse the file: what is above is no preamble',
    async (_, other, reason) => {
      const refusal = await refusalOf(changed((line, i) => (i > 20 ? other(line) : line)));
      expect(refusal.remark).toMatchObject({ code: 'layout-changes', with: { reason: { code: reason } } });
    },
  );

  it('columns swapped half-way refuse the file', async () => {
    const swapped = changed((line, i) => (i > 50 ? line.split(',').reverse().join(',') : line));
    const refusal = await refusalOf(swapped);
    expect(refusal.remark.code).toMatch(/^(?:layout-changes|mostly-unusable)$/);
  });

  it('temperature columns that change places under a new header are never mixed', async () => {
    const style = { secondColumn: true };
    const swap = (line: string): string => {
      const [time, a, ...b] = line.split(',');
      return [time, ...b, a].join(',');
    };
    const file = changed(
      (line, i) => (i === 50 ? [swap(plain(style).split('\n')[0]!), swap(line)] : i > 50 ? swap(line) : line),
      style,
    );
    const outcome = await readThrough(file, { column: 'Temperature (°C)' }).catch((error: unknown) => error);
    if (outcome instanceof Error) expect(outcome).toMatchObject({ exit: 2 });
    else sameReadings(outcome as Read, expectedOf(series, plainStyle));
  });

  it('two loggers’ files under one name are refused', async () => {
    const one = (serial: string, station: string): string =>
      Buffer.from(
        write(
          { ...series, station },
          { ...plainStyle, chatter: [`Serial number: ${serial}`], saysStation: 'preamble' },
        ),
      ).toString();
    const refusal = await refusalOf(text(one('70-0042', 'weir-pool') + one('70-0043', 'ford')));
    expect(refusal.remark.code).toBe('several-loggers');
  });
});

describe('times that cannot be', () => {
  it('a clock that was set back is said, and no reading is lost', async () => {
    const lines = plain().trimEnd().split('\n');
    const file = text(`${[lines[0], ...lines.slice(51), ...lines.slice(1, 51)].join('\n')}\n`);
    const read = await readThrough(file);
    const turned = [...series.at.keys()].map((i) => (i + 50) % 100);
    only(read, {
      ...series,
      at: turned.map((i) => series.at[i]!),
      value: turned.map((i) => series.value[i]!),
    });
    expect(said(read)).toContain('time-goes-back');
    expect(read.report.ordered).toBe(false);
  });

  it('of two values at one instant the first is kept and the other counted', async () => {
    const read = await readThrough(
      changed((line, i) => (i === 10 ? [line, `${line.split(',')[0]},9.99`] : [line])),
    );
    only(read, series);
    expect(read.report.unusable).toMatchObject({
      count: 1,
      examples: [{ line: 12, reason: { code: 'line-same-instant' } }],
    });
  });

  it('the same reading twice is one reading', async () => {
    const read = await readThrough(changed((line, i) => (i > 0 && i % 10 === 0 ? [line, line] : [line])));
    only(read, series);
    expect(said(read)).toContain('repeated-readings');
  });

  it('a year 2099 costs its lines', async () => {
    const notAfter = Date.UTC(2026, 10, 26);
    const read = await readThrough(
      changed((line, i) => (i === 30 ? line.replace('2025', '2099') : line)),
      { notAfter },
    );
    only(
      read,
      without((i) => i === 29),
    );
    expect(reasons(read)).toEqual(['line-after-now']);
  });

  it('a file of the year 2099 is refused', async () => {
    const refusal = await refusalOf(
      changed((line) => line.replace('2025', '2099')),
      { notAfter: Date.UTC(2026, 10, 26) },
    );
    expect(refusal.remark.code).toBe('mostly-unusable');
  });

  it.each(['2025-02-30T04:00:00Z', '2025-13-01T04:00:00Z', '2025-11-15T25:00:00Z', '0000-00-00T00:00:00Z'])(
    'a time no clock shows costs its line: %s',
    async (time) => {
      const read = await readThrough(changed((line, i) => (i === 30 ? `${time},4.20` : line)));
      only(
        read,
        without((i) => i === 29),
      );
      expect(read.report.unusable.examples.map(({ line }) => line)).toEqual([31]);
    },
  );
});

describe('what a file leaves open is asked, and the answer lets it in', () => {
  const local: Partial<Style> = { saysOffset: 'no' };

  it('no zone anywhere', async () => {
    const file = text(plain(local));
    const refusal = await refusalOf(file);
    expect([refusal.remark.code, refusal.question?.code]).toEqual(['no-zone', 'which-zone']);
    only(await readThrough(file, { zone: 'UTC' }), series);
  });

  it('an unknown zone is named', async () => {
    const refusal = await refusalOf(text(plain(local)), { zone: 'America/Nowhere' });
    expect(refusal.remark).toEqual({ code: 'unknown-zone', with: { zone: 'America/Nowhere' } });
  });

  it('two temperature columns', async () => {
    const refusal = await refusalOf(text(plain({ secondColumn: true })));
    expect(refusal.question?.code).toBe('which-column');
    expect(JSON.stringify(refusal.question?.with)).toContain('spare sensor');
  });

  it('a column that is not there', async () => {
    const refusal = await refusalOf(text(plain()), { column: 'Oxygen' });
    expect(refusal.remark.code).toBe('unknown-column');
  });

  it('a date that reads in two ways: both readings of the first line are shown', async () => {
    const rows = Array.from({ length: 20 }, (_, i) => `03/04/2025 ${String(i).padStart(2, '0')}:00,1.${i}`);
    const file = text(`Date and time (UTC),Temperature (°C)\n${rows.join('\n')}\n`);
    const refusal = await refusalOf(file);
    expect(refusal.remark.code).toBe('ambiguous-dates');
    const shown = JSON.stringify(refusal.question?.with);
    expect(shown).toContain('2025-04-03');
    expect(shown).toContain('2025-03-04');
    const dayFirst = await readThrough(file, { dateOrder: 'dmy' });
    expect(dayFirst.got[0]?.at[0]).toBe(Date.UTC(2025, 3, 3));
    const monthFirst = await readThrough(file, { dateOrder: 'mdy' });
    expect(monthFirst.got[0]?.at[0]).toBe(Date.UTC(2025, 2, 4));
  });

  it('a date of three small numbers, 03/04/05', async () => {
    const rows = Array.from({ length: 20 }, (_, i) => `03/04/05 ${String(i).padStart(2, '0')}:00,1.${i}`);
    const file = text(`Date and time (UTC),Temperature (°C)\n${rows.join('\n')}\n`);
    expect((await refusalOf(file)).question?.code).toBe('which-date-order');
    const yearFirst = await readThrough(file, { dateOrder: 'ymd' });
    expect(yearFirst.got[0]?.at[0]).toBe(Date.UTC(2003, 3, 5));
  });
});
