import type { Asked } from '../../adapters/index.js';
import type { DaySeries } from '../../forecasting/day-series.js';
import type { Forecast } from '../../forecasting/forecast.js';
import type { DevelopmentTable } from '../../forecasting/table.js';
import type { DayNumber } from '../../forecasting/units.js';
import type { FileOutcome, LoadedBattery, LoadingProgress } from '../loading/index.js';
import type { Season, SeasonChange } from '../season/index.js';

import type { SpellsDoor } from '../spells/contract.js';
import type {
  BackupMade,
  ClosedSeasonRow,
  ExportMade,
  Quantity,
  StoreCopied,
  StoreKind,
  Verified,
} from '../store/index.js';
import type { StationFinding } from './judging/findings.js';

import type { Series, SeriesRequest } from './series.js';

/** A file to load: where it lies, what the person calls it where that is not its name there, and whose it is. */
export interface FileGiven {
  readonly path: string;
  readonly name?: string;
  readonly station?: string;
}

/** What a person asks when loading: what the downloads do not say themselves, and whether to keep anything. */
export interface LoadRequest {
  /** `station` where one file belongs to another station than `asked` says. */
  readonly files: readonly FileGiven[];
  readonly asked: Pick<Asked, 'station' | 'zone' | 'unit' | 'column' | 'dateOrder'>;
  readonly createStations: boolean;
  readonly dryRun: boolean;
  readonly who: string;
  readonly progress: ((step: LoadingProgress) => void) | null;
  /** Told the readings each file brings, as the file gives them, by the file's path. */
  readonly preview?: (path: string, series: Series) => void;
}

export interface LoadRow {
  readonly load: string;
  readonly file: string;
  readonly stations: readonly string[];
  readonly readings: number;
  /** Epoch milliseconds. */
  readonly at: number;
  readonly withdrawn: number | null;
  /** What the file says of the loggers' batteries, by station. */
  readonly battery: readonly LoadedBattery[];
}

export interface RecordRequest {
  readonly station: string;
  readonly from: DayNumber | null;
  readonly to: DayNumber | null;
  readonly daily: boolean;
}

/** A station as a list shows it: what the season says of it, and how far its record reaches. */
export interface StationRow {
  readonly station: string;
  readonly name: string;
  readonly kind: string;
  /** Named by the season in force; false for one that only loads know. */
  readonly inSeason: boolean;
  readonly records: readonly {
    readonly quantity: Quantity;
    /** Visible readings. */
    readonly readings: number;
    readonly first: number;
    readonly last: number;
  }[];
}

/** A season that is being closed: its id, the document's version, the method, and all that is kept of it as JSON. */
export interface ClosedGiven {
  readonly season: string;
  readonly version: number;
  readonly method: number;
  readonly content: string;
}

/** A version of the season document: who took it over, and when (epoch milliseconds). */
export interface SeasonVersionRow {
  readonly version: number;
  readonly by: string;
  readonly at: number;
}

/**
 * One group: its season, its record, its forecast. Every face (command line, pages, API) works through this door;
 * refusals are errors with a remark (src/words puts them into words).
 */
export interface Group extends SpellsDoor {
  readonly folder: string;
  /** The day that is today in the group's zone; where the group is shown as of another day, that one. */
  today(): Promise<DayNumber>;
  season(): Promise<Season>;
  /** The season file as it stands: what `applySeason` takes. */
  seasonText(): Promise<string>;
  /** What taking over this season file would change; nothing is changed. */
  previewSeason(text: string, file: string): Promise<readonly SeasonChange[]>;
  /**
   * Takes over a season file. `expected` is the version the person had before them: where another one stands by
   * now, UnknownName 'season-moved' is thrown and nothing is overwritten.
   */
  applySeason(text: string, file: string, who: string, expected?: number): Promise<readonly SeasonChange[]>;
  /** Every version of the season document, newest first; empty before the first (then its version is 0). */
  seasonVersions(): Promise<readonly SeasonVersionRow[]>;
  /** The text of one version. @throws UnknownName 'unknown-version' */
  seasonAt(version: number): Promise<string>;
  /** Seasons that were closed, oldest first. */
  closedSeasons(): Promise<readonly ClosedSeasonRow[]>;
  /** What was kept of a closed season, as JSON (src/reports reads it); null where it was not closed. */
  closedContent(season: string): Promise<string | null>;
  /**
   * Keeps a season as it stands. `closed.version` is the version of the document it was worked out from.
   * @throws ReportRefused 'close-twice', 'close-moved'
   */
  keepClosed(closed: ClosedGiven, who: string): Promise<ClosedSeasonRow>;
  stations(): Promise<readonly StationRow[]>;
  /** What the quality checks say of a station's record, by time, and what a person ruled of it. */
  findings(station: string): Promise<readonly StationFinding[]>;
  load(request: LoadRequest): Promise<readonly FileOutcome[]>;
  loads(): Promise<readonly LoadRow[]>;
  withdraw(load: string, who: string): Promise<LoadRow>;
  /** `closed`: of that closed season, by its own document and tables over the record as it is now. */
  forecast(request: {
    readonly box: string | null;
    readonly asOf: DayNumber | null;
    readonly closed?: string | undefined;
  }): Promise<Forecast>;
  /** A station's record as CSV lines, header first, without line ends. */
  record(request: RecordRequest): AsyncIterable<string>;
  /** The same record as columns for drawing, gathered in steps where there are more readings than points. */
  series(request: SeriesRequest): Promise<Series>;
  /** A station's days: measured, gaps filled, and projected as far as `to` asks. */
  days(request: Omit<RecordRequest, 'daily'>): Promise<DaySeries>;
  /** The shipped development tables, then the group's own. */
  tables(): Promise<readonly DevelopmentTable[]>;
  /** Everything that stands, as one file that `restore` takes; others go on working meanwhile. */
  backup(file: string): Promise<BackupMade>;
  /** Whether everything accepted is there, unchanged, and nothing else. */
  verify(): Promise<Verified>;
  /** Everything that stands, in open formats, in a new folder. */
  exportAll(folder: string): Promise<ExportMade>;
  /** Moves the readings to the other store; switched only once counts and checksums agree. */
  copyStore(to: StoreKind): Promise<StoreCopied>;
  close(): Promise<void>;
}
