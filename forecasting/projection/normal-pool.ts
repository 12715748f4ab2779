import jStat from 'jstat';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** Steps of the quantile table; between them straight lines, out to ±3.5 standard deviations. */
const STEPS = 4096;
let quantiles: Float64Array | null = null;

function quantileTable(): Float64Array {
  quantiles ??= Float64Array.from({ length: STEPS + 1 }, (_, i) =>
    jStat.normal.inv(Math.min(Math.max(i / STEPS, 0.00023), 1 - 0.00023), 0, 1),
  );
  return quantiles;
}

const pools = new Map<string, Float64Array>();
/** Pools kept: a forecast of many stations asks for the same few again and again. */
const KEPT = 80;

/**
 * `count` standard normal draws that depend on the seed alone. The same array comes back for the same question: it
 * must not be written to.
 */
export function normalPool(seed: number, count: number): Float64Array {
  const key = `${seed}:${count}`;
  let pool = pools.get(key);
  if (pool === undefined) {
    const table = quantileTable();
    const random = xoroshiro128plus(seed);
    pool = new Float64Array(count);
    for (let i = 0; i < count; i++) {
      const x = ((random.next() >>> 0) / 4294967296) * STEPS;
      const at = Math.floor(x);
      pool[i] = table[at] + (x - at) * (table[at + 1] - table[at]);
    }
    if (pools.size >= KEPT) pools.delete([...pools.keys()][0]);
    pools.set(key, pool);
  }
  return pool;
}
