import { dailyMeans } from '../../forecasting/daily-means.js';
import { type DaySeries, emptyDays, Origin } from '../../forecasting/day-series.js';
import type { DayNumber } from '../../forecasting/units.js';
import { isUsable, usable } from './corrections.js';
import type { EpochMillis, Span } from './entries.js';
import type { StationRecord } from './folder.js';
import type { Reach, StationReader } from './station-reader.js';

const DAY = 86_400_000;
/** Readings looked at in one go, so that a long record is never held whole. */
const READINGS_AT_ONCE = 150_000;
/** Days looked at beyond a stretch for the reading next to it: the first that has one. */
const NEXT_READING_DAYS = [0.25, 4, 80, 1600, Number.POSITIVE_INFINITY];

/**
 * A daily mean stands at the start of its day in the zone its file was read in. Where the station counts its days
 * in another offset it belongs to the day it overlaps most; exactly half belongs to the day that begins then.
 */
const NEAREST_DAY = 0.45 * DAY;

/** A stretch of days, both ends included. */
export interface DayStretch {
  readonly first: DayNumber;
  readonly last: DayNumber;
}

/**
 * The days whose mean a change of readings in `changed` can alter: those it lies in, and the days of the usable
 * readings next to it on either side, whose last hours reach up to it.
 */
export async function touchedDays(
  reader: StationReader,
  changed: Reach,
  offsetMinutes: number,
): Promise<DayStretch> {
  const before = await readingNext(reader, changed.first, 'before');
  const after = await readingNext(reader, changed.last + 1, 'after');
  return {
    first: dayOf(before ?? changed.first, offsetMinutes),
    last: dayOf(Math.max(after ?? changed.last, changed.last + NEAREST_DAY), offsetMinutes),
  };
}

/** All days that readings of a station can lie in; null where it has none. */
export function allDays(reader: StationReader, offsetMinutes: number): DayStretch | null {
  const own = reader.reach('instant');
  const given = reader.reach('day');
  const firsts = [own, given].flatMap((reach) => (reach === null ? [] : [reach.first]));
  if (firsts.length === 0) return null;
  const lasts = [...(own === null ? [] : [own.last]), ...(given === null ? [] : [given.last + NEAREST_DAY])];
  return {
    first: dayOf(Math.min(...firsts), offsetMinutes),
    last: dayOf(Math.max(...lasts), offsetMinutes),
  };
}

/**
 * Measured days and gap days of a station's temperature from its readings, in pieces that fit in memory. A day of
 * its own readings goes before an agency's mean of the same day.
 */
export async function* daysOf(
  reader: StationReader,
  stretch: DayStretch,
  offsetMinutes: number,
): AsyncIterable<DaySeries> {
  const length = Math.max(7, Math.floor(READINGS_AT_ONCE / reader.readingsADay('instant')));
  for (let first = stretch.first; first <= stretch.last; first += length) {
    const piece = { first, last: Math.min(stretch.last, first + length - 1) };
    const own = await meansOf(reader, 'instant', piece, offsetMinutes);
    const given = reader.reach('day') === null ? null : await meansOf(reader, 'day', piece, offsetMinutes);
    yield given === null ? own : filledFrom(own, given);
  }
}

async function meansOf(
  reader: StationReader,
  span: Span,
  { first, last }: DayStretch,
  offsetMinutes: number,
): Promise<DaySeries> {
  const start = startOf(first, offsetMinutes);
  const end = startOf(last + 1, offsetMinutes);
  const shift = span === 'day' ? NEAREST_DAY : 0;
  const readings = await readAround(reader, span, start - shift, end - shift);
  if (readings.at.length === 0) return emptyDays(first, last - first + 1);
  const { value, flag } = readings;
  const at = span === 'day' ? readings.at.map((instant) => instant + shift) : readings.at;
  return dailyMeans(
    { at, value, usable: usable(flag), span },
    { offsetMinutes, firstDay: first, lastDay: last },
  );
}

/** Readings of a stretch, with the usable ones next to it on either side, however far they lie. */
async function readAround(
  reader: StationReader,
  span: Span,
  start: EpochMillis,
  end: EpochMillis,
): Promise<StationRecord> {
  const reach = reader.reach(span);
  if (reach === null || reach.last < start || reach.first >= end) return reader.read(span, start, start);
  if (span === 'day') return reader.read(span, start, end);
  const near = NEXT_READING_DAYS[0] * DAY;
  const readings = await reader.read(span, start - near, end + near);
  const hasBefore = reach.first >= start || usableBefore(readings, start);
  const hasAfter = reach.last < end || usableFrom(readings, end);
  if (hasBefore && hasAfter) return readings;
  const before = hasBefore ? start - near : ((await readingNext(reader, start, 'before')) ?? start);
  const after = hasAfter ? end + near : ((await readingNext(reader, end, 'after')) ?? end);
  return reader.read(span, before, after + 1);
}

function usableBefore({ at, flag }: StationRecord, instant: EpochMillis): boolean {
  for (let i = 0; i < at.length && at[i] < instant; i++) if (isUsable(flag[i])) return true;
  return false;
}

function usableFrom({ at, flag }: StationRecord, instant: EpochMillis): boolean {
  for (let i = at.length - 1; i >= 0 && at[i] >= instant; i--) if (isUsable(flag[i])) return true;
  return false;
}

/** Instant of the usable reading next before `at`, or the first that is not before it. */
async function readingNext(
  reader: StationReader,
  at: EpochMillis,
  side: 'before' | 'after',
): Promise<EpochMillis | null> {
  const reach = reader.reach('instant');
  if (reach === null || (side === 'before' ? reach.first >= at : reach.last < at)) return null;
  for (const days of NEXT_READING_DAYS) {
    const { at: instants, flag } = await (side === 'before'
      ? reader.read('instant', at - days * DAY, at)
      : reader.read('instant', at, at + days * DAY));
    const found = side === 'before' ? flag.findLastIndex(isUsable) : flag.findIndex(isUsable);
    if (found !== -1) return instants[found];
  }
  return null;
}

/** `own`, its gap days taken from `given`, an agency's daily means. */
function filledFrom(own: DaySeries, given: DaySeries): DaySeries {
  for (let d = 0; d < own.mean.length; d++) {
    if (own.origin[d] === Origin.measured || given.origin[d] !== Origin.measured) continue;
    own.mean[d] = given.mean[d];
    own.min[d] = given.min[d];
    own.max[d] = given.max[d];
    own.coverage[d] = given.coverage[d];
    own.spread[d] = given.spread[d];
    own.origin[d] = given.origin[d];
  }
  return own;
}

export function dayOf(at: EpochMillis, offsetMinutes: number): DayNumber {
  return Math.floor((at + offsetMinutes * 60_000) / DAY);
}

export function startOf(day: DayNumber, offsetMinutes: number): EpochMillis {
  return day * DAY - offsetMinutes * 60_000;
}
