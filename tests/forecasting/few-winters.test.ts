import { describe, expect, it } from 'vitest';
import { drawnDepartures } from '../../forecasting/projection/departures.js';
import { normalDraws, seedFor, sortedQuantile } from '../../forecasting/windows/draws.js';
import { widerFor } from '../../forecasting/windows/few-winters.js';

const RECORDS = 600;
const SPREAD = 0.15;
const POOLED = 3;
/** What the raw 10-90 % of n members covers. */
const RAW_COVERAGE = [
  [4, 0.51],
  [5, 0.57],
  [8, 0.64],
  [12, 0.68],
  [20, 0.73],
] as const;

/**
 * Share of further winters that the interval from n winters holds, over many made-up records: the traces are what
 * the water's are, normal with the spread of the n winters (pooled with the usual one) and the error of their mean.
 */
function coverage(n: number, widened: boolean): number {
  const shape = normalDraws(201, 5);
  let held = 0;
  for (let record = 0; record < RECORDS; record++) {
    const winters = normalDraws(600, seedFor(record, 'record', String(n)));
    // The usual spread is itself an estimate: from three further winters.
    const usual = winters.subarray(n, n + POOLED).reduce((sum, z) => sum + z * z, 0);
    const seen = winters.subarray(0, n);
    const mean = seen.reduce((sum, z) => sum + z, 0) / n;
    const squares = seen.reduce((sum, z) => sum + (z - mean) ** 2, 0) + usual;
    const spread = Math.sqrt((squares / (n - 1 + POOLED)) * (1 + 1 / n));
    const wider = widened ? widerFor(n) : 1;
    const sorted = shape.map((z) => 1 + SPREAD * (mean + wider * spread * z)).sort();
    const [low, high] = [sortedQuantile(sorted, 0.1), sortedQuantile(sorted, 0.9)];
    const further = winters.subarray(300).map((z) => 1 + SPREAD * z);
    held += further.filter((value) => value >= low && value <= high).length / further.length;
  }
  return held / RECORDS;
}

describe('few winters', () => {
  it.each([1, 2, 4, 8, 12, 20])('of %s the interval said to hold 80 in 100 further winters does', (n) => {
    expect(coverage(n, true)).toBeGreaterThan(0.77);
    expect(coverage(n, true)).toBeLessThan(0.83);
  });

  it('not widened, the interval of one or two would hold too few', () => {
    expect(coverage(1, false)).toBeLessThan(0.76);
    expect(coverage(1, true)).toBeGreaterThan(coverage(1, false) + 0.03);
  });

  it('widen by the quantile of t: 1.638 over 1.282 for one (tables of t and the normal), ever less for more', () => {
    expect(widerFor(1)).toBeCloseTo(1.638 / 1.2816, 3);
    expect(widerFor(4)).toBeCloseTo(1.44 / 1.2816, 3);
    expect(widerFor(1000)).toBeCloseTo(1, 2);
  });

  it('without winters nothing is added: a stated curve brings its own spread', () => {
    expect(widerFor(0)).toBe(1);
  });

  it('the courses of the water carry it, beside the error of the mean and what the normals hide', () => {
    const days = 40;
    const spreadOf = (n: number) => {
      const quiet = {
        departure: new Float64Array(days),
        unsure: new Float64Array(days),
        measured: 242,
        days: 242,
      };
      const members = Array.from({ length: n }, (_, season) => ({ season, ...quiet }));
      const draw = drawnDepartures(members, new Float64Array(days).fill(1), 8, 2001);
      const path = new Float64Array(days);
      let squares = 0;
      for (let i = 0; i < 2000; i++) {
        draw(i, path);
        squares += path[days - 1] ** 2;
      }
      return Math.sqrt(squares / 2000);
    };
    // t(0.9; 3) = 1.638 and t(0.9; 7) = 1.415 over z(0.9) = 1.2816 (tables); a = 0 and 4/7, c² = 4 and 5/4
    expect(spreadOf(1) / ((1.638 / 1.2816) * Math.sqrt(2) * 2)).toBeCloseTo(1, 1);
    expect(spreadOf(5) / ((1.415 / 1.2816) * Math.sqrt((6 / 5) * (3 / 7) * (5 / 4)))).toBeCloseTo(1, 1);
  });

  it('winters that were filled from other stations widen it by the error of the filling', () => {
    const days = 40;
    const spreadOf = (unsure: number) => {
      const member = { departure: new Float64Array(days), unsure: new Float64Array(days).fill(unsure) };
      const members = [1, 2, 3].map((season) => ({ season, ...member, measured: 0, days: 242 }));
      const draw = drawnDepartures(members, new Float64Array(days).fill(1), 8, 501);
      const path = new Float64Array(days);
      draw(0, path);
      return Math.abs(path[days - 1]);
    };
    expect(spreadOf(1)).toBeGreaterThan(spreadOf(0));
  });

  it('raw members would hold 51, 57, 64, 68 and 73 % of further winters (computed; simulated beforehand)', () => {
    const raw = (n: number) => {
      let held = 0;
      for (let record = 0; record < RECORDS; record++) {
        const drawn = normalDraws(600, seedFor(record, 'record', String(n)));
        const seen = drawn.slice(0, n).sort();
        const [low, high] = [sortedQuantile(seen, 0.1), sortedQuantile(seen, 0.9)];
        held += drawn.subarray(300).filter((z) => z >= low && z <= high).length / 300;
      }
      return held / RECORDS;
    };
    for (const [n, share] of RAW_COVERAGE) expect(Math.abs(raw(n) - share)).toBeLessThan(0.03);
  });
});
