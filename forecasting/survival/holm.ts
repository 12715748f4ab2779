/**
 * Chances corrected for how many were looked at: sorted upwards, the i-th of m times (m − i + 1), never falling, at most 1.
 * Holm 1979, Scandinavian Journal of Statistics 6:65-70.
 *
 * @example holm([0.01, 0.04, 0.03]) // 0.03, 0.06, 0.06
 */
export function holm(chances: readonly number[]): number[] {
  const order = chances.map((_, i) => i).sort((a, b) => chances[a] - chances[b]);
  const corrected = new Array<number>(chances.length).fill(1);
  let highest = 0;
  for (const [rank, i] of order.entries()) {
    highest = Math.max(highest, Math.min(1, chances[i] * (chances.length - rank)));
    corrected[i] = highest;
  }
  return corrected;
}
