import type { BoxForecast } from '../forecast.js';
import { noneBefore, shareBy } from '../windows/mixture.js';
import type { StageDraws } from '../windows/stage-draws.js';
import { AT_THE_RIVER } from './check.js';
import type { LiftingLevels, LiftingRule } from './contract.js';
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
 * Shares of eggs come to a stage, or yet to come, on every candidate day, draw by draw: [d * draws + k]. Single
 * precision is plenty: what a few millionths of a share decide is not decided. In most draws most days lie before the
 * first egg or after the last; only those between are worked out.
 */
function sharesOver({ first, median, last }: StageDraws, yetToCome: boolean, { from, count }: Days) {
  const draws = median.length;
  const shares = new Float32Array(count * draws);
  const [before, after] = yetToCome ? [1, 0] : [0, 1];
  shares.fill(before);
  for (let k = 0; k < draws; k++) {
    const none = noneBefore(first[k], median[k]) - from - AT_THE_RIVER;
    let d = none > 0 ? Math.min(count, Math.floor(none)) : 0;
    for (let come = 0; d < count && come < 1; d++) {
      come = shareBy(first[k], median[k], last[k], from + d + AT_THE_RIVER);
      shares[d * draws + k] = yetToCome ? 1 - come : come;
    }
    for (; d < count; d++) shares[d * draws + k] = after;
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

/** sum += weight × shares, element by element. */
export function addTo(sum: Float32Array, weight: number, shares: Float32Array): void {
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
    for (let w = 0; w < words; w++) {
      const end = Math.min(32, draws - 32 * w);
      let word = 0;
      for (let bit = 0; bit < end; bit++, at++) {
        const late = after ? 1 - out[at] : out[at];
        if (still[at] <= levels.stillInBox && late <= levels.emerged) word |= 1 << bit;
      }
      bits[d * words + w] = word;
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
