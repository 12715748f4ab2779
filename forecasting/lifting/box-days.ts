import type { BoxForecast } from '../forecast.js';
import { shareBy } from '../windows/mixture.js';
import type { StageDraws } from '../windows/stage-draws.js';
import { AT_THE_RIVER } from './check.js';
import type { LiftingLevels, LiftingRule, Share } from './contract.js';
import { type LotShares, lotShares } from './shares.js';

/** Candidate days, consecutive. */
export interface Days {
  readonly from: number;
  readonly count: number;
}

/** One box on every candidate day, draw by draw: value [d * draws + k]. */
export interface BoxDraws {
  readonly box: BoxForecast;
  readonly lots: readonly LotShares[];
  readonly still: Float32Array;
  readonly out: Float32Array;
}

/**
 * Shares of eggs come to a stage, or yet to come, on every candidate day, draw by draw: [d * draws + k]. Single precision is plenty:
 * what a few millionths of a share decide is not decided.
 */
function sharesOver({ first, median, last }: StageDraws, yetToCome: boolean, days: Days): Float32Array {
  const draws = median.length;
  const shares = new Float32Array(days.count * draws);
  for (let d = 0, at = 0; d < days.count; d++) {
    const moment = days.from + d + AT_THE_RIVER;
    for (let k = 0; k < draws; k++, at++) {
      const come = shareBy(first[k], median[k], last[k], moment);
      shares[at] = yetToCome ? 1 - come : come;
    }
  }
  return shares;
}

/** The shares of boxes; what lots and boxes have in common is worked out once. */
export class KnownDraws {
  private readonly shares = new Map<StageDraws, Float32Array>();
  private readonly byFirst = new Map<object, BoxDraws[]>();

  constructor(private readonly days: Days) {}

  of(box: BoxForecast): BoxDraws | null {
    const lots = lotShares(box);
    if (lots === null) return null;
    const key = lots[0].leaving;
    const alike = this.byFirst.get(key) ?? [];
    const same = alike.find((one) => sameLots(one.lots, lots));
    if (same !== undefined) return { ...same, box };
    const made = this.mixed(box, lots);
    this.byFirst.set(key, [...alike, made]);
    return made;
  }

  private mixed(box: BoxForecast, lots: readonly LotShares[]): BoxDraws {
    const [only] = lots;
    if (lots.length === 1) {
      const still = this.over(only.leaving, true);
      const out =
        only.outOfGravel === null ? new Float32Array(still.length) : this.over(only.outOfGravel, false);
      return { box, lots, still, out };
    }
    const length = only.leaving.median.length * this.days.count;
    const still = new Float32Array(length);
    const out = new Float32Array(length);
    for (const { weight, leaving, outOfGravel } of lots) {
      addTo(still, weight, this.over(leaving, true));
      if (outOfGravel !== null) addTo(out, weight, this.over(outOfGravel, false));
    }
    return { box, lots, still, out };
  }

  private over(draws: StageDraws, yetToCome: boolean): Float32Array {
    const known = this.shares.get(draws) ?? sharesOver(draws, yetToCome, this.days);
    this.shares.set(draws, known);
    return known;
  }
}

function addTo(sum: Float32Array, weight: number, shares: Float32Array): void {
  for (let i = 0; i < sum.length; i++) sum[i] += weight * shares[i];
}

function sameLots(a: readonly LotShares[], b: readonly LotShares[]): boolean {
  return (
    a.length === b.length &&
    a.every(
      (lot, i) =>
        lot.leaving === b[i]?.leaving && lot.outOfGravel === b[i]?.outOfGravel && lot.weight === b[i]?.weight,
    )
  );
}

/** One bit a draw and day: both shares within the levels. Words of 32 draws: [d * words + w]. */
export interface Within {
  readonly draws: number;
  readonly words: number;
  readonly bits: Uint32Array;
}

export function within(
  { still, out, lots }: BoxDraws,
  days: Days,
  rule: LiftingRule,
  levels: LiftingLevels,
): Within {
  const draws = still.length / days.count;
  const words = Math.ceil(draws / 32);
  const bits = new Uint32Array(words * days.count);
  const knowsGravel = lots.some(({ outOfGravel }) => outOfGravel !== null);
  const after = rule === 'after-emergence' && knowsGravel;
  for (let d = 0, at = 0; d < days.count; d++) {
    for (let k = 0; k < draws; k++, at++) {
      const late = after ? 1 - out[at] : out[at];
      if (still[at] <= levels.stillInBox && late <= levels.emerged)
        bits[d * words + (k >> 5)] |= 1 << (k & 31);
    }
  }
  return { draws, words, bits };
}

/** Share of set bits of one day. */
export function chanceOf(bits: Uint32Array, from: number, words: number, draws: number): number {
  let set = 0;
  for (let w = 0; w < words; w++) set += ones(bits[from + w]);
  return set / draws;
}

export function ones(word: number): number {
  let v = word - ((word >>> 1) & 0x55555555);
  v = (v & 0x33333333) + ((v >>> 2) & 0x33333333);
  return Math.imul((v + (v >>> 4)) & 0x0f0f0f0f, 0x01010101) >>> 24;
}

/** Mean, 10 % and 90 % of one day's draws (type 7 quantiles). */
export function shareOf(values: Float32Array, from: number, draws: number): Share {
  let sum = 0;
  let least = Number.POSITIVE_INFINITY;
  let most = Number.NEGATIVE_INFINITY;
  for (let k = 0; k < draws; k++) {
    const value = values[from + k];
    sum += value;
    if (value < least) least = value;
    if (value > most) most = value;
  }
  if (most - least < AS_GOOD_AS_ONE) return { mean: sum / draws, p10: least, p90: most };
  if (scratch.length !== draws) scratch = new Float32Array(draws);
  scratch.set(values.subarray(from, from + draws));
  const p10 = quantile(scratch, 0.1, 0);
  return { mean: sum / draws, p10, p90: quantile(scratch, 0.9, Math.floor(0.1 * (draws - 1))) };
}

/** Draws closer together than this are not told apart. */
const AS_GOOD_AS_ONE = 1e-5;
/** Reused: a quantile is taken a hundred thousand times a plan. */
let scratch = new Float32Array(0);

/** Quantile of values in any order but for `sortedTo`, below which all are smaller; it changes the order: the two around it are selected (Hoare 1961, Algorithm 65). */
function quantile(values: Float32Array, q: number, sortedTo: number): number {
  const x = q * (values.length - 1);
  const i = Math.floor(x);
  const below = select(values, i, sortedTo);
  if (x === i) return below;
  let above = Number.POSITIVE_INFINITY;
  for (let k = i + 1; k < values.length; k++) if (values[k] < above) above = values[k];
  return below + (x - i) * (above - below);
}

function select(values: Float32Array, wanted: number, from: number): number {
  let low = from;
  let high = values.length - 1;
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
