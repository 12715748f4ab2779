import { DownloadRefused } from '../download.js';
import { isMissingNumber, isMissingText } from '../fields/missing.js';
import type { SeriesHeading, SeriesListener, StatedPoint } from './waterml-series.js';
import { parseDateTime } from './xsd-time.js';

/** More than any service hands out at once. */
const MOST_SERIES = 20_000;

/** What one time series holds, found before any of it is handed on. */
export interface SurveyedSeries {
  readonly heading: SeriesHeading;
  points: number;
  /** Points whose time states no offset. */
  withoutOffset: number;
  /** Points whose time is a date alone. */
  wholeDays: number;
  /** The first time stated, as its wall clock shows it; NaN before one was. */
  firstWall: number;
  /** Every point stated this offset in minutes; NaN where they differ or state none. */
  offset: number;
  smallest: number;
  largest: number;
}

/** A value as it is written: NaN and no fault where it is missing. */
export function statedValue(text: string | null): { readonly value: number; readonly wrong: boolean } {
  if (text === null || text === '' || isMissingText(text)) return { value: Number.NaN, wrong: false };
  const value = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?$/i.test(text) ? Number(text) : Number.NaN;
  if (Number.isNaN(value)) return { value, wrong: true };
  return isMissingNumber(value) ? { value: Number.NaN, wrong: false } : { value, wrong: false };
}

/** Goes through a document once to learn which series it holds; nothing is kept of the points but figures. */
export class WaterMlSurvey implements SeriesListener {
  readonly series: SurveyedSeries[] = [];

  open(heading: SeriesHeading): void {
    if (this.series.length === MOST_SERIES)
      throw new DownloadRefused({ code: 'waterml.too-many-series', with: { limit: MOST_SERIES } });
    this.series.push({
      heading,
      points: 0,
      withoutOffset: 0,
      wholeDays: 0,
      firstWall: Number.NaN,
      offset: Number.NaN,
      smallest: Number.POSITIVE_INFINITY,
      largest: Number.NEGATIVE_INFINITY,
    });
  }

  point({ time, value }: StatedPoint): void {
    const series = this.series.at(-1);
    if (series === undefined) return;
    this.noteTime(series, time);
    series.points++;
    const stated = statedValue(value).value;
    if (stated < series.smallest) series.smallest = stated;
    if (stated > series.largest) series.largest = stated;
  }

  private noteTime(series: SurveyedSeries, text: string | null): void {
    const time = parseDateTime(text ?? series.heading.baseTime ?? '');
    if (time === null) return;
    if (Number.isNaN(series.firstWall)) series.firstWall = time.wall;
    if (time.wholeDay) series.wholeDays++;
    if (time.offset === null) series.withoutOffset++;
    const stated = time.offset ?? Number.NaN;
    if (series.points === 0) series.offset = stated;
    else if (series.offset !== stated) series.offset = Number.NaN;
  }
}
