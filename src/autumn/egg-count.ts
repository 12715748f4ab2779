import { student95 } from './student.js';

/** Eggs counted one by one in a sample, and what that sample measured: mL of water displaced, or g. */
export interface CountedSample {
  readonly eggs: number;
  readonly amount: number;
}

export interface EggCount {
  /** Eggs in the whole lot, to the nearest whole one. */
  readonly eggs: number;
  /** Eggs per mL or per g. */
  readonly perUnit: number;
  /** One standard error of `eggs`; null with one sample, which cannot say how it would repeat. */
  readonly error: number | null;
  /** 95 % interval of `eggs`. */
  readonly low: number | null;
  readonly high: number | null;
}

/**
 * Eggs of a lot from counted samples, by water displaced or by weight alike: all eggs counted over all the samples
 * measured, times what the lot measured (Piper et al. 1982, Fish Hatchery Management, U.S. Fish and Wildlife Service,
 * egg inventory by displacement and by weight). The error is that of a ratio (Cochran 1977, Sampling Techniques,
 * 6.4): how far each sample lies from the common ratio, with Student's t of n − 1.
 *
 * @example eggsBySamples([{ eggs: 36, amount: 1.5 }, { eggs: 35, amount: 1.6 }, { eggs: 41, amount: 1.9 }], 316.8).eggs // 7096
 * @throws RangeError where there is no sample, or an amount that is not above zero
 */
export function eggsBySamples(samples: readonly CountedSample[], total: number): EggCount {
  const n = samples.length;
  const counted = samples.reduce((sum, { eggs }) => sum + eggs, 0);
  const measured = samples.reduce((sum, { amount }) => sum + amount, 0);
  if (n === 0 || !(total > 0) || samples.some(({ amount, eggs }) => !(amount > 0) || !(eggs >= 0)))
    throw new RangeError('an egg count needs samples and amounts above zero');
  const perUnit = counted / measured;
  const eggs = Math.round(perUnit * total);
  if (n === 1) return { eggs, perUnit, error: null, low: null, high: null };
  const squares = samples.reduce((sum, one) => sum + (one.eggs - perUnit * one.amount) ** 2, 0);
  const ratioError = Math.sqrt(squares / (n - 1) / n) / (measured / n);
  const error = ratioError * total;
  const reach = student95(n - 1) * error;
  return {
    eggs,
    perUnit,
    error,
    low: Math.max(counted, Math.round(perUnit * total - reach)),
    high: Math.max(eggs, Math.round(perUnit * total + reach)),
  };
}
