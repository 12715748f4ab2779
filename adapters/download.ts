import type { Celsius, EpochMillis, ReadingBatch, SeriesKey } from './batch.js';
import type { FormatWords } from './formats/remark.js';
import type { BatteryReport } from './reading/battery.js';
import type { Remark } from './remark.js';
import type { EngineWords } from './words.js';

/** Every sentence the adapters may ask for: the engine's and the exchange formats'. */
export type AdapterWords = EngineWords & FormatWords;
export type AdapterRemark = Remark<AdapterWords>;

export type TemperatureUnit = 'C' | 'F' | 'K';
export type DateOrder = 'ymd' | 'dmy' | 'mdy';
export type Encoding = 'utf-8' | 'utf-16le' | 'utf-16be' | 'windows-1252' | 'cp850';
export type Delimiter = ',' | ';' | '\t' | '|';
export type DecimalMark = '.' | ',';
/** A column by its header, or by its number counted from 1. */
export type ColumnName = string | number;

/** What a saved layout settles beforehand, so that the engine need not find it out. All parts are optional. */
export interface SettledLayout {
  readonly encoding?: Encoding | undefined;
  readonly delimiter?: Delimiter | undefined;
  readonly decimal?: DecimalMark | undefined;
  /** Line of the header, counted from 1; 0 where the file has none and `firstLine` may say where readings begin. */
  readonly headerLine?: number | undefined;
  readonly dateOrder?: DateOrder | undefined;
  /** One column with date and clock, or the date's and the clock's. */
  readonly time?: readonly ColumnName[] | undefined;
  readonly temperature?: ColumnName | undefined;
  readonly level?: ColumnName | undefined;
  readonly discharge?: ColumnName | undefined;
  readonly station?: ColumnName | undefined;
  readonly unit?: TemperatureUnit | undefined;
  /** IANA name, `UTC` or `UTC±HH:MM`. */
  readonly zone?: string | undefined;
  /** Further texts that stand for a missing value. */
  readonly missing?: readonly string[] | undefined;
}

/**
 * What the person said about this file. It fills in what the file does not state: an offset, a unit or an order of
 * dates that the file states or shows stands, and the report says that the person's word was not used. A saved
 * layout overrides the file.
 */
export interface Asked {
  /** Station for a file of one station. A file that names its own keeps the person's word, and says so. */
  readonly station?: string | undefined;
  /** IANA name, `UTC` or `UTC±HH:MM`. */
  readonly zone?: string | undefined;
  /** Zone of the group: where a file of daily means states none, and nobody knows its station, its days begin there. */
  readonly homeZone?: string | undefined;
  readonly unit?: TemperatureUnit | undefined;
  /** Header of the temperature column to take. */
  readonly column?: string | undefined;
  readonly dateOrder?: DateOrder | undefined;
  readonly layout?: SettledLayout | undefined;
  /** Instants later than this are unusable: usually now plus a day. The adapters have no clock of their own. */
  readonly notAfter?: EpochMillis | undefined;
}

/** What the season knows of a station that the file or the person names. */
export interface Known {
  zoneOf(
    station: string | null,
    at?: EpochMillis,
  ): { readonly zone: string; readonly from: 'deployment' | 'station' } | null;
  isAir?(station: string | null): boolean;
  /** The station where a logger lay, by the serial number a file states; null where it lay at several, or at none. */
  stationOfSerial?(serial: string): string | null;
}

/** Where readings go. `startAgain` forgets everything taken so far: the file is read anew under another reading of its dates or clock. */
export interface Sink {
  take(batch: ReadingBatch): void | Promise<void>;
  startAgain(): void | Promise<void>;
}

/** What was found of one series; `SeriesSummary[i]` belongs to `series[i]`. Values in °C, m or m³/s. */
export interface SeriesSummary {
  readonly rows: number;
  readonly first: EpochMillis;
  readonly last: EpochMillis;
  readonly min: Celsius;
  readonly max: Celsius;
  /** Zone its clock was read in: IANA name, `UTC` or `UTC±HH:MM`. */
  readonly zone: string;
  /** Instants strictly rose. */
  readonly ordered: boolean;
}

export interface Understood {
  readonly encoding: Encoding;
  readonly delimiter: Delimiter | null;
  readonly decimal: DecimalMark;
  /** null where the file holds no temperature. */
  readonly unit: TemperatureUnit | null;
  /** IANA name, `UTC` or `UTC±HH:MM`; null where the stations of the file differ (see the summaries). */
  readonly zone: string | null;
  /** null where dates can be read in one way only (ISO, month names, epoch, serial days). */
  readonly dateOrder: DateOrder | null;
  /** Headers as they stand in the file, or `#N` counted from 1 where it has none. */
  readonly timeColumns: readonly string[];
  readonly valueColumn: string | null;
  readonly daily: boolean;
}

export interface DownloadReport {
  readonly series: readonly SeriesKey[];
  readonly summaries: readonly SeriesSummary[];
  readonly understood: Understood;
  readonly assumed: readonly AdapterRemark[];
  readonly unusable: {
    readonly count: number;
    readonly examples: readonly { readonly line: number; readonly reason: AdapterRemark }[];
  };
  /** Instants strictly rose in every series: no two readings of a series share one. */
  readonly ordered: boolean;
  /** Serial number of the logger, when the file states one. */
  readonly serial: string | null;
  /** What the file says of each logger's battery. */
  readonly battery: readonly BatteryReport[];
}

/** The whole file is refused, or waits for an answer: nothing of it may be stored. */
export class DownloadRefused extends Error {
  readonly exit = 2;
  constructor(
    readonly remark: AdapterRemark,
    /** What to answer, where an answer would let the file in. */
    readonly question: AdapterRemark | null = null,
  ) {
    super(remark.code);
    this.name = 'DownloadRefused';
  }
}

/**
 * An exchange format that is not delimited lines (XML). `recognises` sees the first bytes (at most 64 kB, already
 * decompressed); `read` gets all of them, already decompressed.
 */
export interface ExchangeFormat {
  readonly name: string;
  recognises(head: Uint8Array): boolean;
  read(
    open: () => AsyncIterable<Uint8Array>,
    asked: Asked,
    known: Known,
    sink: Sink,
  ): Promise<DownloadReport>;
}
