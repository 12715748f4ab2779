import { type DaySeries, Origin } from '../../forecasting/day-series.js';
import type { DayNumber } from '../../forecasting/units.js';
import type { StationRecord } from '../store/index.js';
import { isoDay, isoInstant } from '../words/index.js';

const originNames: Record<number, string> = {
  [Origin.none]: '',
  [Origin.measured]: 'measured',
  [Origin.filled]: 'filled',
  [Origin.projected]: 'projected',
};

/** Readings as CSV, `time_utc,temperature_c,flag` (QARTOD flag), header first. */
export function* readingLines(record: StationRecord): Generator<string> {
  yield 'time_utc,temperature_c,flag';
  for (let row = 0; row < record.at.length; row++) {
    yield `${isoInstant(record.at[row]!)},${figure(record.value[row]!, 4)},${record.flag[row]}`;
  }
}

/** Days as CSV, `date,mean_c,min_c,max_c,coverage,origin,spread_c`, header first; a day without a value has empty cells. */
export function* dayLines(days: DaySeries, from: DayNumber, to: DayNumber): Generator<string> {
  yield 'date,mean_c,min_c,max_c,coverage,origin,spread_c';
  const last = Math.min(to, days.firstDay + days.mean.length - 1);
  for (let day = Math.max(from, days.firstDay); day <= last; day++) {
    const i = day - days.firstDay;
    yield [
      isoDay(day),
      figure(days.mean[i]!, 3),
      figure(days.min[i]!, 3),
      figure(days.max[i]!, 3),
      figure(days.coverage[i]!, 3),
      originNames[days.origin[i]!],
      figure(days.spread[i]!, 3),
    ].join(',');
  }
}

function figure(value: number, digits: number): string {
  return Number.isFinite(value) ? String(Number(value.toFixed(digits))) : '';
}
