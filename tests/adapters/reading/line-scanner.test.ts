import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LineScanner, type LineTaker, LONGEST_LINE } from '../../../adapters/reading/line-scanner.js';

class Lines implements LineTaker {
  readonly found: string[] = [];
  last: string | null = null;
  dropped = 0;

  lines(b: Uint8Array, start: number, end: number): void {
    const text = Buffer.from(b.subarray(start, end)).toString('latin1');
    expect(text.endsWith('\n')).toBe(true);
    this.found.push(...text.slice(0, -1).split('\n'));
  }

  lastLine(b: Uint8Array, start: number, end: number): void {
    this.last = Buffer.from(b.subarray(start, end)).toString('latin1');
  }

  overlong(): void {
    this.dropped++;
  }
}

function scan(text: string, cuts: readonly number[]): Lines {
  const bytes = new Uint8Array(Buffer.from(text, 'latin1'));
  const lines = new Lines();
  const scanner = new LineScanner(lines);
  const places = [0, ...[...cuts].map((cut) => cut % (bytes.length + 1)).sort((a, b) => a - b), bytes.length];
  for (let i = 1; i < places.length; i++) scanner.push(bytes.slice(places[i - 1], places[i]));
  scanner.end();
  return lines;
}

describe('lines', () => {
  it('are the same wherever the stream is cut', () => {
    const text = fc.array(fc.constantFrom('a', 'b,', '\n', '\r\n', '"'), { maxLength: 60 });
    fc.assert(
      fc.property(text, fc.array(fc.nat(), { maxLength: 12 }), (parts, cuts) => {
        const whole = parts.join('');
        const expected = whole.split('\n');
        const last = expected.pop();
        const lines = scan(whole, cuts);
        expect(lines.found).toEqual(expected);
        expect(lines.last ?? '').toBe(last);
      }),
    );
  });

  it('too long are dropped, and only they', () => {
    const long = 'x'.repeat(LONGEST_LINE + 1);
    const lines = scan(`a\n${long}\nb\n${long}`, [5, 70_000, 200_000, LONGEST_LINE, LONGEST_LINE + 4]);
    expect(lines.found).toEqual(['a', 'b']);
    expect(lines.last).toBeNull();
    expect(lines.dropped).toBe(2);
  });

  it('of the greatest length are kept', () => {
    const longest = 'y'.repeat(LONGEST_LINE - 1);
    expect(scan(`${longest}\n`, [1000, 100_000]).found).toEqual([longest]);
  });
});
