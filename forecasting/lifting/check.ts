import type { BoxForecast, Forecast, LotForecast, StageWindow } from '../forecast.js';
import type { DayNumber, DayTime } from '../units.js';
import { seedFor } from '../windows/draws.js';
import { intervalOf } from '../windows/interval.js';
import { mixture } from '../windows/mixture.js';
import type { StageDraws } from '../windows/stage-draws.js';
import type { LotDraws } from './lot-draws.js';
import { lotShares, stillInBox } from './shares.js';

/** A box opened on a day, found still occupied and put back. Counts are of living ones in it, and of empty places. */
export interface BoxCheck {
  readonly box: string;
  readonly day: DayNumber;
  /** Living eggs and alevins still in the box. */
  readonly alive: number;
  /** Compartments whose egg or alevin is gone; null where nobody counted them. */
  readonly empty: number | null;
}

/** Mid-day: people are at a river by day. */
export const AT_THE_RIVER = 0.5;
/** One box counts for so many independent eggs at most: its eggs lie in one water (ours). */
const COUNTS_FOR = 25;
/** Below so many effective draws the weights are softened: a handful of winters says too little (ours). */
const FEWEST = 40;

/**
 * The forecast after boxes were checked and put back: every draw is weighed by how well it agrees with what was
 * found, and the draws are drawn again by weight, the same for every box, so that what one box tells of the winter
 * bears on the others and joint chances stay joint. Without checks by the as-of day it is the same forecast.
 */
export function withChecks(forecast: Forecast, checks: readonly BoxCheck[]): Forecast {
  const known = checks.filter(({ day }) => day <= forecast.asOf);
  const weights = checkWeights(forecast, known);
  if (weights === null) return forecast;
  const chosen = resampled(weights, seedFor(known.length, 'checked and put back'));
  const redraw = new Redraw(chosen);
  return { ...forecast, boxes: forecast.boxes.map((box) => redraw.box(box, forecast.asOf + 1)) };
}

/**
 * Weight of each draw, or null where no check bears on any. Binomial in the share still there, worth at most 25
 * eggs a box; softened by a power where fewer than 40 draws would be left to speak.
 */
export function checkWeights(forecast: Forecast, checks: readonly BoxCheck[]): Float64Array | null {
  let log: Float64Array | null = null;
  for (const check of checks) {
    const box = forecast.boxes.find((one) => one.box === check.box);
    const lots = box === undefined ? null : lotShares(box);
    if (box === undefined || lots === null) continue;
    const total = check.empty === null ? box.eggs : check.alive + check.empty;
    if (total <= 0) continue;
    const found = Math.min(1, check.alive / total);
    const worth = Math.min(COUNTS_FOR, total);
    log ??= new Float64Array(lots[0].leaving.median.length);
    for (let k = 0; k < log.length; k++) {
      const share = Math.min(0.999, Math.max(0.001, stillInBox(lots, k, check.day + AT_THE_RIVER)));
      log[k] += worth * (found * Math.log(share) + (1 - found) * Math.log(1 - share));
    }
  }
  return log === null ? null : softened(log);
}

function softened(log: Float64Array): Float64Array {
  const most = log.reduce((a, b) => Math.max(a, b), Number.NEGATIVE_INFINITY);
  const weigh = (power: number) => log.map((value) => Math.exp(power * (value - most)));
  let [low, high] = [0, 1];
  if (effective(weigh(1)) >= FEWEST) return weigh(1);
  for (let turn = 0; turn < 30; turn++) {
    const middle = (low + high) / 2;
    if (effective(weigh(middle)) >= FEWEST) low = middle;
    else high = middle;
  }
  return weigh(low);
}

/** Kish's effective number: (Σ w)² / Σ w². */
function effective(weights: Float64Array): number {
  let sum = 0;
  let squares = 0;
  for (const w of weights) {
    sum += w;
    squares += w * w;
  }
  return (sum * sum) / squares;
}

/** Systematic resampling: as many draws as before, each as often as its weight says. */
export function resampled(weights: Float64Array, seed: number): Uint16Array {
  const count = weights.length;
  const total = weights.reduce((sum, w) => sum + w, 0);
  const start = ((seed >>> 0) % 1000) / 1000;
  const chosen = new Uint16Array(count);
  let k = 0;
  let sum = weights[0];
  for (let i = 0; i < count; i++) {
    const wanted = ((i + start) * total) / count;
    while (sum < wanted && k < count - 1) sum += weights[++k];
    chosen[i] = k;
  }
  return chosen;
}

/** Puts the chosen draws in place of the old ones; draws that several boxes share stay shared. */
class Redraw {
  private readonly stages = new Map<StageDraws, StageDraws>();
  private readonly lots = new Map<LotDraws, LotDraws>();

  constructor(private readonly chosen: Uint16Array) {}

  box(box: BoxForecast, moment: DayTime): BoxForecast {
    if (box.lots.every(({ draws }) => draws === undefined)) return box;
    const lots = box.lots.map((lot) => this.lot(lot, moment));
    const [only] = lots;
    const windows = lots.length === 1 && only !== undefined ? only.windows : this.mixed(box, lots, moment);
    return { ...box, lots, windows };
  }

  private lot(lot: LotForecast, moment: DayTime): LotForecast {
    if (lot.draws === undefined) return lot;
    const draws = this.draws(lot.draws);
    const windows = lot.windows.map((window) => redated(window, draws.stages[window.stage], moment));
    const passed = windows.filter((window) => window.passed).at(-1)?.stage;
    const waiting = lot.stage === 'not-fertilised' || lot.stage === 'unknown';
    return { ...lot, draws, windows, stage: waiting ? lot.stage : (passed ?? 'fertilised') };
  }

  private mixed(box: BoxForecast, lots: readonly LotForecast[], moment: DayTime): StageWindow[] {
    return box.windows.map((window) => {
      const parts = lots.flatMap(({ draws, eggs }) => {
        const of = draws?.stages[window.stage];
        return of === undefined ? [] : [{ draws: of, eggs }];
      });
      return parts.length === 0 ? window : redated(window, mixture(parts), moment);
    });
  }

  private draws(draws: LotDraws): LotDraws {
    const known = this.lots.get(draws);
    if (known !== undefined) return known;
    const stages = Object.entries(draws.stages).map(([stage, of]) => [stage, this.stage(of)] as const);
    const made = { stages: Object.fromEntries(stages), leaves: this.pick(draws.leaves) };
    this.lots.set(draws, made);
    return made;
  }

  private stage(draws: StageDraws): StageDraws {
    let made = this.stages.get(draws);
    if (made === undefined) {
      made = { first: this.pick(draws.first), median: this.pick(draws.median), last: this.pick(draws.last) };
      this.stages.set(draws, made);
    }
    return made;
  }

  private pick(moments: Float64Array): Float64Array {
    return Float64Array.from(this.chosen, (k) => moments[k]);
  }
}

function redated(window: StageWindow, draws: StageDraws | undefined, moment: DayTime): StageWindow {
  if (draws === undefined) return window;
  const median = intervalOf(draws.median);
  return {
    ...window,
    first: intervalOf(draws.first),
    median,
    last: intervalOf(draws.last),
    passed: median.p50 !== null && median.p50 <= moment,
  };
}
