import type { TextOf } from '../fields/bytes.js';
import { DAY, dayNumber, HOUR, MINUTE } from '../fields/civil.js';
import { CivilTime } from '../fields/civil-time.js';
import { NO_OFFSET } from '../fields/clock-text.js';
import { NumberField } from '../fields/number.js';
import { abbreviatedOffset, foldWord } from '../fields/words-of-time.js';
import { zoneNamed } from '../zones/zone.js';
import { ByteDictionary } from './byte-dictionary.js';
import type { Plan } from './plan.js';

/** 1850 and 2150: outside, a date is a mistake, and no zone's table need reach there. */
const EARLIEST = -43_830 * DAY;
const LATEST = 65_744 * DAY;
/** Day 0 of spreadsheets' serial days, 1899-12-30, in days before 1970. */
const SERIAL_EPOCH = 25_569;

/**
 * The wall-clock time of a row from the one or two columns it stands in. `offset` is then what the row itself
 * states, in minutes, or NO_OFFSET; epochs state UTC.
 */
export class RowTime {
  /** Milliseconds of the wall clock as if it were UTC. */
  local = Number.NaN;
  offset = NO_OFFSET;
  /** The zone column held something that is no offset. */
  unknownZone = false;
  readonly date: CivilTime;
  private readonly clock: CivilTime;
  private readonly number: NumberField;
  private readonly zones = new ByteDictionary();
  private readonly zoneOffsets: number[] = [];
  private readonly scale: number;

  constructor(
    private readonly plan: Plan,
    private readonly textOf: TextOf,
  ) {
    const shape = { order: plan.order, yearDigits: plan.yearDigits };
    this.date = new CivilTime(shape, textOf);
    this.clock = new CivilTime(shape, textOf);
    this.number = new NumberField(plan.decimal, textOf);
    this.scale = plan.time.form === 'epoch-seconds' ? 1000 : 1;
  }

  /** Whether the row holds a time, which then stands in `local`. */
  read(b: Uint8Array, starts: Int32Array, ends: Int32Array): boolean {
    const { plan, date } = this;
    const { form, date: column, clock, zone } = plan.time;
    if (form === 'date-parts') {
      if (!this.inParts(b, starts, ends)) return false;
      if (clock >= 0 && !this.addClock(b, starts[clock], ends[clock])) return false;
      if (zone >= 0) this.readZone(b, starts[zone], ends[zone]);
    } else if (form !== 'civil') {
      if (!this.counted(b, starts[column], ends[column])) return false;
    } else {
      if (!date.read(b, starts[column], ends[column])) return false;
      this.local = date.day * DAY + date.millis;
      this.offset = date.offset;
      if (clock >= 0 && !this.addClock(b, starts[clock], ends[clock])) return false;
      if (zone >= 0) this.readZone(b, starts[zone], ends[zone]);
    }
    return this.local >= EARLIEST && this.local < LATEST;
  }

  /** Year, month, day, hour and minute in columns of their own. */
  private inParts(b: Uint8Array, starts: Int32Array, ends: Int32Array): boolean {
    const [year, month, day, hour, minute] = this.plan.time.parts.map((column) => {
      if (column < 0) return 0;
      return this.number.read(b, starts[column], ends[column]) ? this.number.value : Number.NaN;
    });
    this.offset = NO_OFFSET;
    this.local = dayNumber(year, month, day) * DAY + hour * HOUR + minute * MINUTE;
    return hour >= 0 && hour <= 24 && minute >= 0 && minute < 60;
  }

  private addClock(b: Uint8Array, start: number, end: number): boolean {
    const { clock } = this;
    if (!clock.readClock(b, start, end)) return false;
    this.local += clock.millis;
    if (clock.offset !== NO_OFFSET) this.offset = clock.offset;
    return true;
  }

  private counted(b: Uint8Array, start: number, end: number): boolean {
    const { number } = this;
    if (!number.read(b, start, end)) return false;
    if (this.plan.time.form === 'serial-days') {
      this.offset = NO_OFFSET;
      // Four decimals of a day are 8.6 s: they were whole minutes. More decimals carry seconds.
      const step = number.decimals <= 4 ? MINUTE : 1000;
      this.local = Math.round(((number.value - SERIAL_EPOCH) * DAY) / step) * step;
    } else {
      this.offset = 0;
      this.local = Math.round(number.value * this.scale);
    }
    return true;
  }

  private readZone(b: Uint8Array, start: number, end: number): void {
    const id = this.zones.id(b, start, end);
    if (id === this.zoneOffsets.length) this.zoneOffsets.push(this.zoneOffset(this.textOf(b, start, end)));
    const offset = this.zoneOffsets[id];
    this.unknownZone = Number.isNaN(offset);
    if (!this.unknownZone) this.offset = offset;
  }

  /** Minutes east of UTC; NO_OFFSET for an empty field, NaN for one that is no offset. */
  private zoneOffset(text: string): number {
    const trimmed = text.trim();
    if (trimmed === '') return NO_OFFSET;
    const named = abbreviatedOffset(foldWord(trimmed));
    if (named !== null) return named;
    const zone = zoneNamed(trimmed);
    return zone?.kind === 'fixed' ? zone.offset / MINUTE : Number.NaN;
  }
}
