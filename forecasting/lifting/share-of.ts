import type { Share } from './contract.js';

/** Draws closer together than this are not told apart. */
const AS_GOOD_AS_ONE = 1e-5;
/** Reused: a quantile is taken tens of thousands of times a plan. */
let scratch = new Float32Array(0);

/**
 * Mean, 10 % and 90 % of one day's draws (type 7 quantiles), to 1e-5. On most days many draws are at one end or the
 * other (nobody has left, everybody has): these are counted, and only those between are put in order.
 */
export function shareOf(values: Float32Array, from: number, draws: number): Share {
  let sum = 0;
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  const end = from + draws;
  for (let k = from; k < end; k++) {
    const value = values[k];
    sum += value;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  if (most - least < AS_GOOD_AS_ONE) return { mean: sum / draws, p10: least, p90: most };
  if (scratch.length < draws) scratch = new Float32Array(draws);
  let low = 0;
  let between = 0;
  for (let k = from; k < end; k++) {
    const value = values[k];
    if (value - least < AS_GOOD_AS_ONE) low++;
    else if (most - value >= AS_GOOD_AS_ONE) scratch[between++] = value;
  }
  const at = (rank: number, sortedTo: number) =>
    rank < low ? least : rank >= low + between ? most : select(scratch, rank - low, sortedTo, between - 1);
  const quantile = (q: number, sortedTo: number) => {
    const x = q * (draws - 1);
    const i = Math.floor(x);
    const below = at(i, sortedTo);
    return x === i ? below : below + (x - i) * (at(i + 1, Math.max(sortedTo, i - low)) - below);
  };
  const p10 = quantile(0.1, 0);
  return { mean: sum / draws, p10, p90: quantile(0.9, Math.max(0, Math.floor(0.1 * (draws - 1)) - low)) };
}

/**
 * The value of a rank among values[from..to], all before `from` being smaller; it changes the order (Hoare 1961,
 * Algorithm 65).
 */
function select(values: Float32Array, wanted: number, from: number, to: number): number {
  let low = from;
  let high = to;
  while (low < high) {
    const pivot = values[(low + high) >> 1];
    let i = low;
    let j = high;
    while (i <= j) {
      while (values[i] < pivot) i++;
      while (values[j] > pivot) j--;
      if (i > j) break;
      const swapped = values[i];
      values[i] = values[j];
      values[j] = swapped;
      i++;
      j--;
    }
    if (wanted <= j) high = j;
    else if (wanted >= i) low = i;
    else break;
  }
  return values[wanted];
}
