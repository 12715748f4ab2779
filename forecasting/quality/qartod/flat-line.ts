/** The manual's counts of equal readings in a row. */
export const SUSPECT_COUNT = 3;
export const FAIL_COUNT = 5;

/** How many readings in a row have to be equal. */
export interface FlatCounts {
  readonly suspect: number;
  readonly fail: number;
}

/**
 * QARTOD test 8, flat line: a reading that agrees with the ones before it within `tolerance` is 3 when `suspect` in a
 * row do, 4 when `fail` do, else 1. `spared` readings are exempt and stay 1: the ice plateau.
 *
 * @example flatLine([5, 5.1, 5.1, 5.1, 5.1, 5.1], 0.01) // 1, 1, 1, 3, 3, 4
 */
export function flatLine(
  value: ArrayLike<number>,
  tolerance: number,
  counts: (n: number) => FlatCounts = () => ({ suspect: SUSPECT_COUNT, fail: FAIL_COUNT }),
  spared: (value: number) => boolean = () => false,
): Uint8Array {
  const flag = new Uint8Array(value.length).fill(1);
  let equal = 1;
  for (let n = 1; n < value.length; n++) {
    equal = Math.abs(value[n] - value[n - 1]) < tolerance ? equal + 1 : 1;
    if (equal < SUSPECT_COUNT) continue;
    const { suspect, fail } = counts(n);
    if (equal < suspect || spared(value[n])) continue;
    flag[n] = equal >= fail ? 4 : 3;
  }
  return flag;
}

/**
 * The counts for a record whose resolution is coarse beside what changes between two readings: the manual's where
 * equal neighbours are rare, more where they are not, so that a run as long comes by chance less than once in 10
 * million readings (suspect) or 10 billion (fail). Ours; the manual's counts are the floor.
 *
 * @param share of readings that equal the one before, outside the ice plateau
 */
export function countsFor(share: number): FlatCounts {
  const p = Math.min(0.98, Math.max(1e-9, share));
  const count = (chance: number) => 1 + Math.ceil(Math.log(chance) / Math.log(p));
  return { suspect: Math.max(SUSPECT_COUNT, count(1e-7)), fail: Math.max(FAIL_COUNT, count(1e-10)) };
}
