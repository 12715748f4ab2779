import type { EpochMillis, Quantity, StationRecord } from '../store/index.js';
import { Remembered } from './remembered.js';

const DAY = 86_400_000;
/** A block holds about so many readings, 500 kB: a person who looks closer stays in a few of them. */
const READINGS = 24_000;
const LONGEST_DAYS = 4096;
const MOST_BLOCKS = 120;
/** A longer stretch is read at once and not remembered. */
const MOST_ASKED = 8;

interface Stretch {
  readonly station: string;
  readonly quantity: Quantity;
  readonly from: EpochMillis;
  readonly to: EpochMillis;
  /** How dense the record is. */
  readonly readingsADay: number;
}

type Read = (from: EpochMillis, to: EpochMillis) => Promise<StationRecord>;

/**
 * The readings that were looked at last, until the next write: a query of the store costs tens of milliseconds
 * however few readings it asks for, and whoever zooms asks for the same ones again and again.
 */
export class RecordBlocks {
  private readonly blocks = new Remembered<StationRecord>(MOST_BLOCKS);

  /** The readings with from <= instant < to; `read` reads the store. */
  async between(
    revision: number,
    { station, quantity, from, to, readingsADay }: Stretch,
    read: Read,
  ): Promise<StationRecord> {
    const length = blockDays(readingsADay) * DAY;
    const [first, last] = [Math.floor(from / length), Math.floor((to - 1) / length)];
    if (!(last - first < MOST_ASKED)) return read(from, to);
    const blocks = await Promise.all(
      Array.from({ length: Math.max(0, last - first + 1) }, (_, i) => {
        const begins = (first + i) * length;
        const block = `${station} ${quantity} ${begins}`;
        return this.blocks.of(revision, block, () => read(begins, begins + length));
      }),
    );
    return joined(blocks.map((block) => cut(block, from, to)));
  }
}

/** A power of two, so that blocks of one record never overlap. */
function blockDays(readingsADay: number): number {
  const days = READINGS / Math.max(1, readingsADay);
  return Math.min(LONGEST_DAYS, 2 ** Math.max(0, Math.floor(Math.log2(days))));
}

function cut({ at, value, flag, load }: StationRecord, from: EpochMillis, to: EpochMillis): StationRecord {
  const start = firstFrom(at, from);
  const end = firstFrom(at, to);
  return {
    at: at.subarray(start, end),
    value: value.subarray(start, end),
    flag: flag.subarray(start, end),
    load: load.subarray(start, end),
  };
}

/** Index of the first instant that is not before `from`. */
function firstFrom(at: Float64Array, from: EpochMillis): number {
  let low = 0;
  let high = at.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (at[middle]! < from) low = middle + 1;
    else high = middle;
  }
  return low;
}

function joined(parts: readonly StationRecord[]): StationRecord {
  const [only] = parts;
  if (parts.length === 1 && only !== undefined) return only;
  const length = parts.reduce((sum, { at }) => sum + at.length, 0);
  const whole = {
    at: new Float64Array(length),
    value: new Float64Array(length),
    flag: new Uint8Array(length),
    load: new Int32Array(length),
  };
  let filled = 0;
  for (const { at, value, flag, load } of parts) {
    whole.at.set(at, filled);
    whole.value.set(value, filled);
    whole.flag.set(flag, filled);
    whole.load.set(load, filled);
    filled += at.length;
  }
  return whole;
}
