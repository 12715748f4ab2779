import { BINS, binOf } from '../residual/season-kernel.js';
import type { SeasonAxis } from '../season-axis.js';

/** n, Σx, Σy, Σx², Σxy, Σy² of the days two stations share. */
export const SUMS = 6;

/** Sums over the days on which both stations have a value, for each season and bin of the season. */
export type PairSums = ReadonlyMap<number, Float64Array>;

/**
 * Where nothing but sums is kept, a winter is taken out by leaving its sums out: one pass over the record serves
 * every hidden winter and every fold.
 */
export function pairSums(axis: SeasonAxis, x: Float64Array, y: Float64Array): PairSums {
  const seasons = new Map<number, Float64Array>();
  let season = Number.NaN;
  let sums: Float64Array = new Float64Array(0);
  for (let i = 0; i < axis.length; i++) {
    const a = x[i];
    const b = y[i];
    if (Number.isNaN(a) || Number.isNaN(b)) continue;
    if (axis.season[i] !== season) {
      season = axis.season[i];
      sums = seasons.get(season) ?? new Float64Array(BINS * SUMS);
      seasons.set(season, sums);
    }
    add(sums, binOf(axis.seasonDay[i]) * SUMS, a, b);
  }
  return seasons;
}

/** Adds one day's pair to the six sums at `at`. */
export function add(sums: Float64Array, at: number, x: number, y: number): void {
  sums[at]++;
  sums[at + 1] += x;
  sums[at + 2] += y;
  sums[at + 3] += x * x;
  sums[at + 4] += x * y;
  sums[at + 5] += y * y;
}

/** Sums of all seasons but those left out. */
export function sumsWithout(pairs: PairSums, out: readonly number[]): Float64Array {
  const sums = new Float64Array(BINS * SUMS);
  for (const [season, of] of pairs) {
    if (out.includes(season)) continue;
    for (let i = 0; i < sums.length; i++) sums[i] += of[i];
  }
  return sums;
}

/** Days in sums. */
export function daysIn(sums: Float64Array): number {
  let n = 0;
  for (let at = 0; at < sums.length; at += SUMS) n += sums[at];
  return n;
}
