/**
 * Continuous ranked probability score of courses that are alike, in its fair form, which does not punish an ensemble
 * for being small (Ferro 2014, Q. J. R. Meteorol. Soc. 140:1917-1923: memory):
 *
 *     Σ |xᵢ − y| / M − Σᵢⱼ |xᵢ − xⱼ| / (2 M (M − 1))
 *
 * Null with fewer than two courses, or where one never reaches the stage: there is no distance to never.
 *
 * @example fairCrps([1, 3], 2) // 1 − 2·2/(2·2·1) = 0
 */
export function fairCrps(courses: ArrayLike<number>, observed: number): number | null {
  const sorted = Float64Array.from(courses).sort();
  const m = sorted.length;
  if (m < 2 || !Number.isFinite(sorted[m - 1])) return null;
  let near = 0;
  let apart = 0;
  for (let i = 0; i < m; i++) {
    near += Math.abs(sorted[i] - observed);
    // Σᵢⱼ |xᵢ − xⱼ| = 2 Σ (2 i − m + 1) x₍ᵢ₎
    apart += 2 * (2 * i - m + 1) * sorted[i];
  }
  return near / m - apart / (2 * m * (m - 1));
}
