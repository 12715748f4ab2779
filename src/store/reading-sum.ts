import type { ReadingSum } from './reading-store.js';

/**
 * The checksum of readings is the sum over them of (instant mod P) × (value in 1e-4 mod Q + 1), mod 2^52 − 47 (ours):
 * any order of the rows gives the same, every product fits exactly into a double, and a database can add it up itself.
 */
export const INSTANT_MODULUS = 67_108_859;
export const VALUE_MODULUS = 67_108_837;
export const SUM_MODULUS = 4_503_599_627_370_449;

/** Adds up readings as they pass. */
export class RunningSum {
  private readings = 0;
  private first = Number.POSITIVE_INFINITY;
  private last = Number.NEGATIVE_INFINITY;
  private min = Number.POSITIVE_INFINITY;
  private max = Number.NEGATIVE_INFINITY;
  private checksum = 0;

  add(at: number, value: number): void {
    this.readings++;
    if (at < this.first) this.first = at;
    if (at > this.last) this.last = at;
    if (value < this.min) this.min = value;
    if (value > this.max) this.max = value;
    const instant = ((at % INSTANT_MODULUS) + INSTANT_MODULUS) % INSTANT_MODULUS;
    const steps = ((Math.round(value * 1e4) % VALUE_MODULUS) + VALUE_MODULUS) % VALUE_MODULUS;
    this.checksum = (this.checksum + instant * (steps + 1)) % SUM_MODULUS;
  }

  sum(): ReadingSum {
    const { readings, first, last, min, max, checksum } = this;
    return { readings, first, last, min, max, checksum };
  }
}

export function sameSum(a: ReadingSum | undefined, b: ReadingSum | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  return (
    a.readings === b.readings &&
    a.checksum === b.checksum &&
    a.first === b.first &&
    a.last === b.last &&
    a.min === b.min &&
    a.max === b.max
  );
}

/** Whether every series of both sides adds up to the same. */
export function sameSums(a: ReadonlyMap<number, ReadingSum>, b: ReadonlyMap<number, ReadingSum>): boolean {
  return a.size === b.size && [...a].every(([series, sum]) => sameSum(sum, b.get(series)));
}
