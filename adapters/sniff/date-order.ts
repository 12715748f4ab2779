import type { DateOrder } from '../download.js';
import { timeReadings } from './cells.js';

/** One order under which the dates can be read, and how far its instants travel from row to row in all. */
interface Candidate {
  readonly order: DateOrder;
  readonly travel: number;
}

export type OrderEvidence =
  /** The dates read one way only: no three numbers whose order is custom. */
  | { readonly kind: 'plain' }
  /** A value above 12 leaves one order. */
  | { readonly kind: 'values'; readonly order: DateOrder }
  /** Steps from row to row are far more even under one order. */
  | { readonly kind: 'steps'; readonly order: DateOrder }
  | { readonly kind: 'none'; readonly orders: readonly DateOrder[] };

/** Of two orders the one whose instants travel this much less is taken; sampled rows never come nearer than 20. */
const CLEARLY = 1.5;
/** Dates that fail under the right order, as typing errors and notes do. */
const STRAY = 0.02;

/** Adds up what a column of dates says of the order of their numbers. `clock` is added to a date that has none. */
export class OrderTally {
  private readonly travel = new Map<DateOrder, number>();
  private readonly last = new Map<DateOrder, number>();
  private readonly valid = new Map<DateOrder, number>();
  private mattered = 0;

  /** @param clock milliseconds since midnight from a column of its own, 0 without */
  add(text: string, clock: number): void {
    const readings = timeReadings(text).filter(({ orderMattered }) => orderMattered);
    if (readings.length === 0) return;
    this.mattered++;
    for (const { order, at } of readings) {
      const now = at + clock;
      const before = this.last.get(order);
      if (before !== undefined)
        this.travel.set(order, (this.travel.get(order) ?? 0) + Math.abs(now - before));
      this.last.set(order, now);
      this.valid.set(order, (this.valid.get(order) ?? 0) + 1);
    }
  }

  /** No date so far whose order is a matter of custom. */
  get plain(): boolean {
    return this.mattered === 0;
  }

  /** Whether one order alone is left already. */
  get decided(): boolean {
    return this.mattered > 0 && this.candidates().length === 1;
  }

  evidence(): OrderEvidence {
    if (this.mattered === 0) return { kind: 'plain' };
    const candidates = this.candidates();
    if (candidates.length === 1) return { kind: 'values', order: candidates[0].order };
    const [least, next] = [...candidates].sort((a, b) => a.travel - b.travel);
    if (least !== undefined && next.travel > CLEARLY * least.travel)
      return { kind: 'steps', order: least.order };
    return { kind: 'none', orders: candidates.map(({ order }) => order) };
  }

  private candidates(): Candidate[] {
    const most = Math.max(...this.valid.values());
    const allowed = Math.max(most, this.mattered) * (1 - STRAY);
    const fit = [...this.valid].filter(([, count]) => count >= allowed || count === this.mattered);
    const kept = fit.length > 0 ? fit : [...this.valid].filter(([, count]) => count === most);
    return kept.map(([order]) => ({ order, travel: this.travel.get(order) ?? 0 }));
  }
}
