import { BINS, binOf, readBins, seasonKernel, spreadOverSeason } from '../residual/season-kernel.js';
import { SEASON_DAYS, type SeasonAxis } from '../season-axis.js';

/** The usual water of a place through the season, and how far single days stray from it. */
export interface Normals {
  /** °C on each day of the season, 366 of them; NaN where no season has days near it. */
  readonly mean: Float64Array;
  /** Standard deviation of a day's departure, °C. */
  readonly sd: Float64Array;
}

/** Standard deviation of the bell over the day of the season (tried 3-24 d). */
const MEAN_KERNEL = seasonKernel(16);
const SD_KERNEL = seasonKernel(20);
/** Days for which the departure of the whole year counts beside that of the bin. */
const SD_PULL = 10;
/** No day is surer than this, °C. */
const LEAST_SD = 0.15;
/** Below so many weighted days there is no normal. */
const LEAST_DAYS = 0.3;

/**
 * What a filled day counts beside a measured one: it brings a winter the station was not there for, and with it what
 * is wrong with the relation (tried 0, 0.3 and 1: see the hindcast).
 */
export const FILLED_WEIGHT = 0.3;

/**
 * Normals of a record, one season left out: a mean by a bell over the day of the season, and once more what it leaves,
 * added (twicing; Tukey 1977, Exploratory Data Analysis: memory). A bell alone rounds off where the water reaches the
 * ice plateau and where it leaves it, and would have every icy river melt some days early.
 *
 * @param measured the station's own days; the others of `record` are filled
 * @param fillSd standard deviation of a filled day's error by bin of the season, °C: water that was worked out from
 *   others' strays less from normal than the water itself
 */
export function normalsOf(
  axis: SeasonAxis,
  record: Float64Array,
  measured: Float64Array,
  leftOut: number,
  fillSd: Float64Array,
): Normals {
  const smoothed = (of: (value: number, seasonDay: number) => number) =>
    smoothedOver(axis, record, measured, leftOut, of);
  const once = smoothed((value) => value);
  const left = smoothed((value, seasonDay) => value - once[seasonDay]);
  const mean = once.map((celsius, seasonDay) => celsius + left[seasonDay]);
  return { mean, sd: departureSd(axis, record, leftOut, mean, measured, fillSd) };
}

/** What `of` makes of each day's water, averaged by the bell on every day of the season. */
function smoothedOver(
  axis: SeasonAxis,
  record: Float64Array,
  measured: Float64Array,
  leftOut: number,
  of: (value: number, seasonDay: number) => number,
): Float64Array {
  const sums = new Float64Array(BINS * 2);
  forDays(axis, record, leftOut, (bin, i, value) => {
    const weight = Number.isNaN(measured[i]) ? FILLED_WEIGHT : 1;
    sums[2 * bin] += weight * of(value, axis.seasonDay[i]);
    sums[2 * bin + 1] += weight;
  });
  const spread = spreadOverSeason(sums, 2, MEAN_KERNEL);
  const bins = Float64Array.from({ length: BINS }, (_, b) =>
    spread[2 * b + 1] >= LEAST_DAYS ? spread[2 * b] / spread[2 * b + 1] : Number.NaN,
  );
  return Float64Array.from({ length: SEASON_DAYS }, (_, day) => readBins(bins, day));
}

function departureSd(
  axis: SeasonAxis,
  record: Float64Array,
  leftOut: number,
  mean: Float64Array,
  measured: Float64Array,
  fillSd: Float64Array,
): Float64Array {
  const squares = new Float64Array(BINS * 2);
  let all = 0;
  let days = 0;
  forDays(axis, record, leftOut, (bin, i, value) => {
    const departure = value - mean[axis.seasonDay[i]];
    if (Number.isNaN(departure)) return;
    const unsure = Number.isNaN(measured[i]) ? readBins(fillSd, axis.seasonDay[i]) ** 2 : 0;
    squares[2 * bin] += departure * departure + unsure;
    squares[2 * bin + 1]++;
    all += departure * departure + unsure;
    days++;
  });
  const overall = days > 0 ? all / days : 1;
  const local = spreadOverSeason(squares, 2, SD_KERNEL);
  const bins = Float64Array.from({ length: BINS }, (_, b) => {
    const variance = (local[2 * b] + SD_PULL * overall) / (local[2 * b + 1] + SD_PULL);
    return Math.sqrt(variance + LEAST_SD * LEAST_SD);
  });
  return Float64Array.from({ length: SEASON_DAYS }, (_, day) => readBins(bins, day));
}

function forDays(
  axis: SeasonAxis,
  record: Float64Array,
  leftOut: number,
  visit: (bin: number, i: number, value: number) => void,
): void {
  for (let i = 0; i < axis.length; i++) {
    if (axis.season[i] === leftOut || Number.isNaN(record[i])) continue;
    visit(binOf(axis.seasonDay[i]), i, record[i]);
  }
}
