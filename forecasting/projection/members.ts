import { type FadingModel, fadingSmoother } from '../residual/fading.js';
import { readBins } from '../residual/season-kernel.js';
import { SEASON_DAYS, type SeasonAxis } from '../season-axis.js';
import { departureFading } from './departure-fading.js';
import type { Normals } from './normals.js';

/** A past winter as departures from normal over the window of the forecast. */
export interface Member {
  readonly season: number;
  readonly departure: Float64Array;
  /** Variance of a day's error where it was filled, °C²; 0 where measured. */
  readonly unsure: Float64Array;
  /** Days of it that were measured at the station itself. */
  readonly measured: number;
  /** Days of it that were measured or filled. */
  readonly days: number;
}

/** Days that a winter must have between planting and the end of June to count as one. */
const LEAST_DAYS = 150;

/**
 * The other seasons of a record, each laid over the window that starts at index `start` of the axis. Days a winter
 * lacks take the mean its other days leave them.
 *
 * @param record the station's days, filled where other stations allow
 * @param measured the station's own days
 * @param fillSd standard deviation of a filled day's error by bin of the season, °C
 */
export function membersOf(
  axis: SeasonAxis,
  record: Float64Array,
  measured: Float64Array,
  normals: Normals,
  season: number,
  start: number,
  length: number,
  fillSd: Float64Array,
): Member[] {
  const seasons = new Set<number>();
  for (let i = 0; i < axis.length; i++) if (!Number.isNaN(record[i])) seasons.add(axis.season[i]);
  seasons.delete(season);
  const overWindow = (of: Float64Array) =>
    Float64Array.from({ length }, (_, d) => of[(axis.seasonDay[start] + d) % SEASON_DAYS]);
  const usual = { sd: overWindow(normals.sd), fading: departureFading(overWindow(normals.mean)) };
  const members: Member[] = [];
  for (const other of [...seasons].sort((a, b) => a - b)) {
    const offset = axis.starts(other) + axis.seasonDay[start] - axis.first;
    const member = oneMember(
      axis,
      record,
      measured,
      normals,
      { season: other, leftOut: season, offset },
      usual,
      fillSd,
    );
    if (member !== null) members.push(member);
  }
  return members;
}

interface Laid {
  readonly season: number;
  readonly leftOut: number;
  readonly offset: number;
}

function oneMember(
  axis: SeasonAxis,
  record: Float64Array,
  measured: Float64Array,
  normals: Normals,
  laid: Laid,
  { sd, fading }: { readonly sd: Float64Array; readonly fading: FadingModel },
  fillSd: Float64Array,
): Member | null {
  const length = sd.length;
  const departure = new Float64Array(length);
  const unsure = new Float64Array(length);
  const noise = new Float64Array(length);
  let days = 0;
  let own = 0;
  for (let d = 0; d < length; d++) {
    const i = laid.offset + d;
    const known = i >= 0 && i < axis.length && axis.season[i] !== laid.leftOut;
    const seasonDay = known ? axis.seasonDay[i] : 0;
    departure[d] = known ? record[i] - normals.mean[seasonDay] : Number.NaN;
    noise[d] = Number.isNaN(departure[d]) ? Number.NaN : 0;
    if (known && Number.isNaN(measured[i]) && !Number.isNaN(departure[d])) {
      unsure[d] = readBins(fillSd, seasonDay) ** 2;
    }
    if (!known || Number.isNaN(departure[d]) || axis.season[i] !== laid.season || seasonDay > LAST_WINTER_DAY)
      continue;
    days++;
    if (!Number.isNaN(measured[i])) own++;
  }
  if (days < Math.min(LEAST_DAYS, 0.6 * length)) return null;
  if (days < length) {
    const between = new Float64Array(length);
    fadingSmoother(fading, sd, noise).smooth(departure, between);
    for (let d = 0; d < length; d++) if (Number.isNaN(departure[d])) departure[d] = between[d];
  }
  return { season: laid.season, departure, unsure, measured: own, days };
}

/** Days of the season in which eggs lie in the gravel: about 30 June where it begins on 1 September. */
const LAST_WINTER_DAY = 303;
