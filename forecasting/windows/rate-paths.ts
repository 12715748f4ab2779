import { lookUp, rateTable } from '../rate-lookup.js';
import type { Law } from '../table.js';
import type { Celsius, DayNumber, DayTime } from '../units.js';

/** Possible winters at one station, each with its own offset of the logger and the gravel. */
export interface Winters {
  readonly firstDay: DayNumber;
  /** Trace i, day firstDay + d is traces[i][d], °C. */
  readonly traces: readonly Float64Array[];
  /** °C added to every day of trace i. */
  readonly offset: Float64Array;
}

/** Sum of 1/D from the first day to the start of day firstDay + d, in trace i: sums[i * (days + 1) + d]. */
export interface RatePaths {
  readonly firstDay: DayNumber;
  readonly days: number;
  readonly count: number;
  readonly sums: Float64Array;
}

/**
 * Running sums of 1/D(T + offset) of a law over every trace. An offset warms what was read, but never cools it
 * below freezing: a logger at 0.1 °C that reads 0.3 too high lies in water at 0, not at -0.2. A day without a
 * value ends what the trace knows: nothing is gathered from there on.
 */
export function ratePaths(winters: Winters, law: Law): RatePaths {
  const { firstDay, traces, offset } = winters;
  const count = traces.length;
  const days = count === 0 ? 0 : traces[0].length;
  const rates = rateTable(law);
  const sums = new Float64Array(count * (days + 1));
  for (let i = 0; i < count; i++) {
    const trace = traces[i];
    const shift = offset[i];
    let at = i * (days + 1);
    let sum = 0;
    let known = true;
    for (let d = 0; d < days; d++) {
      const t = trace[d];
      known = known && t > Number.NEGATIVE_INFINITY;
      if (known) sum += lookUp(rates, shifted(t, shift));
      sums[++at] = sum;
    }
  }
  return { firstDay, days, count, sums };
}

/** Water at T read with an offset: see `ratePaths`. */
export function shifted(celsius: Celsius, offset: Celsius): Celsius {
  if (offset >= 0) return celsius + offset;
  return celsius > 0 ? Math.max(0, celsius + offset) : celsius;
}

/** The sum gathered by trace i up to a moment, straight within the day; held before the first and after the last. */
export function sumAt(paths: RatePaths, trace: number, moment: DayTime): number {
  const { days, sums } = paths;
  const x = Math.min(Math.max(moment - paths.firstDay, 0), days);
  const d = Math.min(Math.floor(x), days - 1);
  const at = trace * (days + 1) + d;
  return sums[at] + (x - d) * (sums[at + 1] - sums[at]);
}

/** The moment at which trace i has gathered `sum`; Infinity when it never does. */
export function momentOf(paths: RatePaths, trace: number, sum: number): DayTime {
  const { days, sums, firstDay } = paths;
  const start = trace * (days + 1);
  if (!(sum <= sums[start + days])) return Number.POSITIVE_INFINITY;
  let low = 0;
  let high = days;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (sums[start + middle] >= sum) high = middle;
    else low = middle;
  }
  const before = sums[start + low];
  const gained = sums[start + high] - before;
  return firstDay + low + (gained > 0 ? Math.max(0, (sum - before) / gained) : 0);
}
