import type { Asked, TemperatureUnit } from '../download.js';
import { type BytesOf, CR, LF, QUOTE, type TextOf, textDecoder, textEncoder } from '../fields/bytes.js';
import { quotedFields } from '../fields/quoted.js';
import type { LineRemark } from '../words.js';
import { Battery } from './battery.js';
import { type LineTaker, LONGEST_LINE } from './line-scanner.js';
import { OddLines } from './odd-lines.js';
import type { Plan } from './plan.js';
import { Readings } from './readings.js';
import { RowInstant } from './row-instant.js';
import { RowStation } from './row-station.js';
import { RowTime } from './row-time.js';
import { RowValues } from './row-values.js';
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
  /** A date failed in the plan's order that passes in the other one. */
  orderFails = false;
  readonly unusable = new Unusable();
  readonly readings: Readings;
  readonly instant: RowInstant;
  readonly battery: Battery;
  private readonly odd: OddLines;
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
  /** 1 for the bytes at which the search for fields stops: delimiter, line end, quote. */
  private readonly stops = new Uint8Array(256);
  private readonly highestStop: number;
  private readonly bytesOf: BytesOf;
  private cutShort = false;
  private readonly looksAtBattery: boolean;
  private newest: Station | null = null;

  constructor(
    readonly plan: Plan,
    asked: Asked,
    readonly stations: Stations,
  ) {
    this.textOf = textDecoder(plan.encoding);
    this.bytesOf = textEncoder(plan.encoding);
    this.delimiter = plan.delimiter.charCodeAt(0);
    this.newline = plan.newline;
    const stops = [this.delimiter, plan.newline, QUOTE];
    for (const byte of stops) this.stops[byte] = 1;
    this.highestStop = Math.max(...stops);
    this.firstLine = plan.firstLine;
    this.notAfter = asked.notAfter ?? Number.POSITIVE_INFINITY;
    const { date, clock, zone, parts } = plan.time;
    this.needed = Math.max(date, clock, zone, plan.station, ...parts);
    this.lastTaken = Math.max(this.needed, ...plan.values.map(({ index }) => index));
    this.time = new RowTime(plan, this.textOf);
    this.readings = new Readings(plan, stations);
    this.instant = new RowInstant(this.time, stations);
    this.odd = new OddLines(plan);
    this.battery = new Battery(plan, this.textOf);
    this.looksAtBattery = this.battery.looks;
    this.station = new RowStation(plan, stations, this.textOf);
    this.values = new RowValues(plan, stations, this.textOf);
  }

  /** The unit of the file's temperatures: the plan's, or the one its rows stated last. */
  get unit(): TemperatureUnit {
    const stated = this.plan.values.find(({ quantity }) => quantity === 'temperature')?.unit;
    return this.plan.unitColumn >= 0 ? this.values.unit : (stated ?? 'C');
  }

  lines(b: Uint8Array, start: number, end: number): void {
    const { starts, ends, delimiter, newline, stops, highestStop } = this;
    let i = start;
    while (i < end) {
      const from = i;
      let fields = 0;
      let quoted = false;
      let closed = -1;
      starts[0] = i;
      for (;;) {
        let c = b[i];
        // Most bytes lie above every stop: the table need not be asked.
        while (c > highestStop || stops[c] === 0) c = b[++i];
        if (c === delimiter) {
          ends[fields] = closed < 0 ? i : closed;
          closed = -1;
          if (fields < MOST_COLUMNS) fields++;
          starts[fields] = i + 1;
        } else if (c === newline) break;
        else {
          closed = i === starts[fields] ? this.plainlyQuoted(b, i) : -1;
          if (closed < 0) quoted = true;
          else {
            starts[fields] = i + 1;
            i = closed;
          }
        }
        i++;
      }
      const stop = newline === LF && i > from && b[i - 1] === CR ? i - 1 : i;
      ends[fields] = closed < 0 ? stop : closed;
      i++;
      this.line++;
      if (this.line < this.firstLine || stop === from) continue;
      if (quoted) this.quotedLine(b, from, stop);
      else this.row(b, fields + 1, from, stop);
    }
  }

  /**
   * Where a field closes that begins with the quote at `open`; -1 where quotes stand inside or something follows
   * the closing one. Most quoted files quote no more than that, and papaparse need not see their lines.
   */
  private plainlyQuoted(b: Uint8Array, open: number): number {
    const { delimiter, newline } = this;
    let i = open + 1;
    while (b[i] !== QUOTE && b[i] !== newline) i++;
    if (b[i] !== QUOTE) return -1;
    const next = b[i + 1];
    const ends = next === delimiter || next === newline || (next === CR && b[i + 2] === newline);
    return ends ? i : -1;
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
    if (fields <= this.needed || !this.time.read(b, this.starts, this.ends)) {
      this.oddLine(fields, this.textOf(line, from, Math.min(stop, from + LONGEST_SHOWN)));
      return;
    }
    this.rows++;
    const reason = this.timedRow(b, fields);
    if (reason !== null) this.unusable.add(this.line, reason);
  }

  private oddLine(fields: number, text: string): void {
    if (this.newest !== null) this.battery.line(this.newest, text, this.instant.at);
    const reason = this.odd.judge(this.line, text);
    if (reason === null) return;
    this.rows++;
    if (fields > this.needed && this.time.date.date.passesSwapped) this.orderFails = true;
    this.unusable.add(this.line, this.cutShort ? this.odd.cutShort(text) : reason);
  }

  /** A row whose time was read: null where it was of use or held no value, else the reason why not. */
  private timedRow(b: Uint8Array, fields: number): LineRemark | null {
    if (this.time.unknownZone) return this.odd.unknownZone(b, this.starts, this.ends);
    const station = this.station.of(b, this.starts, this.ends);
    if (station === undefined) return { code: 'line-no-station', with: {} };
    if (this.cutShort && (fields <= this.lastTaken || this.instant.lostOffset))
      return this.odd.cutShort(this.textOf(b, this.starts[0], this.ends[fields - 1]));
    if (station !== null) this.instant.settle(station);
    const reason = this.takeValues(b, fields, station);
    if (station !== null) this.takeBattery(b, fields, station);
    return reason;
  }

  private takeBattery(b: Uint8Array, fields: number, station: Station): void {
    const { at } = this.instant;
    if (!(at <= this.notAfter)) return;
    this.newest = station;
    if (this.looksAtBattery) this.battery.row(station, at, b, this.starts, this.ends, fields);
  }

  private takeValues(b: Uint8Array, fields: number, station: Station | null): LineRemark | null {
    const { starts, ends, values, instant } = this;
    const { count, positions, stations } = values;
    let used = false;
    let reason: LineRemark | null = null;
    for (let k = 0; k < count; k++) {
      const column = positions[k];
      if (column >= fields) {
        reason ??= { code: 'line-too-few-columns', with: { found: fields, needed: column + 1 } };
      } else if (!values.read(k, b, starts, ends)) {
        reason ??= values.fault;
      } else if (this.cutShort && column === fields - 1 && values.decimals < this.plan.fewestDecimals) {
        reason ??= this.odd.cutShort(this.textOf(b, starts[0], ends[column]));
      } else {
        const owner = station ?? stations[k];
        if (station === null) instant.settle(owner);
        used = true;
        if (instant.at <= this.notAfter)
          reason = this.readings.keep(owner, k, instant.at, values.value, this.line) ?? reason;
        else reason ??= this.badInstant(owner, b);
      }
    }
    if (!used && reason === null) this.missing++;
    return reason;
  }

  private badInstant(station: Station, b: Uint8Array): LineRemark {
    const { date } = this.plan.time;
    const text = this.textOf(b, this.starts[date], this.ends[date]);
    if (!Number.isNaN(this.instant.at)) return { code: 'line-after-now', with: { text } };
    return { code: 'line-skipped-hour', with: { text, zone: station.clock?.zone.name ?? '' } };
  }
}
