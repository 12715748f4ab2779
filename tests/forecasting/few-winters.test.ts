import { describe, expect, it } from 'vitest';
import { normalDraws, seedFor, sortedQuantile } from '../../forecasting/windows/draws.js';
import { dressing } from '../../forecasting/windows/dressing.js';

/** Share of further winters that an interval dressed from n winters holds, over many made-up records. */
function coverage(n: number, spread: number): number {
  let held = 0;
  const records = 600;
  for (let record = 0; record < records; record++) {
    const drawn = normalDraws(600, seedFor(record, 'record', String(n)));
    const seen = drawn.subarray(0, n).map((z) => 1 + spread * z);
    const traces = Float64Array.from({ length: 201 }, (_, i) => seen[i % n]);
    const error = dressing(traces, new Float64Array(201), n);
    const noise = normalDraws(201, seedFor(record, 'noise'));
    const dressed = traces.map((value, i) => value + error * noise[i]).sort();
    const [low, high] = [sortedQuantile(dressed, 0.1), sortedQuantile(dressed, 0.9)];
    const further = drawn.subarray(300).map((z) => 1 + spread * z);
    held += further.filter((value) => value >= low && value <= high).length / further.length;
  }
  return held / records;
}

describe('few winters', () => {
  it.each([1, 2, 4, 8, 12, 20])('of %s the interval said to hold 80 in 100 further winters does', (n) => {
    expect(coverage(n, 0.15)).toBeGreaterThan(0.76);
    expect(coverage(n, 0.15)).toBeLessThan(n === 1 ? 0.9 : 0.86);
  });

  it('raw, they would hold 51 % at n = 4 and 68 % at 12 (computed, check-values)', () => {
    const raw = (n: number) => {
      let held = 0;
      for (let record = 0; record < 600; record++) {
        const drawn = normalDraws(600, seedFor(record, 'record', String(n)));
        const seen = drawn.slice(0, n).sort();
        const [low, high] = [sortedQuantile(seen, 0.1), sortedQuantile(seen, 0.9)];
        held += drawn.subarray(300).filter((z) => z >= low && z <= high).length / 300;
      }
      return held / 600;
    };
    expect(raw(4)).toBeCloseTo(0.51, 1);
    expect(raw(12)).toBeCloseTo(0.68, 1);
  });

  it('of rivers that differ less or more than is usual still hold most', () => {
    expect(coverage(4, 0.1)).toBeGreaterThan(0.8);
    expect(coverage(4, 0.25)).toBeGreaterThan(0.62);
    expect(coverage(12, 0.25)).toBeGreaterThan(0.73);
  });

  it('without winters nothing is added: a stated curve brings its own spread', () => {
    expect(dressing(new Float64Array(201).fill(1), new Float64Array(201), 0)).toBe(0);
  });
});
