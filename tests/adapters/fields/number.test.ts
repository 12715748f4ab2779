import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { textDecoder } from '../../../adapters/fields/bytes.js';
import { isMissingNumber, isMissingText } from '../../../adapters/fields/missing.js';
import { NumberField } from '../../../adapters/fields/number.js';
import { celsius } from '../../../adapters/fields/units.js';

function read(text: string, decimal: '.' | ',' = '.'): number | null {
  const field = new NumberField(decimal, textDecoder('utf-8'));
  const bytes = new Uint8Array(Buffer.from(text));
  return field.read(bytes, 0, bytes.length) ? field.value : null;
}

describe('numbers', () => {
  it('come out as ECMAScript reads them', () => {
    const decimals = fc.tuple(fc.integer({ min: -999_999, max: 999_999 }), fc.integer({ min: 0, max: 8 }));
    fc.assert(
      fc.property(decimals, ([whole, places]) => {
        const text = (whole / 10 ** places).toFixed(places);
        expect(read(text)).toBe(Number(text));
        expect(read(text.replace('.', ','), ',')).toBe(Number(text));
      }),
    );
    fc.assert(
      fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
        expect(read(String(value))).toBe(value + 0);
      }),
    );
  });

  it.each([
    ['+3.5', 3.5],
    ['.5', 0.5],
    ['5.', 5],
    [' -0.25 ', -0.25],
    ['\u22123.5', -3.5],
    ['3.5 °C', 3.5],
    ['38.3\u00a0°F', 38.3],
    ['1e-2', 0.01],
  ])('%s', (text, value) => {
    expect(read(text)).toBe(value);
  });

  it.each(['', '-', '.', '3,5', '1,234.5', '1 234', '3.5.1', '3.5x', 'NaN', '--3', '0x10'])(
    '%s is none',
    (text) => {
      expect(read(text)).toBeNull();
    },
  );

  it('has no thousands with a decimal comma either', () => {
    expect(read('1.234,5', ',')).toBeNull();
    expect(read('1.5', ',')).toBeNull();
  });
});

describe('what stands for nothing measured', () => {
  it.each(['', '---', 'NaN', 'n/a', 'Logged', 'Ice', '#N/A', '#VALUE!'])('%s', (text) => {
    expect(isMissingText(text)).toBe(true);
  });

  it.each([-999, -9999, -99.99, 999.9, 9999, -1e30, Number.POSITIVE_INFINITY])('%d', (value) => {
    expect(isMissingNumber(value)).toBe(true);
  });

  it('is no temperature that can be', () => {
    for (let tenth = -600; tenth <= 600; tenth++) expect(isMissingNumber(tenth / 10)).toBe(false);
  });
});

describe('temperatures in °C', () => {
  // Fixed points of the scales: ice 32 °F, steam 212 °F, equal at -40, 273.15 K at 0 °C (ITS-90; common knowledge).
  // 50 °F is 10 °C: "Predicting the hatch date of salmon using temperature units", ybeep.org, 2012.
  it.each([
    [32, 'F', 0],
    [212, 'F', 100],
    [-40, 'F', -40],
    [50, 'F', 10],
    [37.4, 'F', 3],
    [33, 'F', 0.5556],
    [273.15, 'K', 0],
    [276.4, 'K', 3.25],
    [3.21987, 'C', 3.2199],
  ] as const)('%d %s', (value, unit, expected) => {
    expect(celsius(value, unit)).toBe(expected);
  });

  it('has no negative zero', () => {
    expect(Object.is(celsius(-0, 'C'), 0)).toBe(true);
    expect(Object.is(celsius(-0.00001, 'C'), 0)).toBe(true);
  });
});
