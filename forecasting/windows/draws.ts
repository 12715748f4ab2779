import jStat from 'jstat';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/**
 * A seed for one named thing (a station, a lot, a table), so that what is drawn for it depends on its name and
 * never on the order in which things are listed. FNV-1a, 32 bits.
 */
export function seedFor(seed: number, ...names: readonly string[]): number {
  let hash = 0x811c9dc5 ^ seed;
  for (const name of names) {
    for (let i = 0; i < name.length; i++) hash = Math.imul(hash ^ name.charCodeAt(i), 0x01000193);
    hash = Math.imul(hash ^ 0x1f, 0x01000193);
  }
  return hash | 0;
}

const scores = new Map<number, Float64Array>();

/** Standard normal quantiles in the middle of `count` equal slices: a sample without the luck of the draw. */
function evenScores(count: number): Float64Array {
  let even = scores.get(count);
  if (even === undefined) {
    even = Float64Array.from({ length: count }, (_, i) => jStat.normal.inv((i + 0.5) / count, 0, 1));
    scores.set(count, even);
  }
  return even;
}

/**
 * `count` standard normal draws, one out of each of `count` equal slices, in an order the seed decides (McKay,
 * Beckman & Conover 1979, Technometrics 21:239-245: stratified sampling). Same seed, same draws.
 */
export function normalDraws(count: number, seed: number): Float64Array {
  const drawn = evenScores(count).slice();
  const random = xoroshiro128plus(seed);
  for (let i = count - 1; i > 0; i--) {
    const j = uniformInt(random, 0, i);
    const swapped = drawn[i];
    drawn[i] = drawn[j];
    drawn[j] = swapped;
  }
  return drawn;
}

/**
 * Quantile q of values already sorted, straight between the two around it (type 7 of Hyndman & Fan 1996, The
 * American Statistician 50:361-365). Infinity stands for "never": a quantile that touches it is Infinity.
 */
export function sortedQuantile(sorted: Float64Array, q: number): number {
  const x = q * (sorted.length - 1);
  const i = Math.floor(x);
  const below = sorted[i];
  return x === i ? below : below + (x - i) * (sorted[i + 1] - below);
}
