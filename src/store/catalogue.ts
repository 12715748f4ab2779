import type { DaySeries } from '../../forecasting/day-series.js';
import type { Finding } from '../../forecasting/quality/finding.js';
import type {
  ClosedSeasonRow,
  DeploymentEntry,
  EpochMillis,
  FlagEntry,
  JudgedYear,
  Judgement,
  Load,
  LoadNumber,
  Quantity,
  SeasonEntry,
  SeasonRow,
  SeasonVersion,
  Series,
  SeriesNumber,
  Span,
  Station,
  StationEntry,
} from './entries.js';
import type { SeasonApplied } from './folder.js';
import type { LoadWriter, SeriesOutcome } from './reading-store.js';
import type { JudgingEntry, JudgingRow, SpellEntry, SpellEventRow } from './spell-entries.js';

/** A finding with the record it speaks about. */
export interface StoredFinding extends Finding {
  readonly quantity: Quantity;
}

/** Everything a folder remembers beside readings, as it stands committed (or, in a write, as that write sees it). */
export interface Catalogue {
  stations(): Promise<readonly Station[]>;
  station(id: string): Promise<Station | null>;
  series(): Promise<readonly Series[]>;
  deployments(station?: string): Promise<readonly DeploymentEntry[]>;
  /** All loads, withdrawn ones too, oldest first. */
  loads(): Promise<readonly Load[]>;
  /** Standing loads that brought readings of a station, oldest first. */
  loadsAt(station: string): Promise<readonly Load[]>;
  load(load: LoadNumber): Promise<Load | null>;
  /** Whether a file of as many bytes stands. */
  standsWith(bytes: number): Promise<boolean>;
  /** The standing load of a file with these bytes. */
  loadOf(sha256: string): Promise<Load | null>;
  /** The season document in force; null before the first. */
  season(): Promise<SeasonRow | null>;
  /** All season documents, oldest first. */
  seasons(): Promise<readonly SeasonRow[]>;
  seasonVersion(version: SeasonVersion): Promise<SeasonRow | null>;
  /** Closed seasons, oldest first. */
  closedSeasons(): Promise<readonly ClosedSeasonRow[]>;
  /** What was kept of one; null where it was not closed. */
  closedContent(season: string): Promise<string | null>;
  flags(
    station: string,
    quantity: Quantity,
    from: EpochMillis,
    to: EpochMillis,
  ): Promise<readonly FlagEntry[]>;
  /** Which years of which records were judged. */
  judged(): Promise<readonly JudgedYear[]>;
  /** What the checks found in a station's records, by time. */
  findings(station: string): Promise<readonly StoredFinding[]>;
  /** The same of every station, by its id; those without any are absent. */
  allFindings(): Promise<ReadonlyMap<string, readonly StoredFinding[]>>;
  /**
   * The kept day series of temperature, by station id: measured days and gap days from the first day to the last
   * with readings. Stations without readings are absent.
   */
  days(stations?: readonly string[]): Promise<ReadonlyMap<string, DaySeries>>;
  /** Every spell ever judged in a view (the day a group is shown as of, 0 for today). */
  spells(view: number): Promise<readonly SpellEntry[]>;
  /** Changes of spells in a view with a number above `after`, rising. */
  spellEvents(view: number, after: number): Promise<readonly SpellEventRow[]>;
  /** The last judging of a view; null before the first. */
  lastJudging(view: number): Promise<JudgingRow | null>;
  /** What spells are judged from, in a few letters: another where anything was written that bears on them. */
  judgedFrom(): Promise<string>;
}

/** What a load is recorded with, beside its readings. */
export interface LoadEntry {
  readonly load: LoadNumber;
  readonly file: string;
  readonly sha256: string;
  readonly bytes: number;
  readonly series: readonly SeriesOutcome[];
  /** JSON. */
  readonly understood: string;
}

/** A running write: it sees its own changes; nobody else does until it has committed. */
export interface Write extends Catalogue {
  readonly at: EpochMillis;
  readonly by: string;
  /** A station made by a load; it stands outside the season document until one names it. */
  makeStation(entry: StationEntry): Promise<Station>;
  /** Changes what is known of a station made in this write: its id, kind, zone and place. */
  reviseStation(station: Station): Promise<void>;
  /** The series of a station, made where there is none yet. */
  seriesOf(station: Station, quantity: Quantity, span: Span): Promise<SeriesNumber>;
  /** The next load's number, and where its readings go. */
  beginLoad(): Promise<{ readonly load: LoadNumber; readonly writer: LoadWriter }>;
  /** Writes the load into the catalogue and renews the days it touched. */
  recordLoad(entry: LoadEntry): Promise<Load>;
  /** A new version of the season document's text; what follows from it is the caller's. */
  recordSeason(text: string): Promise<SeasonRow>;
  /** Keeps a closed season; whether it was closed before is the caller's to look at. */
  keepClosed(closed: Omit<ClosedSeasonRow, 'by' | 'at'>, content: string): Promise<ClosedSeasonRow>;
  applySeason(season: SeasonEntry): Promise<SeasonApplied>;
  withdraw(load: LoadNumber): Promise<Load>;
  setFlags(flags: readonly Omit<FlagEntry, 'by' | 'at'>[]): Promise<void>;
  /** Keeps what a judging changed, its events numbered on from the last. */
  keepJudging(judging: JudgingEntry): Promise<void>;
  /** Keeps what a person said of a spell: replaces its entry. */
  keepSpell(view: number, spell: SpellEntry): Promise<void>;
  /**
   * Takes the place of what the checks said of that year before, flags and all; rulings set through `setFlags` stay.
   * The days of readings that become usable, or cease to be, are renewed.
   */
  recordJudgement(judgement: Judgement): Promise<{ readonly changed: boolean }>;
  /** Computes every kept day of a station anew. */
  renewStation(id: string): Promise<void>;
}
