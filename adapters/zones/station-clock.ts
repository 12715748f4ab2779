import type { EpochMillis } from '../batch.js';
import { DAY } from '../fields/civil.js';
import type { ClockEvidence, ClockHabit } from './clock-evidence.js';
import type { Transition } from './transitions.js';
import type { NamedZone, Zone } from './zone.js';

const YEAR = 366 * DAY;
/** Rows this close to a change are looked at for signs; elsewhere one subtraction is all. */
const MARGIN = DAY;

/**
 * Turns the wall-clock times of one station's rows into instants, in file order. Between changes of the zone
 * (`calmFrom` to `calmTo`, wall clock) an instant is `local - offset`; `convert` does the rest.
 */
export class StationClock {
  calmFrom = Number.POSITIVE_INFINITY;
  calmTo = Number.NEGATIVE_INFINITY;
  offset = 0;
  /** Wall-clock time and instant of the row before; -Infinity before the first. */
  lastLocal = Number.NEGATIVE_INFINITY;
  lastAt = Number.NEGATIVE_INFINITY;
  firstLocal = Number.NaN;
  private kept = Number.NaN;
  private change: Transition | null = null;
  private sawBackStep = false;

  constructor(
    readonly zone: Zone,
    private readonly habit: ClockHabit,
    private readonly evidence: ClockEvidence,
    private readonly interval: number | null,
    private readonly direction: 1 | -1,
    /** Wall-clock time of the earliest row where it is known before the first one comes. */
    private readonly began: number | null = null,
  ) {
    if (zone.kind === 'fixed') {
      this.calmFrom = Number.NEGATIVE_INFINITY;
      this.calmTo = Number.POSITIVE_INFINITY;
      this.offset = zone.offset;
    }
  }

  /** The one offset a fixed clock keeps: the one in force when the station's rows began. */
  get keptOffset(): number {
    return this.zone.kind === 'fixed' ? this.zone.offset : this.kept;
  }

  /** The offset in force at the row read last: where time falls, that is the one the file began with. */
  get offsetAtLast(): number {
    const { zone, lastLocal } = this;
    if (zone.kind === 'fixed') return zone.offset;
    return offsetFor(zone, this.changesAround(zone, lastLocal), lastLocal);
  }

  /** The instant of a row; NaN for a time that the zone's clocks skipped. */
  convert(local: number): EpochMillis {
    if (this.zone.kind === 'fixed') return local - this.zone.offset;
    const changes = this.changesAround(this.zone, local);
    if (Number.isNaN(this.firstLocal)) this.begin(this.zone, local);
    const near = changes.find((change) => Math.abs(local - wall(change)) < this.margin());
    if (near === undefined) {
      this.calm(this.zone, changes, local);
      return local - this.offset;
    }
    this.calmFrom = Number.POSITIVE_INFINITY;
    this.look(near, local);
    return this.habit === 'fixed' ? local - this.kept : this.wallTime(near, local);
  }

  private margin(): number {
    return MARGIN + Math.min(this.interval ?? 0, MARGIN);
  }

  private changesAround(zone: NamedZone, local: number): readonly Transition[] {
    return zone.transitions.between(local - YEAR, local + YEAR);
  }

  private begin(zone: NamedZone, local: number): void {
    this.firstLocal = local;
    const began = this.began ?? local;
    this.kept = offsetFor(zone, this.changesAround(zone, began), began);
  }

  private calm(zone: NamedZone, changes: readonly Transition[], local: number): void {
    const margin = this.margin();
    let from = local - YEAR + margin;
    let to = local + YEAR - margin;
    for (const change of changes) {
      const at = wall(change);
      if (at <= local) from = Math.max(from, at + margin);
      else to = Math.min(to, at - margin);
    }
    this.calmFrom = from;
    this.calmTo = to;
    this.offset = this.habit === 'fixed' ? this.kept : offsetFor(zone, changes, local);
  }

  private look(change: Transition, local: number): void {
    if (this.change !== change) {
      this.change = change;
      this.sawBackStep = false;
    }
    if (this.lastLocal > Number.NEGATIVE_INFINITY)
      this.sawBackStep = this.evidence.see(change, this.lastLocal, local, this.sawBackStep);
  }

  private wallTime({ at, before, after }: Transition, local: number): EpochMillis {
    if (after > before) {
      if (local < at + before) return local - before;
      return local >= at + after ? local - after : Number.NaN;
    }
    if (local < at + after) return local - before;
    if (local >= at + before) return local - after;
    return this.repeatedHour(local - before, local - after);
  }

  /** Which of the two instants of a repeated wall-clock time: the one that goes on best from the row before. */
  private repeatedHour(first: EpochMillis, second: EpochMillis): EpochMillis {
    const { lastAt, direction } = this;
    if (lastAt === Number.NEGATIVE_INFINITY) return direction === 1 ? first : second;
    const [sooner, later] = direction === 1 ? [first, second] : [second, first];
    if ((sooner - lastAt) * direction <= 0) return later;
    if (this.interval === null) return sooner;
    const due = lastAt + direction * this.interval;
    return Math.abs(later - due) < Math.abs(sooner - due) ? later : sooner;
  }
}

/** A change on the wall clock: the middle of the hour skipped or repeated. */
function wall({ at, before, after }: Transition): number {
  return at + (before + after) / 2;
}

/** The offset in force at a wall-clock time; within a skipped or repeated hour the one before the change. */
function offsetFor(zone: NamedZone, changes: readonly Transition[], local: number): number {
  let offset = changes.length > 0 ? changes[0].before : zone.transitions.offsetAt(local);
  for (const change of changes) if (local >= change.at + change.before) offset = change.after;
  return offset;
}
