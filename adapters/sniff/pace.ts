import type { DateOrder } from '../download.js';
import { DAY } from '../fields/civil.js';
import { fieldsOf } from '../fields/quoted.js';
import { clockReading, timeReadings } from './cells.js';
import { OrderTally } from './date-order.js';
import { joinParts } from './date-parts.js';
import type { Frame } from './frame.js';

/** Rows of the head whose times are read one by one. */
const ROWS = 8000;
/** Rows after which a plain or settled order of dates is believed, and rows that show the pace. */
const ENOUGH = 400;
const PACE_ROWS = 1500;

/** The time fields of one row. */
export interface TimeText {
  readonly date: string;
  readonly clock: string | null;
  readonly station: string;
}

/** How the rows follow each other. */
export interface Pace {
  /** Usual step of one station in milliseconds; null where no two rows differ. */
  readonly interval: number | null;
  readonly direction: 1 | -1;
  /** Days without any clock. */
  readonly dateOnly: boolean;
  /** All rows stand at midnight, whole days apart. */
  readonly midnights: boolean;
  /** Rows of one station share an instant more often than not. */
  readonly repeats: boolean;
  readonly yearDigits: 0 | 2 | 4;
}

/** The time fields of the head's rows, in file order, no more of them than are asked for. */
export function* timeTexts({ lines, first, delimiter, time }: Frame, station: number): Generator<TimeText> {
  for (let i = first; i < Math.min(lines.length, first + ROWS); i++) {
    const cells = fieldsOf(lines[i], delimiter);
    const date = time.form === 'date-parts' ? joinParts(cells, time.parts) : cells[time.date]?.trim();
    if (date === undefined || !/\d/.test(date)) continue;
    const clock = time.clock < 0 ? null : (cells[time.clock]?.trim() ?? '');
    yield { date, clock, station: station < 0 ? '' : (cells[station] ?? '') };
  }
}

export function tallyOf(texts: Iterable<TimeText>): OrderTally {
  const tally = new OrderTally();
  let rows = 0;
  for (const { date, clock } of texts) {
    if (rows++ === ENOUGH && (tally.plain || tally.decided)) break;
    const extra = clock === null ? 0 : clockReading(clock);
    if (!Number.isNaN(extra)) tally.add(date, extra);
  }
  return tally;
}

function instantsOf({ time }: Frame, texts: Iterable<TimeText>, order: DateOrder) {
  const found: { at: number; hasClock: boolean; yearDigits: number; station: string }[] = [];
  for (const { date, clock, station } of texts) {
    if (found.length === PACE_ROWS) break;
    if (time.form !== 'civil' && time.form !== 'date-parts') {
      const at = numericInstant(time.form, Number(date.replace(',', '.')));
      found.push({ at, hasClock: time.form !== 'serial-days' || at % DAY !== 0, yearDigits: 0, station });
      continue;
    }
    const readings = timeReadings(date);
    const reading = readings.find((one) => one.order === order) ?? readings[0];
    if (reading === undefined) continue;
    const extra = clock === null ? 0 : clockReading(clock);
    if (Number.isNaN(extra)) continue;
    found.push({
      at: reading.at + extra,
      hasClock: reading.hasClock || clock !== null,
      yearDigits: reading.yearDigits,
      station,
    });
  }
  return found;
}

function numericInstant(form: string, value: number): number {
  if (form === 'epoch-seconds') return value * 1000;
  return form === 'epoch-millis' ? value : Math.round((value - 25_569) * DAY);
}

function median(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  return [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)];
}

export function paceOf(frame: Frame, texts: Iterable<TimeText>, order: DateOrder): Pace {
  const found = instantsOf(frame, texts, order);
  const last = new Map<string, number>();
  const steps: number[] = [];
  for (const { at, station } of found) {
    const before = last.get(station);
    if (before !== undefined) steps.push(at - before);
    last.set(station, at);
  }
  const moving = steps.filter((step) => step !== 0);
  const falling = moving.filter((step) => step < 0).length;
  const digits = new Set(found.map(({ yearDigits }) => yearDigits));
  const [only] = digits;
  return {
    interval: median(moving.map(Math.abs)),
    direction: falling > moving.length / 2 ? -1 : 1,
    dateOnly: found.length > 0 && found.filter(({ hasClock }) => hasClock).length <= 0.02 * found.length,
    midnights: found.every(({ at }) => at % DAY === 0) && moving.every((step) => step % DAY === 0),
    repeats: steps.length > 0 && moving.length < steps.length / 2,
    yearDigits: digits.size === 1 && (only === 2 || only === 4) ? only : 0,
  };
}
