import { ones, type Within } from './box-days.js';

/** A trip as the schedule sees it: how many boxes, which days it may go, and how each day would turn out. */
export interface TripDays {
  readonly boxes: number;
  readonly open: readonly boolean[];
  readonly within: Within;
  readonly chance: Float64Array;
  /** What a day costs beside the chance: alevins still in boxes, and a quarter of it for fry already out. */
  readonly cost: Float64Array;
  readonly weight: number;
}

export interface Schedule {
  /** Day index of each trip; -1 where none is left for it. */
  readonly day: readonly number[];
  /** Chance that every scheduled trip is within the levels. */
  readonly chance: number;
}

/** A further day in the field must earn this much chance (ours). */
const ANOTHER_DAY = 0.01;
/** Among days as good as each other the sooner: what a day's waiting must earn (ours). */
const WAITING = 0.0005;
const PASSES = 4;

/**
 * Days for trips: from the best single day, and from each trip's own best day, moved one trip at a time while that
 * makes the plan better. A plan's worth is the chance that every box is within the levels and the mean chance of
 * trips, in halves, less what its days cost. No more boxes than the limit on a day.
 */
export function schedule(trips: readonly TripDays[], days: number, boxesADay: number | null): Schedule {
  if (trips.length === 0) return { day: [], chance: 0 };
  const board = new Board(trips, days, boxesADay ?? Number.POSITIVE_INFINITY);
  const tried = [board.improved(board.together()), board.improved(board.eachItsOwn())];
  const [best] = tried.toSorted((a, b) => board.worth(b) - board.worth(a));
  return { day: best, chance: board.chance(best) };
}

class Board {
  /** Draws there really are; the last word of bits may hold fewer than 32. */
  private readonly real: number;

  constructor(
    private readonly trips: readonly TripDays[],
    private readonly days: number,
    private readonly most: number,
  ) {
    this.real = trips[0].within.draws;
  }

  /** All on the day that is best for all, as far as they fit. */
  together(): number[] {
    let best: number[] = [];
    let worth = Number.NEGATIVE_INFINITY;
    for (let d = 0; d < this.days; d++) {
      const plan = this.trips.map(() => -1);
      const load = new Float64Array(this.days);
      for (const i of plan.keys()) plan[i] = this.nearest(i, d, load);
      const found = this.worth(plan);
      if (found > worth) [best, worth] = [plan, found];
    }
    return best;
  }

  eachItsOwn(): number[] {
    const plan = this.trips.map(() => -1);
    const load = new Float64Array(this.days);
    const order = [...this.trips.keys()].sort((a, b) => this.trips[b].boxes - this.trips[a].boxes);
    for (const i of order) {
      let best = -1;
      for (let d = 0; d < this.days; d++) {
        if (this.fits(i, d, load) && (best < 0 || this.own(i, d) > this.own(i, best))) best = d;
      }
      plan[i] = best;
      if (best >= 0) load[best] += this.trips[i].boxes;
    }
    return plan;
  }

  improved(from: readonly number[]): number[] {
    const plan = [...from];
    let worth = this.worth(plan);
    for (let pass = 0; pass < PASSES; pass++) {
      const before = worth;
      for (const i of plan.keys()) worth = this.moved(plan, i, worth);
      if (worth <= before + 1e-9) break;
    }
    return plan;
  }

  /** Puts trip i on its best day, the others staying where they are. */
  private moved(plan: number[], i: number, worth: number): number {
    const load = this.load(plan, i);
    const others = this.joint(plan, i);
    const rest = this.rest(plan, i);
    let [best, most] = [plan[i], worth];
    for (let d = 0; d < this.days; d++) {
      if (d === plan[i] || !this.fits(i, d, load)) continue;
      const found = this.sum(this.alsoWithin(others, i, d), rest, i, d, load);
      if (found > most + 1e-9) [best, most] = [d, found];
    }
    plan[i] = best;
    return most;
  }

  worth(plan: readonly number[]): number {
    if (plan.length === 0) return Number.NEGATIVE_INFINITY;
    const i = 0;
    const load = this.load(plan, i);
    const joint = plan[i] < 0 ? count(this.joint(plan, i)) / this.real : undefined;
    return this.sum(
      joint ?? this.alsoWithin(this.joint(plan, i), i, plan[i]),
      this.rest(plan, i),
      i,
      plan[i],
      load,
    );
  }

  chance(plan: readonly number[]): number {
    if (plan.every((d) => d < 0)) return 0;
    return count(this.joint(plan, -1)) / this.real;
  }

  private sum(joint: number, rest: number, i: number, d: number, load: Float64Array): number {
    const used = load.reduce((n, boxes, day) => n + (boxes > 0 || day === d ? 1 : 0), 0);
    return 0.5 * joint + rest + this.own(i, d) - ANOTHER_DAY * used;
  }

  /** What a trip's own day is worth; less than any day where there is none. */
  private own(i: number, d: number): number {
    const { weight, chance, cost } = this.trips[i];
    return d < 0 ? -3 * weight : weight * (0.5 * chance[d] - cost[d] - WAITING * d);
  }

  private rest(plan: readonly number[], but: number): number {
    return plan.reduce((sum, d, i) => (i === but ? sum : sum + this.own(i, d)), 0);
  }

  private load(plan: readonly number[], but: number): Float64Array {
    const load = new Float64Array(this.days);
    for (const [i, d] of plan.entries()) if (i !== but && d >= 0) load[d] += this.trips[i].boxes;
    return load;
  }

  private fits(i: number, d: number, load: Float64Array): boolean {
    return this.trips[i].open[d] && load[d] + this.trips[i].boxes <= this.most;
  }

  private nearest(i: number, d: number, load: Float64Array): number {
    for (let away = 0; away < this.days; away++) {
      for (const day of away === 0 ? [d] : [d - away, d + away]) {
        if (day < 0 || day >= this.days || !this.fits(i, day, load)) continue;
        load[day] += this.trips[i].boxes;
        return day;
      }
    }
    return -1;
  }

  private joint(plan: readonly number[], but: number): Uint32Array {
    const { words } = this.trips[0].within;
    const all = new Uint32Array(words).fill(0xffffffff);
    const over = words * 32 - this.real;
    if (over > 0) all[words - 1] = 0xffffffff >>> over;
    for (const [i, d] of plan.entries()) {
      if (i === but || d < 0) continue;
      const { bits } = this.trips[i].within;
      for (let w = 0; w < words; w++) all[w] &= bits[d * words + w];
    }
    return all;
  }

  private alsoWithin(others: Uint32Array, i: number, d: number): number {
    const { bits, words } = this.trips[i].within;
    let set = 0;
    for (let w = 0; w < words; w++) set += ones(others[w] & bits[d * words + w]);
    return set / this.real;
  }
}

function count(words: Uint32Array): number {
  return words.reduce((set, word) => set + ones(word), 0);
}
