import { MINUTE } from '../fields/civil.js';
import type { Transition } from './transitions.js';

/** Whether a file's clock kept one offset or followed the zone's wall time. */
export type ClockHabit = 'fixed' | 'wall';

/** A sign that no other cause explains, and one that a few lost readings would give as well. */
const SURE = 3;
const WEAK = 1;

/** Steps may differ by a tenth and still be the usual one, but never by so much that an hour could hide in it. */
const LOOSEST = 10 * MINUTE;

/** What the rows near a zone's changes say of the clock that wrote them. */
export class ClockEvidence {
  wall = 0;
  fixed = 0;

  /** @param interval usual step between rows in milliseconds; null where unknown */
  constructor(
    private readonly interval: number | null,
    private readonly direction: 1 | -1,
  ) {}

  /** Signs for wall time are sure and none speaks against it. */
  get surelyWall(): boolean {
    return this.wall >= SURE && this.fixed === 0;
  }

  verdict(): ClockHabit | null {
    if (this.wall === this.fixed) return this.wall > 0 ? 'fixed' : null;
    return this.wall > this.fixed ? 'wall' : 'fixed';
  }

  /** Two rows of one station that follow each other, as wall-clock milliseconds, near one change. */
  see(change: Transition, previous: number, current: number, sawBackStep: boolean): boolean {
    const earlier = this.direction === 1 ? previous : current;
    const later = this.direction === 1 ? current : previous;
    const jump = change.after - change.before;
    if (jump > 0) {
      this.spring(change.at + change.before, jump, earlier, later);
      return false;
    }
    return this.autumn(change.at + change.before, -jump, earlier, later, sawBackStep);
  }

  private near(step: number, usual: number): boolean {
    const tolerance = Math.min((this.interval ?? 0) * 0.1, LOOSEST);
    return Math.abs(step - usual) <= Math.max(MINUTE, tolerance);
  }

  /** Clocks skip [at, at + jump). */
  private spring(at: number, jump: number, earlier: number, later: number): void {
    const { interval } = this;
    const step = later - earlier;
    if ((later >= at && later < at + jump) || (earlier >= at && earlier < at + jump)) {
      // One line out of step may be a slip of the pen; rows that go on at their pace are the clock's.
      this.fixed += interval !== null && this.near(step, interval) ? SURE : WEAK;
      return;
    }
    if (interval === null || earlier >= at || later < at + jump) return;
    if (this.near(step, interval + jump)) {
      // An interval that divides the hour would be missing the same readings had they been lost.
      const lostReadings = this.near((interval + jump) % interval, 0) || this.near(jump % interval, 0);
      this.wall += lostReadings ? WEAK : SURE;
    } else if (this.near(step, interval)) this.fixed += SURE;
  }

  /** Clocks run twice through [at - jump, at). Returns whether a step back was seen at this change. */
  private autumn(at: number, jump: number, earlier: number, later: number, sawBackStep: boolean): boolean {
    const step = later - earlier;
    const { interval } = this;
    if (
      later >= at - jump &&
      later < at &&
      earlier >= at - jump &&
      earlier < at &&
      step <= 0 &&
      step >= -jump
    ) {
      this.wall += SURE;
      return true;
    }
    if (interval === null || sawBackStep || earlier >= at || later < at - jump) return sawBackStep;
    if (interval > jump && this.near(step, interval - jump)) {
      this.wall += SURE;
      return true;
    }
    // A repeated hour would have shown by the time the rows leave it, which side they come from.
    const leaves = this.direction === 1 ? later >= at : earlier < at - jump;
    if (leaves && this.near(step, interval)) this.fixed += SURE;
    return sawBackStep;
  }
}
