import type { DaySeries, StationDays } from '../day-series.js';
import { Origin } from '../day-series.js';
import type { SeasonAxis } from '../season-axis.js';
import type { NeighbourRecord } from './candidate.js';

/** Days over which water follows the air: a lag of a few days (tried 3, 5, 12). */
const AIR_DAYS = 5;
/** A logger that gives one and the same daily mean so many days in a row is stuck, unless it lies at freezing. */
const STUCK_DAYS = 8;
const NOT_ICE = 0.5;

/** Measured daily means of a series on the axis, up to and including index `last`; NaN elsewhere. */
export function onAxis(axis: SeasonAxis, days: DaySeries, last: number): Float64Array {
  const mean = new Float64Array(axis.length).fill(Number.NaN);
  const shift = days.firstDay - axis.first;
  for (let j = 0; j < days.mean.length; j++) {
    const i = j + shift;
    if (i < 0 || i >= axis.length || i > last || days.origin[j] !== Origin.measured) continue;
    mean[i] = days.mean[j];
  }
  return mean;
}

/** A station as a neighbour of others: stuck stretches taken out, air smoothed to what water makes of it. */
export function neighbourRecord(
  axis: SeasonAxis,
  station: Pick<StationDays, 'station' | 'kind'>,
  mean: Float64Array,
  kilometres: number | null = null,
): NeighbourRecord {
  const air = station.kind === 'air';
  const kept = withoutStuck(axis, mean);
  return { station: station.station, air, mean: air ? lagged(axis, kept, AIR_DAYS) : kept, kilometres };
}

/**
 * A copy without stretches in which a logger away from freezing says the same for eight days or more. Both this and
 * the lag of air begin anew with each season, so that no season tells of another.
 */
function withoutStuck(axis: SeasonAxis, mean: Float64Array): Float64Array {
  const kept = mean.slice();
  let first = 0;
  for (let i = 1; i <= mean.length; i++) {
    const same = i < mean.length && Math.abs(mean[i] - mean[first]) < 1e-6 && axis.seasonDay[i] > 0;
    if (same) continue;
    if (i - first >= STUCK_DAYS && Math.abs(mean[first]) > NOT_ICE) kept.fill(Number.NaN, first, i);
    first = i;
  }
  return kept;
}

/** Exponentially weighted mean of the days so far, starting anew after a gap. */
function lagged(axis: SeasonAxis, mean: Float64Array, days: number): Float64Array {
  const share = 1 - Math.exp(-1 / days);
  const out = new Float64Array(mean.length).fill(Number.NaN);
  let state = Number.NaN;
  for (let i = 0; i < mean.length; i++) {
    if (Number.isNaN(mean[i]) || axis.seasonDay[i] === 0) state = mean[i];
    else state = Number.isNaN(state) ? mean[i] : state + share * (mean[i] - state);
    out[i] = state;
  }
  return out;
}
