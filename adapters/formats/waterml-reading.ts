import { type AdapterRemark, type Asked, DownloadRefused, type Known } from '../download.js';
import { MINUTE } from '../fields/civil.js';
import { COLDEST, celsius, inMetres, WARMEST } from '../fields/units.js';
import { BatchColumns } from '../reading/batch-columns.js';
import { shown } from '../reading/row-values.js';
import { airRange, anything, type Range, SeriesBook, waterRange } from '../reading/series-book.js';
import { Unusable } from '../reading/unusable.js';
import type { LineRemark } from '../words.js';
import { ClockEvidence } from '../zones/clock-evidence.js';
import { compareWithAsked, givenZone, homeZoneForDays } from '../zones/given-zone.js';
import { StationClock } from '../zones/station-clock.js';
import { fixedZone, type Zone } from '../zones/zone.js';
import { conversionOf } from './observed.js';
import type { Choice, TakenSeries } from './waterml-choice.js';
import type { SeriesHeading, SeriesListener, StatedPoint } from './waterml-series.js';
import { type SurveyedSeries, statedValue } from './waterml-survey.js';
import { parseDateTime, parseDuration } from './xsd-time.js';

interface Open {
  readonly taken: TakenSeries;
  readonly clock: StationClock;
  readonly index: number;
  /** For points that state no time: the time of the next one and the step; NaN where they must. */
  readonly spacing: number;
  next: number;
}

/** Turns the points of the chosen series into readings, in document order. */
export class WaterMlReading implements SeriesListener {
  readonly columns = new BatchColumns();
  readonly book = new SeriesBook();
  readonly unusable = new Unusable();
  missing = 0;
  points = 0;
  private seen = -1;
  private current: Open | null = null;
  private readonly indexes = new Map<string, { readonly index: number; readonly clock: StationClock }>();
  private readonly remarks = new Map<string, AdapterRemark>();

  constructor(
    private readonly surveyed: readonly SurveyedSeries[],
    private readonly choice: Choice,
    private readonly asked: Asked,
    private readonly known: Known,
  ) {}

  get assumed(): readonly AdapterRemark[] {
    return [...this.remarks.values()];
  }

  open(heading: SeriesHeading): void {
    this.seen++;
    const taken = this.choice.taken[this.seen] ?? null;
    const surveyed = this.surveyed[this.seen];
    if (taken === null || surveyed === undefined) {
      this.current = null;
      return;
    }
    const { index, clock } = this.seriesOf(taken, surveyed);
    const base = parseDateTime(heading.baseTime ?? '');
    const next = base === null ? Number.NaN : this.instant(base.wall, base.offset, clock, taken);
    this.current = { taken, clock, index, spacing: parseDuration(heading.spacing ?? '') ?? Number.NaN, next };
  }

  point(stated: StatedPoint): void {
    this.points++;
    if (this.current === null) return;
    const reason = this.take(this.current, stated);
    if (reason !== null) this.unusable.add(this.points, reason);
  }

  private seriesOf(
    taken: TakenSeries,
    surveyed: SurveyedSeries,
  ): { readonly index: number; readonly clock: StationClock } {
    const { quantity, medium, station } = taken.key;
    const key = `${quantity} ${medium ?? ''} ${station ?? ''}`;
    const opened = this.indexes.get(key);
    if (opened !== undefined) return opened;
    const zone = this.zoneOf(surveyed, taken);
    const clock = new StationClock(zone, 'wall', new ClockEvidence(null, 1), null, 1);
    const made = { index: this.book.open(taken.key, clock, rangeOf(taken)), clock };
    this.indexes.set(key, made);
    return made;
  }

  private zoneOf(surveyed: SurveyedSeries, taken: TakenSeries): Zone {
    const { heading, withoutOffset, offset, firstWall } = surveyed;
    if (withoutOffset === 0) {
      this.remark({ code: 'offset-in-each-value', with: {} });
      return fixedZone(Number.isNaN(offset) ? 0 : offset * MINUTE);
    }
    if (heading.offset !== null) return this.statedZone(heading.offset);
    const zone = this.givenZone(taken, heading.station, firstWall);
    if (zone.kind === 'named') this.remark({ code: 'wall-time-shown', with: { zone: zone.name } });
    return zone;
  }

  private statedZone(minutes: number): Zone {
    const stated = fixedZone(minutes * MINUTE);
    compareWithAsked(stated, this.asked, (remark) => this.remark(remark));
    return stated;
  }

  private givenZone({ key }: TakenSeries, station: string | null, local: number): Zone {
    const given = givenZone(this.asked, this.known, key.station, local, (remark) => this.remark(remark));
    if (given !== null) return given;
    if (key.span === 'day') return homeZoneForDays(this.asked, local, (remark) => this.remark(remark));
    throw new DownloadRefused({ code: 'no-zone', with: { station } }, { code: 'which-zone', with: {} });
  }

  private remark(remark: AdapterRemark): void {
    this.remarks.set(remark.code, remark);
  }

  private take(open: Open, { time, value, unit }: StatedPoint): LineRemark | null {
    const at = this.timeOf(open, time);
    const stated = statedValue(value);
    if (stated.wrong) return { code: 'line-not-a-number', with: { text: shown(value ?? '') } };
    if (at === null) return { code: 'line-bad-time', with: { text: shown(time ?? '') } };
    if (Number.isNaN(at))
      return { code: 'line-skipped-hour', with: { text: shown(time ?? ''), zone: open.clock.zone.name } };
    if (Number.isNaN(stated.value)) {
      this.missing++;
      return null;
    }
    if (at > (this.asked.notAfter ?? Number.POSITIVE_INFINITY))
      return { code: 'line-after-now', with: { text: shown(time ?? '') } };
    const kept = converted(stated.value, open.taken, unit);
    return typeof kept === 'number' ? this.keep(open, at, kept) : kept;
  }

  /** The point's instant; null where it states none that can be read, NaN in an hour the clocks skipped. */
  private timeOf(open: Open, text: string | null): number | null {
    if (text === null || text === '') {
      const { next, spacing } = open;
      if (Number.isNaN(next + spacing)) return null;
      open.next += spacing;
      return next;
    }
    const time = parseDateTime(text);
    if (time === null || (time.wholeDay && open.taken.key.span !== 'day')) return null;
    return this.instant(time.wall, time.offset, open.clock, open.taken);
  }

  private instant(wall: number, offset: number | null, clock: StationClock, { key }: TakenSeries): number {
    if (offset !== null) return wall - offset * MINUTE;
    const { zone } = clock;
    if (key.span === 'day' && zone.kind === 'named') return wall - zone.transitions.standardOffset(wall);
    const at = clock.convert(wall);
    clock.lastLocal = wall;
    clock.lastAt = at;
    return at;
  }

  private keep({ index }: Open, at: number, value: number): LineRemark | null {
    const place = this.book.note(index, at, value, this.points);
    if (place === 'new') this.columns.add(index, at, value, this.points);
    if (place !== 'other-value') return null;
    const { line, value: first } = this.book.newest(index);
    return { code: 'line-same-instant', with: { firstLine: line, kept: first, dropped: value } };
  }
}

/** A stated number in °C, m or m³/s, rounded as readings are kept; the remark where no river has it. */
function converted(stated: number, taken: TakenSeries, ownUnit: string | null): number | LineRemark {
  const conversion = ownUnit === null ? taken.conversion : conversionOf(ownUnit);
  if (conversion === null || conversion.quantity !== taken.key.quantity)
    return { code: 'line-unknown-unit', with: { text: shown(ownUnit ?? '') } };
  if (conversion.unit === null) return inMetres(stated, conversion.times);
  const value = celsius(stated, conversion.unit);
  if (value >= COLDEST && value <= WARMEST) return value;
  return { code: 'line-impossible-value', with: { text: String(stated) } };
}

/** Outside of it a value is none of this water or air; of what is said to be neither the wider one holds. */
function rangeOf({ key }: TakenSeries): Range {
  if (key.quantity !== 'temperature') return anything;
  return key.medium === 'water' ? waterRange : airRange;
}
