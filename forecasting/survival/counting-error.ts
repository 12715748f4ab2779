import type { Counted } from './wilson.js';

/**
 * One standard deviation of a count, eggs, from boxes that two people counted: √(Σ d²/2m), d the difference of the two
 * and m the pairs (Dahlberg 1940, Statistical Methods for Medical and Biological Students: memory).
 *
 * @returns null where nothing was counted twice.
 * @example countingError([4, 2]) // √(20/4) = 2.236
 */
export function countingError(differences: readonly number[]): number | null {
  if (differences.length === 0) return null;
  return Math.sqrt(differences.reduce((sum, d) => sum + d ** 2, 0) / (2 * differences.length));
}

/**
 * A share whose count is itself unsure, as one of fewer eggs: n' = pq / (pq/n + s²/(c n²)), so that every interval made
 * of it is as wide as both errors ask (ours). Between boxes nothing is to be added: how far they differ holds it already.
 *
 * @param error one standard deviation of one count, eggs
 * @param counters how many counted this box; their mean is what `seen` is
 */
export function worthFewer({ seen, of }: Counted, error: number, counters: number): Counted {
  const share = Math.min(1, seen / of);
  const chance = share * (1 - share);
  if (!(of > 0) || chance === 0) return { seen, of };
  const worth = chance / (chance / of + error ** 2 / (counters * of ** 2));
  return { seen: share * worth, of: worth };
}
