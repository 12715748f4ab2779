/** The manual's counts of equal readings in a row. */
export const SUSPECT_COUNT = 3;
export const FAIL_COUNT = 5;

/** How many readings in a row have to be equal. */
export interface FlatCounts {
  readonly suspect: number;
  readonly fail: number;
}

/**
 * QARTOD test 8, flat line: a reading is 3 when it and the ones before it, `suspect` in all, agree with it within
 * `tolerance`, 4 when `fail` do, else 1; 9 where there is no value. Each is compared with the newest, not with the one
 * beside it: a slow drift is no flat line. `spared` readings are exempt and stay 1: the ice plateau.
 *
 * The manual says "the three (five) most recent observations are equal" and beside it writes a loop over as many
 * *previous* ones, which asks for one more. Ours follows the sentence; implementations that follow the loop flag one
 * reading later (tests/references/qartod.test.ts).
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
  for (let n = 0; n < value.length; n++) {
    if (Number.isNaN(value[n])) flag[n] = 9;
    else if (!spared(value[n])) flag[n] = flagOf(value, n, tolerance, counts);
  }
  return flag;
}

function flagOf(
  value: ArrayLike<number>,
  n: number,
  tolerance: number,
  counts: (n: number) => FlatCounts,
): 1 | 3 | 4 {
  const agree = (back: number) => Math.abs(value[n] - value[n - back]) < tolerance;
  if (n < SUSPECT_COUNT - 1 || !agree(1) || !agree(2)) return 1;
  const { suspect, fail } = counts(n);
  let equal = SUSPECT_COUNT;
  while (equal < fail && equal <= n && agree(equal)) equal++;
  if (equal >= fail) return 4;
  return equal >= suspect ? 3 : 1;
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
