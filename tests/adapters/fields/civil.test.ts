import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { textDecoder } from '../../../adapters/fields/bytes.js';
import { DAY, dayNumber, daysInMonth, fullYear } from '../../../adapters/fields/civil.js';
import { CivilTime } from '../../../adapters/fields/civil-time.js';
import { NO_OFFSET } from '../../../adapters/fields/clock-text.js';

type Order = 'ymd' | 'dmy' | 'mdy';

/** The wall-clock time of a text and the offset it states, or null. */
function read(text: string, order: Order = 'dmy', yearDigits: 0 | 2 | 4 = 0) {
  const time = new CivilTime({ order, yearDigits }, textDecoder('utf-8'));
  const bytes = new Uint8Array(Buffer.from(`x${text}y`));
  if (!time.read(bytes, 1, bytes.length - 1)) return null;
  const iso = new Date(time.day * DAY + time.millis).toISOString();
  return { iso, offset: time.offset === NO_OFFSET ? null : time.offset, hasClock: time.hasClock };
}

const at = (text: string, order?: Order) => read(text, order)?.iso ?? null;

describe('dayNumber', () => {
  it('counts as the ECMAScript calendar does', () => {
    const within = { min: Date.UTC(1600, 0, 1), max: Date.UTC(2500, 0, 1) };
    fc.assert(
      fc.property(fc.integer(within), (millis) => {
        const date = new Date(millis);
        const day = dayNumber(date.getUTCFullYear(), date.getUTCMonth() + 1, date.getUTCDate());
        expect(day).toBe(Math.floor(millis / DAY));
      }),
    );
  });

  it('knows no day that the calendar lacks', () => {
    for (const [y, m, d] of [
      [2026, 2, 29],
      [1900, 2, 29],
      [2026, 13, 1],
      [2026, 0, 1],
      [2026, 4, 31],
      [2026, 1, 0],
    ])
      expect(dayNumber(y, m, d)).toBeNaN();
    expect(dayNumber(2000, 2, 29)).toBe(11_016);
    expect(daysInMonth(2024, 2)).toBe(29);
  });

  it('takes two-digit years from 1970 to 2069', () => {
    expect([70, 99, 0, 26, 69].map(fullYear)).toEqual([1970, 1999, 2000, 2026, 2069]);
  });
});

describe('dates and clocks', () => {
  it.each([
    ['2026-01-15T10:05:00Z', '2026-01-15T10:05:00.000Z', 0],
    ['2026-01-15T10:05:00-03:30', '2026-01-15T10:05:00.000Z', -210],
    ['2026-01-15 10:05:00+0545', '2026-01-15T10:05:00.000Z', 345],
    ['2026-01-15 10:05 UTC', '2026-01-15T10:05:00.000Z', 0],
    ['2026-01-15 10:05 (UTC−3)', '2026-01-15T10:05:00.000Z', -180],
    ['2026-01-15 10:05 HNE', '2026-01-15T10:05:00.000Z', -300],
    ['2026-01-15T10:05:30.25', '2026-01-15T10:05:30.250Z', null],
    ['2026-01-15 10:05:30,250', '2026-01-15T10:05:30.250Z', null],
    ['2026/1/5 9:05', '2026-01-05T09:05:00.000Z', null],
    ['15.01.2026 24:00', '2026-01-16T00:00:00.000Z', null],
    ['15/01/26 12:05:00 AM', '2026-01-15T00:05:00.000Z', null],
    ['15/01/26 12:05 p.m.', '2026-01-15T12:05:00.000Z', null],
    ['15-Jan-2026 1:05 PM', '2026-01-15T13:05:00.000Z', null],
    ['Jan 15, 2026 10:05', '2026-01-15T10:05:00.000Z', null],
    ['mardi 15 décembre 2026 à 10 h 05', '2026-12-15T10:05:00.000Z', null],
    ['mar. 15 déc. 2026 10 h', '2026-12-15T10:00:00.000Z', null],
    ['1er févr. 2026 9h05', '2026-02-01T09:05:00.000Z', null],
    ['15 août 2026 10 h 05 min 30 s', '2026-08-15T10:05:30.000Z', null],
    ['202601151005', '2026-01-15T10:05:00.000Z', null],
    ['20260115 1005', '2026-01-15T10:05:00.000Z', null],
    ['2026-Jan-15 10:05', '2026-01-15T10:05:00.000Z', null],
    ['  2026-01-15 10:05  ', '2026-01-15T10:05:00.000Z', null],
  ])('%s', (text, iso, offset) => {
    expect(read(text)).toEqual({ iso, offset, hasClock: true });
  });

  it('reads three numbers in the order it is told', () => {
    expect(at('03/04/05', 'dmy')).toBe('2005-04-03T00:00:00.000Z');
    expect(at('03/04/05', 'mdy')).toBe('2005-03-04T00:00:00.000Z');
    expect(at('03/04/05', 'ymd')).toBe('2003-04-05T00:00:00.000Z');
    expect(at('2005-04-03', 'mdy')).toBe('2005-04-03T00:00:00.000Z');
  });

  it.each([
    '',
    '2026-02-30 10:00',
    '2026-01-15 1',
    '2026-01-15 10:0',
    '2026-01-15 10:00:0',
    '2026-01-15 25:00',
    '2026-01-15 10:61',
    '15/13/2026',
    '2026-01-15 13:05 PM',
    '2026-01-15 10:00 noon',
    '2026-01-15 10:00 +25:00',
    '2026-01/15',
    '15 jui 2026',
    '3.25',
    '12:30',
    'January',
  ])('%s is none', (text) => {
    expect(read(text)).toBeNull();
  });

  it('takes no year of two digits where the file writes four', () => {
    expect(read('15/01/20', 'dmy', 4)).toBeNull();
    expect(read('15/01/2026', 'dmy', 2)).toBeNull();
  });

  it('says when a date would pass in the other order', () => {
    const time = new CivilTime({ order: 'mdy', yearDigits: 0 }, textDecoder('utf-8'));
    const bytes = new Uint8Array(Buffer.from('25/12/2025'));
    expect(time.read(bytes, 0, bytes.length)).toBe(false);
    expect(time.date.passesSwapped).toBe(true);
  });

  // luxon writes, this reads: the one knows nothing of the other.
  it.each([
    ['en', 'yyyy-MM-dd HH:mm:ss', 'dmy'],
    ['en', 'M/d/yyyy h:mm:ss a', 'mdy'],
    ['en', 'dd LLL yyyy HH:mm:ss', 'dmy'],
    ['en', 'cccc, LLLL d, yyyy HH:mm:ss', 'dmy'],
    ['fr', 'd LLL yyyy HH:mm:ss', 'dmy'],
    ['fr', 'cccc d LLLL yyyy HH:mm:ss', 'dmy'],
    ['fr-CA', "d LLL yyyy HH 'h' mm 'min' ss 's'", 'dmy'],
    ['en', "yyyy-MM-dd'T'HH:mm:ssZZ", 'dmy'],
  ] as const)('luxon %s %s comes back', (locale, format, order) => {
    const seconds = { min: Date.UTC(1980, 0, 1) / 1000, max: Date.UTC(2069, 0, 1) / 1000 };
    fc.assert(
      fc.property(fc.integer(seconds), (second) => {
        const text = DateTime.fromSeconds(second, { zone: 'utc' }).setLocale(locale).toFormat(format);
        expect(at(text, order)).toBe(new Date(second * 1000).toISOString());
      }),
    );
  });

  it('forgets the row before when the date goes on differently', () => {
    const time = new CivilTime({ order: 'dmy', yearDigits: 0 }, textDecoder('utf-8'));
    const days = ['15/01/20', '15/01/2026', '15/01/20 10:00', '1/1/2026', '11/1/2026'].map((text) => {
      const bytes = new Uint8Array(Buffer.from(text));
      expect(time.read(bytes, 0, bytes.length)).toBe(true);
      return new Date(time.day * DAY).toISOString().slice(0, 10);
    });
    expect(days).toEqual(['2020-01-15', '2026-01-15', '2020-01-15', '2026-01-01', '2026-01-11']);
  });
});
