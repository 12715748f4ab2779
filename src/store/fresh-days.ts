import { dailyMeans } from '../../forecasting/daily-means.js';
import type { DaySeries } from '../../forecasting/day-series.js';
import { dayOf } from './kept-days.js';

/** Readings gathered before their days are worked out. */
const READINGS_AT_ONCE = 32_768;

/**
 * Works out the days of one series while its readings pass by in order, so that a long record need not be read
 * back from the store. The days are those that would be worked out from the whole record: each sees its own
 * readings and the ones next to it on either side.
 */
export class FreshDays {
  private readonly pieces: DaySeries[] = [];
  private at = new Float64Array(2 * READINGS_AT_ONCE);
  private value = new Float64Array(2 * READINGS_AT_ONCE);
  private length = 0;
  /** First day that has not been worked out; null before the first reading. */
  private nextDay: number | null = null;

  constructor(readonly offsetMinutes: number) {}

  take(at: Float64Array, value: Float64Array, length: number): void {
    if (length === 0) return;
    this.makeRoom(length);
    this.at.set(at.subarray(0, length), this.length);
    this.value.set(value.subarray(0, length), this.length);
    this.length += length;
    this.nextDay ??= dayOf(at[0], this.offsetMinutes);
    if (this.length >= READINGS_AT_ONCE)
      this.workOut(dayOf(this.at[this.length - 1], this.offsetMinutes) - 1);
  }

  finish(): readonly DaySeries[] {
    if (this.length > 0) this.workOut(dayOf(this.at[this.length - 1], this.offsetMinutes));
    return this.pieces;
  }

  private workOut(lastDay: number): void {
    const firstDay = this.nextDay ?? lastDay + 1;
    if (lastDay < firstDay) return;
    const { offsetMinutes } = this;
    const at = this.at.subarray(0, this.length);
    const value = this.value.subarray(0, this.length);
    this.pieces.push(
      dailyMeans({ at, value, usable: null, span: 'instant' }, { offsetMinutes, firstDay, lastDay }),
    );
    this.nextDay = lastDay + 1;
    this.forgetBefore(lastDay + 1);
  }

  /** Keeps the readings from a day on, and the one next before it. */
  private forgetBefore(day: number): void {
    let first = this.length;
    while (first > 0 && dayOf(this.at[first - 1], this.offsetMinutes) >= day) first--;
    first = Math.max(0, first - 1);
    this.at.copyWithin(0, first, this.length);
    this.value.copyWithin(0, first, this.length);
    this.length -= first;
  }

  /** A day of many thousand readings may need more room than usual. */
  private makeRoom(length: number): void {
    const needed = this.length + length;
    if (needed <= this.at.length) return;
    const { at, value } = this;
    this.at = new Float64Array(2 * needed);
    this.value = new Float64Array(2 * needed);
    this.at.set(at);
    this.value.set(value);
  }
}
