import type { BoxForecast } from '../forecast.js';
import type { StageName } from '../table.js';
import type { DayTime } from '../units.js';
import { shareCome } from '../windows/mixture.js';
import type { StageDraws } from '../windows/stage-draws.js';
import type { LotDraws } from './lot-draws.js';

/** A lot in a box as the plan needs it: when its alevins leave the box, and its fry the gravel. */
export interface LotShares {
  /** Part of the box's eggs that are this lot's. */
  readonly weight: number;
  readonly leaving: StageDraws;
  /** Null: the table names no stage after hatch. */
  readonly outOfGravel: StageDraws | null;
  /** The stage that stands for leaving the gravel. */
  readonly stage: StageName | null;
}

/** A box's lots; null where the forecast knows too little of one of them to plan. */
export function lotShares(box: BoxForecast): LotShares[] | null {
  const eggs = box.lots.reduce((sum, lot) => sum + lot.eggs, 0);
  const lots = box.lots.map(({ draws, windows, eggs: own }): LotShares | null => {
    const hatch = draws?.stages.hatch;
    if (draws === undefined || hatch === undefined) return null;
    const stage = gravelStage(windows.map((window) => window.stage));
    const outOfGravel = stage === null ? null : (draws.stages[stage] ?? null);
    const weight = eggs > 0 ? own / eggs : 1 / box.lots.length;
    return { weight, leaving: leavingOf(hatch, draws), outOfGravel, stage };
  });
  const known = lots.filter((lot) => lot !== null);
  return known.length === lots.length && known.length > 0 ? known : null;
}

/** Emergence where the table names it, else its last stage after hatch: it is the nearest thing known. */
function gravelStage(stages: readonly StageName[]): StageName | null {
  if (stages.includes('emergence')) return 'emergence';
  return stages.slice(stages.indexOf('hatch') + 1).at(-1) ?? null;
}

const left = new WeakMap<LotDraws, StageDraws>();

function leavingOf(hatch: StageDraws, draws: LotDraws): StageDraws {
  const known = left.get(draws);
  if (known !== undefined) return known;
  const later = (moments: Float64Array) => moments.map((moment, k) => moment + draws.leaves[k]);
  const made = { first: later(hatch.first), median: later(hatch.median), last: later(hatch.last) };
  left.set(draws, made);
  return made;
}

/** In draw k, the share of a box's alevins and eggs that have not left it by a moment. */
export function stillInBox(lots: readonly LotShares[], k: number, moment: DayTime): number {
  return lots.reduce((sum, { weight, leaving }) => sum + weight * (1 - shareCome(leaving, k, moment)), 0);
}

/** In draw k, the share of its fry that are out of the gravel; lots without such a stage count as none. */
export function emerged(lots: readonly LotShares[], k: number, moment: DayTime): number {
  return lots.reduce(
    (sum, { weight, outOfGravel }) =>
      outOfGravel === null ? sum : sum + weight * shareCome(outOfGravel, k, moment),
    0,
  );
}
