import type { Celsius, EpochMillis } from '../units.js';

const HOUR = 3_600_000;

/** Readings of one place, instants rising; `usable[i]` 0 where reading i is not of the water. */
export interface Readings {
  readonly at: Float64Array;
  readonly value: Float64Array;
  readonly usable: Uint8Array | null;
}

/** An unbroken run beyond a limit. */
export interface Run {
  readonly from: EpochMillis;
  readonly to: EpochMillis;
  /** Time beyond the threshold. */
  readonly hours: number;
  /** Beyond the limit itself, °C·h. */
  readonly degreeHours: number;
  /** The farthest reading. */
  readonly peak: Celsius;
}

/** Longer between two readings, nothing is known of the water between them (as for a measured day). */
export const HOLE = 6 * HOUR;
/** A run that comes back to the limit for less than this is not broken (ours). */
const BREATH = HOUR;

/** Readings are kept to 1e-4: what differs by less is the same. */
const EXACTLY = 1e-6;

export interface Beyond {
  readonly side: 'above' | 'below';
  readonly limit: Celsius;
  /** What the logger may be wrong by: a limit must be passed by more. */
  readonly accuracy: Celsius;
  readonly from: EpochMillis;
  readonly to: EpochMillis;
}

/**
 * The runs in which a record lies beyond a limit by more than the logger's accuracy, between two moments. Between two
 * readings the water runs straight, so that a run begins and ends where it crosses; a hole of more than 6 h ends it.
 *
 * @example hourly 12.1, 12.3, 12.3, 12.1 above 12 with accuracy 0.2: one run of 2 h, peak 12.3, 0.5 °C·h
 */
export function runsBeyond(readings: Readings, asked: Beyond): readonly Run[] {
  const { side, limit, accuracy, from, to } = asked;
  const key = `${side} ${limit} ${accuracy} ${from} ${to}`;
  const known = runsOf.get(readings) ?? new Map<string, readonly Run[]>();
  runsOf.set(readings, known);
  const runs = known.get(key) ?? foundRuns(readings, asked);
  known.set(key, runs);
  return runs;
}

/** Boxes that share a station and a lot ask the same. */
const runsOf = new WeakMap<Readings, Map<string, readonly Run[]>>();

function foundRuns({ at, value, usable }: Readings, asked: Beyond): Run[] {
  const sign = asked.side === 'above' ? 1 : -1;
  const threshold = sign * asked.limit + asked.accuracy + EXACTLY;
  const runs: Open[] = [];
  let open: Open | null = null;
  const first = firstFrom(at, asked.from);
  for (let i = Math.max(0, first - 1); i < at.length && at[i] <= asked.to; i++) {
    if (usable !== null && usable[i] === 0) continue;
    const here = sign * value[i];
    if (here > threshold && at[i] >= asked.from) {
      open = joined(runs, open, at[i]);
      open.to = Math.max(open.to, at[i]);
      open.peak = Math.max(open.peak, here);
    }
    const next = nextUsable(usable, i, at.length);
    if (next === -1 || at[next] - at[i] > HOLE) {
      open = null;
      continue;
    }
    const piece = beyondBetween(at[i], here, at[next], sign * value[next], threshold, asked);
    if (piece === null) continue;
    open = joined(runs, open, piece.from);
    open.to = piece.to;
    open.ms += piece.to - piece.from;
    open.degrees += ((piece.a + piece.b) / 2 - sign * asked.limit) * (piece.to - piece.from);
    open.peak = Math.max(open.peak, piece.a, piece.b);
  }
  return runs.map(({ from, to, ms, degrees, peak }) => ({
    from,
    to,
    hours: ms / HOUR,
    degreeHours: degrees / HOUR,
    peak: sign * peak,
  }));
}

interface Open {
  readonly from: number;
  to: number;
  ms: number;
  degrees: number;
  peak: number;
}

function joined(runs: Open[], open: Open | null, from: number): Open {
  if (open !== null && from - open.to <= BREATH) return open;
  const made = { from, to: from, ms: 0, degrees: 0, peak: Number.NEGATIVE_INFINITY };
  runs.push(made);
  return made;
}

/** The piece of a straight line between two readings that lies beyond the threshold, within the time asked for. */
function beyondBetween(t0: number, v0: number, t1: number, v1: number, threshold: number, asked: Beyond) {
  if ((v0 <= threshold && v1 <= threshold) || t1 <= t0) return null;
  const slope = (v1 - v0) / (t1 - t0);
  const crossing = slope === 0 ? t0 : t0 + (threshold - v0) / slope;
  const from = Math.max(asked.from, v0 > threshold ? t0 : crossing);
  const to = Math.min(asked.to, v1 > threshold ? t1 : crossing);
  if (to <= from) return null;
  return { from, to, a: v0 + slope * (from - t0), b: v0 + slope * (to - t0) };
}

function nextUsable(usable: Uint8Array | null, i: number, length: number): number {
  for (let k = i + 1; k < length; k++) if (usable === null || usable[k] !== 0) return k;
  return -1;
}

/** A change within an hour (or from one reading to the next, where they are farther apart). */
export interface Change {
  readonly from: EpochMillis;
  readonly to: EpochMillis;
  /** Greatest change within an hour, °C; colder is below 0. */
  readonly by: Celsius;
}

/** Readings farther apart than this tell nothing of an hour (ours). */
const CHANGE_SEEN = 3 * HOUR;

/** Changes of more than `limit` °C an hour by more than the logger's accuracy, runs of them as one. */
export function suddenChanges({ at, value, usable }: Readings, asked: Omit<Beyond, 'side'>): Change[] {
  const changes: { from: number; to: number; by: number }[] = [];
  let before = -1;
  let start = Math.max(0, firstFrom(at, asked.from));
  for (let i = start; i < at.length && at[i] <= asked.to; i++) {
    if (usable !== null && usable[i] === 0) continue;
    while (at[start] < at[i] - HOUR || (usable !== null && usable[start] === 0)) start++;
    const from = start < i ? start : before;
    before = i;
    if (from < 0 || at[i] - at[from] > CHANGE_SEEN) continue;
    const by = (value[i] - value[from]) / Math.max(1, (at[i] - at[from]) / HOUR);
    if (Math.abs(by) <= asked.limit + asked.accuracy + EXACTLY) continue;
    const last = changes.at(-1);
    if (last === undefined || at[from] > last.to + HOUR) changes.push({ from: at[from], to: at[i], by });
    else {
      last.to = at[i];
      if (Math.abs(by) > Math.abs(last.by)) last.by = by;
    }
  }
  return changes;
}

/** Index of the first instant that is not before `from`. */
export function firstFrom(at: Float64Array, from: EpochMillis): number {
  let low = 0;
  let high = at.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (at[middle] < from) low = middle + 1;
    else high = middle;
  }
  return low;
}
