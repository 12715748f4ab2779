import type { DaySeries } from '../../forecasting/day-series.js';
import type {
  DeploymentEntry,
  EpochMillis,
  FlagEntry,
  Load,
  LoadNumber,
  Quantity,
  SeasonRow,
  SeasonVersion,
  Series,
  Station,
} from './entries.js';

/** Everything a folder remembers beside readings, as it stands committed (or, in a write, as that write sees it). */
export interface Catalogue {
  stations(): Promise<readonly Station[]>;
  station(id: string): Promise<Station | null>;
  series(): Promise<readonly Series[]>;
  deployments(station?: string): Promise<readonly DeploymentEntry[]>;
  /** All loads, withdrawn ones too, oldest first. */
  loads(): Promise<readonly Load[]>;
  load(load: LoadNumber): Promise<Load | null>;
  /** The standing load of a file with these bytes. */
  loadOf(sha256: string): Promise<Load | null>;
  /** The season document in force; null before the first. */
  season(): Promise<SeasonRow | null>;
  /** All season documents, oldest first. */
  seasons(): Promise<readonly SeasonRow[]>;
  seasonVersion(version: SeasonVersion): Promise<SeasonRow | null>;
  flags(
    station: string,
    quantity: Quantity,
    from: EpochMillis,
    to: EpochMillis,
  ): Promise<readonly FlagEntry[]>;
  /**
   * The kept day series of temperature, by station id: measured days and gap days from the first day to the last
   * with readings. Stations without readings are absent.
   */
  days(stations?: readonly string[]): Promise<ReadonlyMap<string, DaySeries>>;
}

/** A running write: it sees its own changes; nobody else does until it has committed. */
export interface Write extends Catalogue {
  readonly at: EpochMillis;
  readonly by: string;
}
