import type { Asked } from '../../adapters/index.js';
import type { Forecast } from '../../forecasting/forecast.js';
import type { DevelopmentTable } from '../../forecasting/table.js';
import type { DayNumber } from '../../forecasting/units.js';
import type { FileOutcome, LoadingProgress } from '../loading/index.js';
import type { Season, SeasonChange } from '../season/index.js';

/** What a person asks when loading: what the downloads do not say themselves, and whether to keep anything. */
export interface LoadRequest {
  /** Paths; `station` where one file belongs to another station than `asked` says. */
  readonly files: readonly { readonly path: string; readonly station?: string }[];
  readonly asked: Pick<Asked, 'station' | 'zone' | 'unit' | 'column' | 'dateOrder'>;
  readonly createStations: boolean;
  readonly dryRun: boolean;
  readonly who: string;
  readonly progress: ((step: LoadingProgress) => void) | null;
}

export interface LoadRow {
  readonly load: string;
  readonly file: string;
  readonly stations: readonly string[];
  readonly readings: number;
  /** Epoch milliseconds. */
  readonly at: number;
  readonly withdrawn: number | null;
}

export interface RecordRequest {
  readonly station: string;
  readonly from: DayNumber | null;
  readonly to: DayNumber | null;
  readonly daily: boolean;
}

/**
 * One group: its season, its record, its forecast. Every face (command line, pages, API) works through this door;
 * refusals are errors with a remark (src/words puts them into words).
 */
export interface Group {
  readonly folder: string;
  /** The day that is today in the group's zone; where the group is shown as of another day, that one. */
  today(): Promise<DayNumber>;
  season(): Promise<Season>;
  /** The season file as it stands: what `applySeason` takes. */
  seasonText(): Promise<string>;
  /** What taking over this season file would change; nothing is changed. */
  previewSeason(text: string, file: string): Promise<readonly SeasonChange[]>;
  applySeason(text: string, file: string, who: string): Promise<readonly SeasonChange[]>;
  load(request: LoadRequest): Promise<readonly FileOutcome[]>;
  loads(): Promise<readonly LoadRow[]>;
  withdraw(load: string, who: string): Promise<LoadRow>;
  forecast(request: { readonly box: string | null; readonly asOf: DayNumber | null }): Promise<Forecast>;
  /** A station's record as CSV lines, header first, without line ends. */
  record(request: RecordRequest): AsyncIterable<string>;
  /** The shipped development tables, then the group's own. */
  tables(): Promise<readonly DevelopmentTable[]>;
  close(): Promise<void>;
}
