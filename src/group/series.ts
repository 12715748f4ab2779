import type { DaySeries } from '../../forecasting/day-series.js';
import type { EpochMillis, Quantity, StationRecord } from '../store/index.js';

/** A stretch of a station's record, no finer than can be drawn. */
export interface SeriesRequest {
  readonly station: string;
  readonly quantity: Quantity;
  /** Epoch milliseconds, from <= instant < to; null for the record's own ends. */
  readonly from: EpochMillis | null;
  readonly to: EpochMillis | null;
  /** Most points wanted. */
  readonly points: number;
}

/**
 * A record as columns: single readings (`step` 0; then min, mean and max are the reading), or the lowest, mean and
 * highest of every `step` milliseconds that hold any. Instants rise; a step is named by its beginning.
 */
export interface Series {
  readonly station: string;
  readonly quantity: Quantity;
  readonly from: EpochMillis;
  readonly to: EpochMillis;
  readonly step: number;
  readonly at: Float64Array;
  readonly min: Float64Array;
  readonly mean: Float64Array;
  readonly max: Float64Array;
  /** The worst QARTOD flag in the step. */
  readonly flag: Uint8Array;
  readonly readings: Int32Array;
}

type Columns = Pick<Series, 'step' | 'at' | 'min' | 'mean' | 'max' | 'flag' | 'readings'>;

const DAY = 86_400_000;
/** Steps a person reads off an axis, milliseconds. */
const STEPS = [1, 5, 10, 15, 30, 60, 120, 180, 360, 720].map((minutes) => minutes * 60_000);

/** The finest step of minutes, hours or whole days with which a stretch needs no more than so many points. */
export function stepFor(span: number, points: number): number {
  const least = span / points;
  return STEPS.find((step) => step >= least) ?? Math.ceil(least / DAY) * DAY;
}

/** Readings as they are where they are few, else the steps they fall in. Steps begin at `offset` past whole ones. */
export function readingSeries(record: StationRecord, points: number, offset: number): Columns {
  const { at, value, flag } = record;
  if (at.length <= points)
    return {
      step: 0,
      at,
      min: value,
      mean: value,
      max: value,
      flag,
      readings: new Int32Array(at.length).fill(1),
    };
  const step = stepFor(at[at.length - 1]! - at[0]!, points);
  const steps = new Steps(at.length);
  for (let row = 0; row < at.length; row++) {
    const begins = Math.floor((at[row]! + offset) / step) * step - offset;
    steps.add(begins, value[row]!, value[row]!, value[row]!, flag[row]!, 1);
  }
  return { step, ...steps.taken() };
}

/** Kept days, several together where there are more than points. `midnight` is the instant a day begins at. */
export function daySteps(
  days: DaySeries,
  from: EpochMillis,
  to: EpochMillis,
  points: number,
  midnight: (day: number) => EpochMillis,
): Columns {
  const together = Math.max(1, Math.ceil((to - from) / DAY / points));
  const steps = new Steps(days.mean.length);
  for (let i = 0; i < days.mean.length; i++) {
    const day = days.firstDay + i;
    const begins = midnight(Math.floor(day / together) * together);
    if (midnight(day) < from - DAY || midnight(day) >= to || Number.isNaN(days.mean[i]!)) continue;
    const mean = days.mean[i]!;
    steps.add(begins, orElse(days.min[i]!, mean), mean, orElse(days.max[i]!, mean), 1, 1);
  }
  return { step: together * DAY, ...steps.taken() };
}

function orElse(value: number, other: number): number {
  return Number.isNaN(value) ? other : value;
}

/** QARTOD flags from best to worst: pass, not evaluated, suspect, fail, missing. */
const worst = (one: number, other: number) => Math.max(one, other);

class Steps {
  private length = 0;
  private readonly at: Float64Array;
  private readonly min: Float64Array;
  private readonly sum: Float64Array;
  private readonly max: Float64Array;
  private readonly flag: Uint8Array;
  private readonly readings: Int32Array;

  constructor(most: number) {
    this.at = new Float64Array(most);
    this.min = new Float64Array(most);
    this.sum = new Float64Array(most);
    this.max = new Float64Array(most);
    this.flag = new Uint8Array(most);
    this.readings = new Int32Array(most);
  }

  add(begins: number, min: number, mean: number, max: number, flag: number, readings: number): void {
    let last = this.length - 1;
    if (last < 0 || this.at[last] !== begins) {
      last = this.length++;
      this.at[last] = begins;
      this.min[last] = Number.POSITIVE_INFINITY;
      this.max[last] = Number.NEGATIVE_INFINITY;
    }
    this.min[last] = Math.min(this.min[last]!, min);
    this.max[last] = Math.max(this.max[last]!, max);
    this.sum[last]! += mean * readings;
    this.flag[last] = worst(this.flag[last]!, flag);
    this.readings[last]! += readings;
  }

  taken(): Omit<Columns, 'step'> {
    const { length } = this;
    return {
      at: this.at.slice(0, length),
      min: this.min.slice(0, length),
      mean: Float64Array.from({ length }, (_, i) => this.sum[i]! / this.readings[i]!),
      max: this.max.slice(0, length),
      flag: this.flag.slice(0, length),
      readings: this.readings.slice(0, length),
    };
  }
}
