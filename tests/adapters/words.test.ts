import { describe, expect, it } from 'vitest';
import type { EngineWords, LineRemark } from '../../adapters/index.js';
import { adapters as en } from '../../src/words/en/adapters.js';
import { adapters as fr } from '../../src/words/fr/adapters.js';

const reason: LineRemark = { code: 'line-bad-time', with: { text: 'XtextX' } };
const zone = { zone: 'XzoneX', station: 'XstationX' };
const columns = ['XoneX', 'XtwoX'];

/** Figures for every code; what is written X…X must stand in the sentence. */
const figures: { [Code in keyof EngineWords]: EngineWords[Code] } = {
  'line-too-long': { limitKiB: 256 },
  'line-too-many-columns': { limit: 5 },
  'line-too-few-columns': { found: 2, needed: 3 },
  'line-no-time': { text: 'XtextX' },
  'line-bad-time': { text: 'XtextX' },
  'line-skipped-hour': { text: 'XtextX', zone: 'XzoneX' },
  'line-after-now': { text: 'XtextX' },
  'line-not-a-number': { text: 'XtextX' },
  'line-impossible-value': { text: 'XtextX' },
  'line-unknown-unit': { text: 'XtextX' },
  'line-unknown-zone': { text: 'XtextX' },
  'line-no-station': {},
  'line-same-instant': { firstLine: 7, kept: 3.25, dropped: 9.75 },
  'line-cut-short': { text: 'XtextX' },
  'line-other-delimiter': { text: 'XtextX' },
  'line-columns-moved': { text: 'XtextX' },
  'empty-file': {},
  'damaged-gzip': {},
  'no-readings-found': { firstLine: 'XtextX' },
  'headers-without-readings': { headers: columns },
  'unknown-zone': { zone: 'XzoneX' },
  'no-temperature-column': { headers: columns },
  'unknown-column': { asked: 'XaskedX', headers: columns },
  'several-columns': { columns },
  'unexplained-columns': { columns, firstLine: 'XtextX' },
  'ambiguous-dates': { text: 'XtextX' },
  'no-zone': { station: 'XstationX' },
  'no-unit': { smallest: 33, largest: 35 },
  'mostly-unusable': { unusable: 8, lines: 9, line: 2, reason },
  'layout-changes': { line: 5, reason },
  'several-loggers': { line: 5, first: 'XfirstX', second: 'XsecondX' },
  'too-many-stations': { limit: 9, example: 'XexampleX' },
  'several-stations': { asked: 'XaskedX', stations: columns },
  'not-a-river': { outside: 8, readings: 9, smallest: 200, largest: 300 },
  'dates-without-clock': { date: 'XdateX' },
  'which-column': { columns },
  'which-date-order': {
    text: 'XtextX',
    readings: [
      { order: 'dmy', iso: 'XdayX' },
      { order: 'mdy', iso: 'XmonthX' },
    ],
  },
  'which-zone': {},
  'which-unit': {},
  'leave-station-out': {},
  'unit-assumed': { unit: 'XunitX', smallest: 0, largest: 9 },
  'unit-asked-not-used': { asked: 'XaskedX', stated: 'XstatedX' },
  'zone-asked': { zone: 'XzoneX' },
  'zone-asked-not-used': { asked: 'XaskedX', stated: 'XstatedX' },
  'zone-stated-unknown': { stated: 'XstatedX' },
  'zone-from-deployment': zone,
  'zone-from-station': zone,
  'zone-from-longitude': { zone: 'XzoneX', longitude: -66 },
  'zone-home-for-days': { zone: 'XzoneX' },
  'zone-utc-for-days': {},
  'standard-time-of-zone': { zone: 'XzoneX', offset: 'XoffsetX' },
  'offset-in-each-value': {},
  'kept-one-offset': { zone: 'XzoneX', offset: 'XoffsetX' },
  'fixed-offset-shown': { zone: 'XzoneX', offset: 'XoffsetX' },
  'wall-time-shown': { zone: 'XzoneX' },
  'no-header': { timeColumns: columns, valueColumn: 'XvalueX' },
  'date-order-by-steps': { order: 'dmy' },
  'date-order-asked-not-used': { asked: 'mdy', found: 'dmy' },
  'columns-taken-for-stations': { stations: columns },
  'station-by-serial': { station: 'XstationX', serial: 'XserialX' },
  'station-asked-not-file': { asked: 'XaskedX', stated: 'XstatedX' },
  'daily-means-assumed': {},
  'extremes-not-means': { column: 'XcolumnX' },
  'air-beside-weather': { columns },
  'column-taken': { column: 'XcolumnX', left: columns },
  'column-without-unit-left': { column: 'XcolumnX' },
  'repeated-readings': { count: 4 },
  'missing-values': { count: 4 },
  'time-goes-back': { line: 5, times: 2 },
};

function say<Code extends keyof EngineWords>(code: Code): [string, string] {
  return [en[code](figures[code]), fr[code](figures[code])];
}

const codes = Object.keys(figures).filter((code): code is keyof EngineWords => code in en);

describe('every remark of the adapters, in both languages', () => {
  it('has figures here for each code', () => {
    expect(codes.length).toBe(Object.keys(en).length);
  });

  it.each(codes)('%s', (code) => {
    const needed = JSON.stringify(figures[code]).match(/X[a-z]+X/g) ?? [];
    const [english, french] = say(code);
    for (const sentence of [english, french]) {
      for (const text of needed) expect(sentence).toContain(text);
      expect(sentence).not.toMatch(/undefined|null|NaN|\[object/);
    }
    expect(english).not.toBe(french);
  });

  it('keeps a list of many columns short', () => {
    const many = Array.from({ length: 40 }, (_, i) => `c${i}`);
    expect(en['several-columns']({ columns: many })).toContain('28 more');
    expect(fr['several-columns']({ columns: many })).toContain('28 autres');
  });
});
