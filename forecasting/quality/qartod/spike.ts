/**
 * QARTOD test 6, spike: the reading before the newest, n−1, is judged against the mean of its two neighbours n−2 and n.
 * 3 where it stands off by more than `suspect`, 4 by more than `fail`. The first and the newest reading have only one
 * neighbour and stay 2, not evaluated; so does one whose neighbours are further away than `reach` milliseconds or have
 * no value. 9 where the reading itself has none.
 *
 * @example spike([0, 1, 2], [4, 9, 4], { suspect: 1.5, fail: 3 }) // 2, 4, 2
 */
export function spike(
  at: ArrayLike<number>,
  value: ArrayLike<number>,
  limits: { readonly suspect: number; readonly fail: number },
  reach = Number.POSITIVE_INFINITY,
): Uint8Array {
  const flag = new Uint8Array(value.length).fill(2);
  for (let n = 2; n < value.length; n++) {
    if (at[n] - at[n - 1] > reach || at[n - 1] - at[n - 2] > reach) continue;
    const off = Math.abs(value[n - 1] - (value[n - 2] + value[n]) / 2);
    if (Number.isNaN(off)) continue;
    flag[n - 1] = off > limits.fail ? 4 : off > limits.suspect ? 3 : 1;
  }
  for (let n = 0; n < value.length; n++) if (Number.isNaN(value[n])) flag[n] = 9;
  return flag;
}
