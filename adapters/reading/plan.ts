import type { Quantity, StatedPlace } from '../batch.js';
import type {
  AdapterRemark,
  DateOrder,
  DecimalMark,
  Delimiter,
  Encoding,
  TemperatureUnit,
} from '../download.js';
import type { BatteryColumn, BatteryUnit, NoteColumn } from '../sniff/battery.js';
import type { Zone } from '../zones/zone.js';

/** How instants are written. Serial days count from 1899-12-30, as spreadsheets do. */
export type TimeForm = 'civil' | 'date-parts' | 'epoch-seconds' | 'epoch-millis' | 'serial-days';

export interface TimeColumns {
  readonly form: TimeForm;
  /** Positions from 0; -1 where there is none. */
  readonly date: number;
  readonly clock: number;
  /** Column with an offset or a zone's abbreviation. */
  readonly zone: number;
  /** Year, month, day, hour and minute where each has a column (form 'date-parts'); -1 for those that have none. */
  readonly parts: readonly number[];
  readonly names: readonly string[];
}

/** One column of values to take. */
export interface ValueColumn {
  readonly index: number;
  readonly name: string;
  readonly quantity: Quantity;
  readonly medium: 'water' | 'air' | null;
  /** Unit of a temperature; the other quantities have a factor to m or m³/s. */
  readonly unit: TemperatureUnit;
  readonly factor: number;
  /** The station, where each has a column of its own. */
  readonly station: string | null;
}

/** What the file says of its clock: an offset or a zone, its zone's standard time, or nothing. */
export type StatedClock =
  | { readonly kind: 'zone'; readonly zone: Zone; readonly text: string }
  | { readonly kind: 'standard' }
  | { readonly kind: 'unknown'; readonly text: string }
  | { readonly kind: 'none' };

/** What was found out about a file before its rows are read. Positions of columns count from 0, lines from 1. */
export interface Plan {
  readonly encoding: Encoding;
  readonly newline: number;
  readonly delimiter: Delimiter;
  readonly decimal: DecimalMark;
  /** The first line that may be a reading. */
  readonly firstLine: number;
  readonly headers: readonly string[] | null;
  readonly columns: number;
  readonly time: TimeColumns;
  readonly values: readonly ValueColumn[];
  /** Further positions; -1 where there is no such column. */
  readonly station: number;
  readonly latitude: number;
  readonly longitude: number;
  readonly unitColumn: number;
  /** The battery's figures; null where the file has no such column. */
  readonly battery: BatteryColumn | null;
  /** Columns of remarks, which may call the battery low. */
  readonly notes: readonly NoteColumn[];
  /** What the lines above the table say of the battery. */
  readonly stated: { readonly low: string | null; readonly value: number | null; readonly unit: BatteryUnit };
  readonly daily: boolean;
  readonly order: DateOrder;
  /** The order was read off values above 12, or no order is needed; otherwise a row may still overturn it. */
  readonly orderCertain: boolean;
  readonly orderMatters: boolean;
  readonly yearDigits: 0 | 2 | 4;
  /** Usual step between rows of one station in milliseconds, null where the head shows none. */
  readonly interval: number | null;
  /** 1 where time rises down the file, -1 where it falls. */
  readonly direction: 1 | -1;
  readonly clock: StatedClock;
  /** The station to use for a file of one station: the person's word, else the file's. */
  readonly stationName: string | null;
  readonly stationInFile: string | null;
  readonly place: StatedPlace | null;
  readonly serial: string | null;
  /** Unit was not stated but allowed by the values. */
  readonly unitAssumed: boolean;
  /** Fewest decimals of the last value column in the head. */
  readonly fewestDecimals: number;
  /** Folded texts that stand for a missing value, besides the usual ones. */
  readonly missing: ReadonlySet<string>;
  readonly assumed: readonly AdapterRemark[];
}
