import type { IANAZone } from 'luxon';
import type { EpochMillis } from '../batch.js';
import { DAY, MINUTE } from '../fields/civil.js';

/** One change of a zone's offset. Offsets in milliseconds east of UTC. */
export interface Transition {
  readonly at: EpochMillis;
  readonly before: number;
  readonly after: number;
}

/** Two changes of one zone never stood closer than this (Morocco's Ramadan is the shortest, a month). */
const STEP = 10 * DAY;
const YEAR = 366 * DAY;

/**
 * The changes of one zone's offset, asked of luxon once for each stretch of years and then only looked up: asking
 * it for every row is 45 to 100 times too slow.
 */
export class TransitionTable {
  private from = Number.NaN;
  private to = Number.NaN;
  private readonly found: Transition[] = [];

  constructor(private readonly zone: IANAZone) {}

  /** Changes in [from, to], oldest first. */
  between(from: EpochMillis, to: EpochMillis): readonly Transition[] {
    this.cover(from, to);
    return this.found.filter(({ at }) => at >= from && at <= to);
  }

  /** Milliseconds east of UTC at an instant. */
  offsetAt(at: EpochMillis): number {
    return this.zone.offset(at) * MINUTE;
  }

  /** The smaller offset of the year around an instant: standard time (Ireland's "winter time" included). */
  standardOffset(at: EpochMillis): number {
    const changes = this.between(at - YEAR / 2, at + YEAR / 2);
    return Math.min(this.offsetAt(at), ...changes.flatMap(({ before, after }) => [before, after]));
  }

  private cover(from: EpochMillis, to: EpochMillis): void {
    if (Number.isNaN(this.from)) {
      this.from = from;
      this.to = from;
    }
    if (from < this.from) {
      this.found.unshift(...this.scan(from - YEAR, this.from));
      this.from = from - YEAR;
    }
    if (to > this.to) {
      this.found.push(...this.scan(this.to, to + YEAR));
      this.to = to + YEAR;
    }
  }

  private scan(from: EpochMillis, to: EpochMillis): Transition[] {
    const changes: Transition[] = [];
    let before = this.offsetAt(from);
    for (let low = from; low < to; low += STEP) {
      const high = Math.min(low + STEP, to);
      const after = this.offsetAt(high);
      if (after !== before) changes.push({ at: this.changeIn(low, high, before), before, after });
      before = after;
    }
    return changes;
  }

  private changeIn(low: EpochMillis, high: EpochMillis, before: number): EpochMillis {
    let lo = Math.floor(low / MINUTE);
    let hi = Math.ceil(high / MINUTE);
    while (hi - lo > 1) {
      const middle = Math.floor((lo + hi) / 2);
      if (this.offsetAt(middle * MINUTE) === before) lo = middle;
      else hi = middle;
    }
    return hi * MINUTE;
  }
}
