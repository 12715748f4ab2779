import type { SeriesKey } from '../batch.js';
import type { Asked } from '../download.js';
import { type BytesOf, CR, LF, QUOTE, type TextOf, textDecoder, textEncoder } from '../fields/bytes.js';
import { MINUTE } from '../fields/civil.js';
import { NO_OFFSET } from '../fields/civil-time.js';
import { quotedFields } from '../fields/quoted.js';
import type { LineRemark } from '../words.js';
import { BatchColumns } from './batch-columns.js';
import { type LineTaker, LONGEST_LINE } from './line-scanner.js';
import { OddLines } from './odd-lines.js';
import type { Plan } from './plan.js';
import { RowStation } from './row-station.js';
import { RowTime } from './row-time.js';
import { RowValues } from './row-values.js';
import { airRange, anything, SeriesBook, waterRange } from './series-book.js';
import type { Station, Stations } from './stations.js';
import { Unusable } from './unusable.js';

/** Columns of one line that are told apart; a line with more is not used. */
export const MOST_COLUMNS = 16_384;

/** Of an unusable line no more than this is looked at. */
const LONGEST_SHOWN = 4096;

/**
 * Turns lines into readings. Fields are never made into strings or objects unless a line is out of the ordinary:
 * that is what lets a file go through at the speed of reading it.
 */
export class RowReader implements LineTaker {
  line = 0;
  /** Lines that were neither blank, nor comments, nor headers. */
  rows = 0;
  missing = 0;
  /** The first offset that a row stated in minutes, and whether another followed. */
  firstOffset = NO_OFFSET;
  offsetsVary = false;
  /** A date failed in the plan's order that passes in the other one. */
  orderFails = false;
  readonly columns = new BatchColumns();
  readonly book = new SeriesBook();
  readonly unusable = new Unusable();
  readonly odd: OddLines;
  private readonly starts = new Int32Array(MOST_COLUMNS + 1);
  private readonly ends = new Int32Array(MOST_COLUMNS + 1);
  private readonly time: RowTime;
  private readonly values: RowValues;
  private readonly station: RowStation;
  private readonly textOf: TextOf;
  private readonly delimiter: number;
  private readonly newline: number;
  private readonly firstLine: number;
  private readonly notAfter: number;
  private readonly needed: number;
  private readonly lastTaken: number;
  private readonly bytesOf: BytesOf;
  private cutShort = false;

  constructor(
    readonly plan: Plan,
    asked: Asked,
    readonly stations: Stations,
  ) {
    this.textOf = textDecoder(plan.encoding);
    this.bytesOf = textEncoder(plan.encoding);
    this.delimiter = plan.delimiter.charCodeAt(0);
    this.newline = plan.newline;
    this.firstLine = plan.firstLine;
    this.notAfter = asked.notAfter ?? Number.POSITIVE_INFINITY;
    this.needed = Math.max(plan.time.date, plan.time.clock, plan.time.zone, plan.station);
    this.lastTaken = Math.max(this.needed, ...plan.values.map(({ index }) => index));
    this.time = new RowTime(plan, this.textOf);
    this.odd = new OddLines(plan);
    this.station = new RowStation(plan, stations, this.textOf);
    this.values = new RowValues(plan, stations, this.textOf);
  }

  lines(b: Uint8Array, start: number, end: number): void {
    const { starts, ends, delimiter, newline } = this;
    let i = start;
    while (i < end) {
      const from = i;
      let fields = 0;
      let quoted = false;
      starts[0] = i;
      for (;;) {
        const c = b[i];
        if (c === delimiter) {
          ends[fields] = i;
          if (fields < MOST_COLUMNS) fields++;
          starts[fields] = i + 1;
        } else if (c === newline) break;
        else if (c === QUOTE) quoted = true;
        i++;
      }
      const stop = newline === LF && i > from && b[i - 1] === CR ? i - 1 : i;
      ends[fields] = stop;
      i++;
      this.line++;
      if (this.line < this.firstLine || stop === from) continue;
      if (quoted) this.quotedLine(b, from, stop);
      else this.row(b, fields + 1, from, stop);
    }
  }

  lastLine(b: Uint8Array, start: number, end: number): void {
    const whole = new Uint8Array(end - start + 1);
    whole.set(b.subarray(start, end));
    whole[end - start] = this.newline;
    this.cutShort = true;
    this.lines(whole, 0, whole.length);
    this.cutShort = false;
  }

  overlong(): void {
    this.line++;
    if (this.line < this.firstLine) return;
    this.rows++;
    this.unusable.add(this.line, { code: 'line-too-long', with: { limitKiB: LONGEST_LINE / 1024 } });
  }

  /** Fields as papaparse tells them, laid out in bytes again so that one code reads them. */
  private quotedLine(b: Uint8Array, from: number, stop: number): void {
    const fields = quotedFields(this.textOf(b, from, stop), this.plan.delimiter);
    const bytes = this.bytesOf(fields.join('\n'));
    const count = Math.min(fields.length, MOST_COLUMNS);
    let at = 0;
    for (let i = 0; i < count; i++) {
      this.starts[i] = at;
      while (at < bytes.length && bytes[at] !== LF) at++;
      this.ends[i] = at++;
    }
    this.row(bytes, fields.length, from, stop, b);
  }

  /** `line` holds the line itself in [from, stop) where `b` holds its unquoted fields. */
  private row(b: Uint8Array, fields: number, from: number, stop: number, line = b): void {
    if (fields > MOST_COLUMNS) {
      this.rows++;
      this.unusable.add(this.line, { code: 'line-too-many-columns', with: { limit: MOST_COLUMNS } });
      return;
    }
    const local = fields > this.needed ? this.time.read(b, this.starts, this.ends) : Number.NaN;
    if (Number.isNaN(local)) {
      this.oddLine(b, fields, this.textOf(line, from, Math.min(stop, from + LONGEST_SHOWN)));
      return;
    }
    this.rows++;
    if (this.time.unknownZone) {
      this.unusable.add(this.line, this.odd.unknownZone(b, this.starts, this.ends));
      return;
    }
    const station = this.station.of(b, this.starts, this.ends);
    if (station === undefined) this.unusable.add(this.line, { code: 'line-no-station', with: {} });
    else this.takeValues(b, fields, local, station);
  }

  private oddLine(b: Uint8Array, fields: number, text: string): void {
    const reason = this.odd.judge(this.line, text);
    if (reason === null) return;
    this.rows++;
    this.orderFails = this.orderFails || (fields > this.needed && this.time.date.passesSwapped);
    if (this.cutShort) this.unusable.add(this.line, this.odd.cutShort(text));
    else this.unusable.add(this.line, reason);
    void b;
  }

  private takeValues(b: Uint8Array, fields: number, local: number, station: Station | null): void {
    const { starts, ends, values } = this;
    const { count, positions, stations } = values;
    let used = false;
    let reason: LineRemark | null = null;
    if (this.cutShort && (fields <= this.lastTaken || this.lostOffset())) {
      this.unusable.add(this.line, this.odd.cutShort(this.textOf(b, starts[0], ends[fields - 1])));
      return;
    }
    let at = station === null ? Number.NaN : this.instant(station, local);
    for (let k = 0; k < count; k++) {
      const column = positions[k];
      if (column >= fields) {
        reason ??= { code: 'line-too-few-columns', with: { found: fields, needed: column + 1 } };
        continue;
      }
      const value = values.read(k, b, starts, ends);
      if (Number.isNaN(value)) {
        reason ??= values.fault;
        continue;
      }
      if (this.cutShort && column === fields - 1 && values.decimals < this.plan.fewestDecimals) {
        reason ??= this.odd.cutShort(this.textOf(b, starts[0], ends[column]));
        continue;
      }
      const owner = station ?? stations[k];
      if (station === null) at = this.instant(owner, local);
      if (at <= this.notAfter) {
        reason = this.keep(owner, k, at, value) ?? reason;
        used = true;
      } else reason ??= this.badInstant(at, owner, b);
    }
    if (reason !== null) this.unusable.add(this.line, reason);
    else if (!used) this.missing++;
  }

  /** Every row before stated its offset and the last one does not. */
  private lostOffset(): boolean {
    return this.firstOffset !== NO_OFFSET && this.time.offset === NO_OFFSET;
  }

  /** The instant of a row at a station; NaN for an hour that the zone's clocks skipped. */
  private instant(station: Station, local: number): number {
    const { offset } = this.time;
    if (offset !== NO_OFFSET) {
      if (offset !== this.firstOffset) {
        if (this.firstOffset === NO_OFFSET) this.firstOffset = offset;
        else this.offsetsVary = true;
      }
      return local - offset * MINUTE;
    }
    const clock = station.clock ?? this.stations.clockOf(station, local);
    const at = local >= clock.calmFrom && local < clock.calmTo ? local - clock.offset : clock.convert(local);
    clock.lastLocal = local;
    clock.lastAt = at;
    return at;
  }

  /** Hands a reading on; a remark where its series has another value at the same instant. */
  private keep(station: Station, k: number, at: number, value: number): LineRemark | null {
    let series = station.series[k];
    if (series < 0) series = this.openSeries(station, k);
    const place = this.book.note(series, at, value, this.line);
    if (place === 'new') {
      this.columns.add(series, at, value, this.line);
      return null;
    }
    if (place === 'same') return null;
    const kept = this.book.newest(series);
    return { code: 'line-same-instant', with: { firstLine: kept.line, kept: kept.value, dropped: value } };
  }

  private openSeries(station: Station, k: number): number {
    const { quantity, medium } = this.plan.values[k];
    const span = this.plan.daily ? 'day' : 'instant';
    const key: SeriesKey = { station: station.name, quantity, span, medium, place: station.place };
    const air = medium === 'air' || this.stations.isAir(station) === true;
    const water = medium === 'water' || this.stations.isAir(station) === false;
    const range = quantity !== 'temperature' ? anything : air || !water ? airRange : waterRange;
    station.series[k] = this.book.open(key, station.clock, range);
    return station.series[k];
  }

  private badInstant(at: number, station: Station, b: Uint8Array): LineRemark {
    const { date } = this.plan.time;
    const text = this.textOf(b, this.starts[date], this.ends[date]);
    if (!Number.isNaN(at)) return { code: 'line-after-now', with: { text } };
    return { code: 'line-skipped-hour', with: { text, zone: station.clock?.zone.name ?? '' } };
  }
}
