import type { DaySeries, StationKind } from '../day-series.js';
import type { Celsius, EpochMillis } from '../units.js';
import { DAY, type Days, daily, type Hours, hourly, median } from './hours.js';
import { limitsFor, type RecordedQuantity } from './limits.js';
import { spike } from './qartod/spike.js';

/** One logger's stretch at the station, as far as the season says. */
export interface LaidLogger {
  readonly from: EpochMillis;
  /** null while it lies there, or where nobody wrote down when it was taken out. */
  readonly to: EpochMillis | null;
  /** What it showed in melting ice before and after, °C; its readings are corrected for it already. */
  readonly iceBath: { readonly before: Celsius | null; readonly after: Celsius | null } | null;
  /** Readings its memory holds, and minutes between two. */
  readonly memory: number | null;
  readonly intervalMinutes: number | null;
  /** When its box or its site is to be lifted, as far as that is known. */
  readonly lifted: EpochMillis | null;
}

/** What the files of a record say of the logger's battery. */
export interface LoggerBattery {
  /** null where only words say something. */
  readonly unit: 'V' | '%' | null;
  readonly highest: number | null;
  readonly last: { readonly value: number; readonly at: EpochMillis } | null;
  /** When a remark of the file first calls it low. */
  readonly low: EpochMillis | null;
}

/** Another station's record beside the one judged. */
export interface Comparison {
  readonly station: string;
  /** null where only its days are known. */
  readonly hours: Hours | null;
  readonly days: { readonly firstDay: number; readonly mean: Float64Array };
  /** Its days in all years. */
  readonly history: { readonly firstDay: number; readonly mean: Float64Array };
}

/** A station's record of one quantity, corrected as the season says, and what there is to judge it by. */
export interface RecordToJudge {
  readonly kind: StationKind;
  readonly quantity: RecordedQuantity;
  readonly at: Float64Array;
  readonly value: Float64Array;
  readonly offsetMinutes: number;
  /** Of the logger, °C. */
  readonly accuracy: Celsius;
  readonly deployments: readonly LaidLogger[];
  /** File by file, oldest first. */
  readonly batteries: readonly LoggerBattery[];
  readonly air: readonly Comparison[];
  readonly neighbours: readonly Comparison[];
  /** All days of the station, for what is usual at a season; null where they are not looked at. */
  readonly history: DaySeries | null;
}

/** The record with what every check asks of it, worked out once. */
export interface Judged extends RecordToJudge {
  readonly hours: Hours;
  readonly days: Days;
  /** Usual time between two readings, ms. */
  readonly interval: number;
  /** Smallest step between readings, in the quantity's unit. */
  readonly resolution: number;
}

export function worked(record: RecordToJudge): Judged {
  const hours = withoutSpikes(record);
  return {
    ...record,
    hours,
    days: daily(hours, record.offsetMinutes),
    interval: usualInterval(record.at),
    resolution: resolutionOf(record.value),
  };
}

/** Hours from readings that are no spikes: one wrong reading is no day in air. */
function withoutSpikes({ at, value, kind, quantity }: RecordToJudge): Hours {
  const limits = limitsFor(kind, quantity).spike;
  if (limits === null) return hourly(at, value);
  const flag = spike(at, value, limits);
  if (!flag.includes(4)) return hourly(at, value);
  const kept = [...at.keys()].filter((i) => flag[i] !== 4);
  return hourly(
    Float64Array.from(kept, (i) => at[i]),
    Float64Array.from(kept, (i) => value[i]),
  );
}

/** Looked at to know a record's interval and resolution. */
const SAMPLE = 5000;

export function usualInterval(at: Float64Array): number {
  const every = Math.max(1, Math.floor(at.length / SAMPLE));
  const gaps: number[] = [];
  for (let i = 1; i < at.length; i += every) gaps.push(at[i] - at[i - 1]);
  const middle = median(gaps);
  return Number.isNaN(middle) ? DAY : middle;
}

/** A step that one in fifty of all changes does not fall below: noise of the last digit is not a resolution. */
export function resolutionOf(value: Float64Array): number {
  const every = Math.max(1, Math.floor(value.length / SAMPLE));
  const steps: number[] = [];
  for (let i = 1; i < value.length; i += every) {
    const step = Math.round(Math.abs(value[i] - value[i - 1]) * 1e4) / 1e4;
    if (step > 0) steps.push(step);
  }
  steps.sort((a, b) => a - b);
  return steps[Math.floor(steps.length / 50)] ?? 1e-4;
}

/** Whether its readings follow each other closely enough to see a day in them. */
export function seesDays({ interval }: Judged): boolean {
  return interval <= DAY / 8;
}
