import type { Finding } from '../finding.js';
import { DAY, extremes, HOUR } from '../hours.js';
import { limitsFor, PLATEAU } from '../limits.js';
import type { Judged } from '../record.js';
import { stretches } from '../stretches.js';
import { runs } from '../winter/in-air.js';
import { MARGIN, outsideSeason, seasonRange } from './climatology.js';
import { countsFor, type FlatCounts, flatLine } from './flat-line.js';
import { grossRange } from './gross-range.js';
import { rateOfChange } from './rate-of-change.js';
import { spike } from './spike.js';

/** Readings further apart than this have changed for reasons of their own (ours). */
const SPIKE_REACH = 3 * HOUR;

/** The tests of the QARTOD manual on one record, as findings. */
export function qartod(record: Judged): Finding[] {
  return [
    ...grossRanges(record),
    ...spikes(record),
    ...rates(record),
    ...flatLines(record),
    ...climatologies(record),
  ];
}

function grossRanges({ kind, quantity, at, value }: Judged): Finding[] {
  const limits = limitsFor(kind, quantity);
  return stretches('gross-range', at, grossRange(value, limits), (first, last, flag) => {
    const held = value.subarray(first, last + 1);
    const [low, high] = flag === 4 ? limits.fail : limits.suspect;
    const reached = extremes(held);
    return { low, high, least: reached.low, most: reached.high, readings: held.length };
  });
}

function spikes({ kind, quantity, at, value }: Judged): Finding[] {
  const limits = limitsFor(kind, quantity).spike;
  if (limits === null) return [];
  return stretches(
    'spike',
    at,
    withoutShadows(spike(at, value, limits, SPIKE_REACH)),
    (first, last, flag) => ({
      off: value[first] - ((value[first - 1] ?? value[first]) + (value[first + 1] ?? value[first])) / 2,
      value: value[first],
      readings: last - first + 1,
      limit: flag === 4 ? limits.fail : limits.suspect,
    }),
    HOUR,
  );
}

/** The two readings beside a spike stand off by half of it: they are its shadow, not spikes. */
function withoutShadows(flag: Uint8Array): Uint8Array {
  return flag.map((one, n) => (one === 3 && (flag[n - 1] === 4 || flag[n + 1] === 4) ? 1 : one));
}

function rates({ kind, quantity, at, value }: Judged): Finding[] {
  const { rate } = limitsFor(kind, quantity);
  if (rate === null) return [];
  return stretches('rate-of-change', at, rateOfChange(at, value, rate), (first, last) => ({
    change: value[first] - (value[first - 1] ?? value[first]),
    minutes: (at[first] - (at[first - 1] ?? at[first])) / 60_000,
    floor: rate,
    readings: last - first + 1,
  }));
}

function flatLines({ kind, quantity, at, value, resolution, interval }: Judged): Finding[] {
  const { flatLine: looked } = limitsFor(kind, quantity);
  if (looked === 'not' || interval > DAY / 2) return [];
  const spared = looked === 'everywhere' ? () => false : (one: number) => Math.abs(one) <= PLATEAU;
  const tolerance = Math.max(resolution / 2, 5e-5);
  const counts = countsByMonth(value, tolerance, spared, DAY / interval);
  const flag = flatLine(value, tolerance, counts, spared);
  // A run is one finding from its first equal reading on, graver where it grew long enough.
  const found: Finding[] = [];
  for (let i = 0; i < flag.length; i++) {
    if (flag[i] < 3) continue;
    let last = i;
    while (last + 1 < flag.length && flag[last + 1] >= 3) last++;
    const { suspect, fail } = counts(i);
    const first = Math.max(0, i - suspect + 1);
    const grave = flag[last] === 4;
    found.push({
      kind: 'flat-line',
      from: at[first],
      to: at[last],
      flag: grave ? 4 : 3,
      figures: {
        value: value[last],
        readings: last - first + 1,
        hours: (at[last] - at[first]) / HOUR,
        count: grave ? fail : suspect,
        resolution,
      },
      offer: null,
    });
    i = last;
  }
  return found;
}

/** Equal neighbours are as frequent as they are in the fortnight around, or in the whole record where that is more. */
function countsByMonth(
  value: Float64Array,
  tolerance: number,
  spared: (value: number) => boolean,
  readingsADay: number,
): (n: number) => FlatCounts {
  const block = Math.max(1, Math.round(14 * readingsADay));
  const all = equalShare(value, tolerance, spared);
  const each = Array.from({ length: Math.ceil(value.length / block) }, (_, b) =>
    equalShare(value.subarray(b * block, (b + 1) * block), tolerance, spared),
  );
  const counts = each.map((_, b) =>
    countsFor(Math.max(all, ...[b - 1, b, b + 1].map((near) => each[near] ?? 0))),
  );
  return (n) => counts[Math.floor(n / block)];
}

/** Share of readings that equal the one before, off the plateau; long runs count once, or a fault would excuse itself. */
function equalShare(value: Float64Array, tolerance: number, spared: (value: number) => boolean): number {
  let [equal, all, run] = [0, 0, 0];
  for (let i = 1; i < value.length; i++) {
    if (spared(value[i])) continue;
    const same = Math.abs(value[i] - value[i - 1]) < tolerance;
    run = same ? run + 1 : 0;
    if (run > 24) continue;
    all++;
    if (same) equal++;
  }
  return all < 20 ? 0 : equal / all;
}

function climatologies(record: Judged): Finding[] {
  const { days, history, offsetMinutes } = record;
  if (history === null || record.quantity !== 'temperature') return [];
  const marked = new Uint8Array(days.mean.length);
  const ranges = Array.from(days.mean, (mean, d) => {
    const range = seasonRange(history, days.firstDay + d);
    if (outsideSeason(mean, range) === 3) marked[d] = 1;
    return range;
  });
  const midnight = (day: number) => day * DAY - offsetMinutes * 60_000;
  return runs(marked, 1).map(({ first, last }) => ({
    kind: 'climatology',
    from: midnight(days.firstDay + first),
    to: midnight(days.firstDay + last + 1) - 1,
    flag: 3,
    figures: {
      mean: days.mean[first],
      low: ranges[first].low,
      high: ranges[first].high,
      years: ranges[first].years,
      margin: MARGIN,
    },
    offer: null,
  }));
}
