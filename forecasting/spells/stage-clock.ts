import { daysAtConstant } from '../check-table.js';
import type { LotDraws } from '../lifting/lot-draws.js';
import { wayTo } from '../needs.js';
import type { DevelopmentTable, StageName } from '../table.js';
import type { DayTime, Progress } from '../units.js';
import { shareBy } from '../windows/mixture.js';
import type { StageDraws } from '../windows/stage-draws.js';

/** A stage less likely than this is not named, and its limits do not judge: what an 80 % interval leaves out. */
export const PLAUSIBLE = 0.1;

/** A stage whose law is its own, not a multiple of hatch, stands where it does at this temperature, °C (ours). */
const COMPARED_AT = 6;

export interface StageChance {
  readonly stage: StageName | 'fertilised';
  readonly chance: number;
}

interface Knot {
  readonly progress: Progress;
  readonly stage: StageName | 'fertilised';
  readonly draws: StageDraws | null;
}

const clocks = new WeakMap<object, Map<string, StageClock>>();

/**
 * Where the eggs of one lot were at any moment, with how sure that is: the share of all eggs of all possible winters
 * that had gone a way. Harm limits hold between two progresses to hatch; between two stages of the table the moment
 * of a progress lies straight between theirs.
 */
export class StageClock {
  private readonly knots: readonly Knot[];
  private readonly known = new Map<Progress, StageDraws | null>();
  private readonly moments = new Map<string, DayTime>();

  private constructor(
    table: DevelopmentTable,
    private readonly fertilised: DayTime,
    draws: LotDraws,
  ) {
    const stages = table.stages.map(({ stage }) => ({
      progress: progressOf(table, stage),
      stage,
      draws: draws.stages[stage] ?? null,
    }));
    this.knots = [{ progress: 0, stage: 'fertilised', draws: null }, ...stages];
  }

  /** Boxes whose lots share their draws share the clock. */
  static of(table: DevelopmentTable, fertilised: DayTime, draws: LotDraws): StageClock {
    const first = draws.stages[table.stages[0]?.stage ?? '']?.median ?? draws;
    const alike = clocks.get(first) ?? new Map<string, StageClock>();
    clocks.set(first, alike);
    const key = `${table.id} ${fertilised}`;
    const clock = alike.get(key) ?? new StageClock(table, fertilised, draws);
    alike.set(key, clock);
    return clock;
  }

  /** The share of eggs, over all possible winters, that had made this progress to hatch by a moment. */
  share(progress: Progress, moment: DayTime): number {
    if (moment < this.fertilised) return 0;
    if (progress <= 0) return 1;
    const draws = this.draws(progress);
    if (draws === null) return 0;
    const { first, median, last } = draws;
    let sum = 0;
    for (let k = 0; k < median.length; k++) sum += shareBy(first[k], median[k], last[k], moment);
    return sum / median.length;
  }

  /** When so great a share has made this progress; Infinity where it never does. */
  when(progress: Progress, share: number): DayTime {
    const key = `${progress} ${share}`;
    const known = this.moments.get(key);
    if (known !== undefined) return known;
    const moment = this.search(progress, share);
    this.moments.set(key, moment);
    return moment;
  }

  private search(progress: Progress, share: number): DayTime {
    if (progress <= 0) return this.fertilised;
    let low = this.fertilised;
    let high = low + 500;
    if (this.share(progress, high) < share) return Number.POSITIVE_INFINITY;
    while (high - low > 1 / 24) {
      const middle = (low + high) / 2;
      if (this.share(progress, middle) < share) low = middle;
      else high = middle;
    }
    return high;
  }

  /** Between which moments a limit may hold for some eggs: outside, 9 in 10 are not yet, or no longer, in its span. */
  span(from: Progress, to: Progress): { readonly from: DayTime; readonly to: DayTime } {
    return { from: this.when(from, PLAUSIBLE), to: this.when(to, 1 - PLAUSIBLE) };
  }

  /** In draw k, when the median egg has made this progress. */
  median(progress: Progress, k: number): DayTime {
    if (progress <= 0) return this.fertilised;
    return this.draws(progress)?.median[k] ?? Number.POSITIVE_INFINITY;
  }

  /** Stages the eggs may have been in between two moments, likeliest first; one at least. */
  stages(from: DayTime, to: DayTime): readonly StageChance[] {
    const moments = [0, 0.25, 0.5, 0.75, 1].map((share) => from + share * (to - from));
    const chances = this.knots.map(({ stage, progress, draws }, i): StageChance => {
      const next = this.knots[i + 1];
      const each = moments.map(
        (moment) =>
          this.shareOf(draws, progress, moment) -
          (next === undefined ? 0 : this.shareOf(next.draws, next.progress, moment)),
      );
      return { stage, chance: Math.max(0, each.reduce((sum, x) => sum + x, 0) / moments.length) };
    });
    const sorted = chances.sort((a, b) => b.chance - a.chance);
    return sorted.filter(({ chance }, i) => i === 0 || chance >= PLAUSIBLE);
  }

  private shareOf(draws: StageDraws | null, progress: Progress, moment: DayTime): number {
    if (draws === null) return progress <= 0 && moment >= this.fertilised ? 1 : 0;
    const { first, median, last } = draws;
    let sum = 0;
    for (let k = 0; k < median.length; k++) sum += shareBy(first[k], median[k], last[k], moment);
    return sum / median.length;
  }

  private draws(progress: Progress): StageDraws | null {
    let made = this.known.get(progress);
    if (made === undefined) {
      made = this.between(progress);
      this.known.set(progress, made);
    }
    return made;
  }

  private between(progress: Progress): StageDraws | null {
    const after = this.knots.find((knot) => knot.draws !== null && knot.progress >= progress - 1e-9);
    // Beyond the last stage no limit holds: its eggs are then no longer the box's.
    if (after?.draws == null) return null;
    if (after.progress <= progress + 1e-9) return after.draws;
    const before = this.knots.findLast((knot) => knot.progress < progress);
    const way = (progress - (before?.progress ?? 0)) / (after.progress - (before?.progress ?? 0));
    const from = before?.draws ?? null;
    const step = (which: keyof StageDraws) =>
      (after.draws?.[which] ?? new Float64Array(0)).map((later, k) => {
        const earlier = from === null ? this.fertilised : from[which][k];
        return Number.isFinite(later) ? earlier + way * (later - earlier) : later;
      });
    return { first: step('first'), median: step('median'), last: step('last') };
  }
}

/** Where a stage lies on the way to hatch, 1 at hatch itself. */
function progressOf(table: DevelopmentTable, stage: StageName): Progress {
  if (!table.stages.some((row) => row.stage === 'hatch')) return 0;
  const [way, hatch] = [wayTo(table, stage), wayTo(table, 'hatch')];
  if (way.after === null && hatch.after === null && way.law === hatch.law) return way.factor / hatch.factor;
  return daysAtConstant(way, COMPARED_AT) / daysAtConstant(hatch, COMPARED_AT);
}
