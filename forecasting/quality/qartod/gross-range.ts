import type { QualityFlag } from '../finding.js';

/**
 * QARTOD test 4, gross range: 4 outside what the sensor can give, 3 outside what an operator expects, else 1.
 *
 * @example grossRange([-7, 3, 33], { fail: [-5, 40], suspect: [-1, 32] }) // 4, 1, 3
 */
export function grossRange(
  value: ArrayLike<number>,
  {
    fail,
    suspect,
  }: { readonly fail: readonly [number, number]; readonly suspect: readonly [number, number] },
): Uint8Array {
  return Uint8Array.from(value, (one): QualityFlag => {
    if (!Number.isFinite(one)) return 9;
    if (one < fail[0] || one > fail[1]) return 4;
    return one < suspect[0] || one > suspect[1] ? 3 : 1;
  });
}
