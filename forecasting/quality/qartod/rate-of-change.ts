/** The manual's example: three standard deviations of the readings of the last 25 hours, a tide and a bit. */
export const DEVIATIONS = 3;
export const HOURS_BEFORE = 25;

const HOUR = 3_600_000;

/**
 * QARTOD test 7, rate of change: 3 where a reading departs from the one before it by more than `deviations` times
 * the standard deviation of the `hours` before it, else 1. It never fails a reading (4). The limit does not fall
 * below `floor` for each hour between the two: under ice the deviation is nothing at all.
 */
export function rateOfChange(
  at: ArrayLike<number>,
  value: ArrayLike<number>,
  floor: number,
  { deviations = DEVIATIONS, hours = HOURS_BEFORE } = {},
): Uint8Array {
  const flag = new Uint8Array(value.length).fill(2);
  let first = 0;
  let sum = 0;
  let squares = 0;
  for (let n = 1; n < value.length; n++) {
    sum += value[n - 1];
    squares += value[n - 1] ** 2;
    while (at[n] - at[first] > hours * HOUR && first < n - 1) {
      sum -= value[first];
      squares -= value[first] ** 2;
      first++;
    }
    const held = n - first;
    const elapsed = (at[n] - at[n - 1]) / HOUR;
    if (held < 3 || elapsed > hours / 8) continue;
    const deviation = Math.sqrt(Math.max(0, squares / held - (sum / held) ** 2));
    const limit = Math.max(deviations * deviation, floor * Math.max(elapsed, 1));
    flag[n] = Math.abs(value[n] - value[n - 1]) > limit ? 3 : 1;
  }
  return flag;
}
