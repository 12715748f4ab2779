import { SEASON_DAYS } from '../season-axis.js';

/** Days in one bin of the season: five days of water say much the same. */
export const BIN_DAYS = 5;
export const BINS = Math.ceil(SEASON_DAYS / BIN_DAYS);

/** The bin a day of the season falls in. */
export function binOf(seasonDay: number): number {
  return Math.floor(seasonDay / BIN_DAYS);
}

export interface SeasonKernel {
  readonly reach: number;
  /** Weight of a bin `k` bins away, 0..reach. */
  readonly weight: Float64Array;
}

/** A normal bell of standard deviation `days` over the bins of a season, cut at three of them. */
export function seasonKernel(days: number): SeasonKernel {
  const reach = Math.min(Math.floor(BINS / 2), Math.ceil((3 * days) / BIN_DAYS));
  const weight = Float64Array.from({ length: reach + 1 }, (_, k) =>
    Math.exp(-0.5 * ((k * BIN_DAYS) / days) ** 2),
  );
  return { reach, weight };
}

/**
 * Sums over bins, each spread over its neighbours by the kernel; the season closes on itself (31 August is beside
 * 1 September). `columns` sums a bin, interleaved.
 */
export function spreadOverSeason(sums: Float64Array, columns: number, kernel: SeasonKernel): Float64Array {
  const spread = new Float64Array(sums.length);
  for (let bin = 0; bin < BINS; bin++) {
    for (let k = -kernel.reach; k <= kernel.reach; k++) {
      const weight = kernel.weight[k < 0 ? -k : k];
      const from = ((bin + k + BINS) % BINS) * columns;
      for (let c = 0; c < columns; c++) spread[bin * columns + c] += weight * sums[from + c];
    }
  }
  return spread;
}

/** A value a bin read at a day of the season, straight between the middles of the bins. */
export function readBins(bins: Float64Array, seasonDay: number): number {
  const x = (seasonDay + 0.5) / BIN_DAYS - 0.5;
  const i = Math.floor(x);
  const low = bins[(i + BINS) % BINS];
  return low + (x - i) * (bins[(i + 1) % BINS] - low);
}
