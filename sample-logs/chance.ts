import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Draws from a standard normal distribution, the same ones for the same seed (Box-Muller). */
export function normals(seed: number): () => number {
  const source = xoroshiro128plus(seed);
  // A small seed leaves the first numbers lopsided.
  for (let i = 0; i < 32; i++) source.next();
  let spare: number | null = null;
  return () => {
    if (spare !== null) {
      const kept = spare;
      spare = null;
      return kept;
    }
    const radius = Math.sqrt(-2 * Math.log(1 - uniformFloat64(source)));
    const angle = 2 * Math.PI * uniformFloat64(source);
    spare = radius * Math.sin(angle);
    return radius * Math.cos(angle);
  };
}
