import type { DaySeries } from '../../forecasting/day-series.js';
import type { Forecast } from '../../forecasting/forecast.js';
import { shippedTables } from '../../forecasting/index.js';
import type { DevelopmentTable } from '../../forecasting/table.js';
import type { DayNumber } from '../../forecasting/units.js';
import { type FileOutcome, loadFiles } from '../loading/index.js';
import {
  compareSeasons,
  readSeason,
  renderSeason,
  type Season,
  type SeasonChange,
  standardOffset,
} from '../season/index.js';
import { refuseUnsettled, settleStore, storeChoice } from '../settings/store-choice.js';
import type {
  BackupMade,
  ExportMade,
  Folder,
  Load,
  SeasonRow,
  StoreCopied,
  StoreKind,
  Verified,
} from '../store/index.js';
import { forecastInput, stationDays } from './forecast-input.js';
import type { Group, LoadRequest, LoadRow, RecordRequest, SeasonVersionRow, StationRow } from './group.js';
import { type StationFinding, stationFindings } from './judging/findings.js';
import { Judging } from './judging/index.js';
import { knownDays, knownOn } from './known-days.js';
import { dayLines, readingLines } from './record.js';
import { RecordBlocks } from './record-blocks.js';
import { Remembered } from './remembered.js';
import { seasonEntry } from './season-entries.js';
import type { Series, SeriesRequest } from './series.js';
import {
  broughtSeries,
  daysWithoutReadings,
  offsetOf,
  recordSeries,
  stationNamed,
  stationRows,
} from './station-records.js';
import { type Thinker, thinkHere } from './thinker.js';
import { UnknownName } from './unknown-name.js';
import { unnamedSeason, withStations } from './unnamed-season.js';

const DAY = 86_400_000;

/** Whole forecasts kept, by as-of day. */
const FORECASTS_KEPT = 6;
const DAY_SERIES_KEPT = 60;

/** A group whose data folder this process owns. */
export class LocalGroup implements Group {
  /** Counts what was written: what is remembered below holds until the next. */
  private written = 0;
  private readonly seasons = new Remembered<Season>(1);
  private readonly forecasts = new Remembered<Forecast>(FORECASTS_KEPT);
  private readonly rows = new Remembered<readonly StationRow[]>(1);
  private readonly kept = new Remembered<DaySeries | null>(DAY_SERIES_KEPT);
  private readonly blocks = new RecordBlocks();
  private readonly daySeries = new Remembered<DaySeries>(DAY_SERIES_KEPT);

  constructor(
    private readonly store: Folder,
    private readonly now: () => number,
    private readonly standingAt: DayNumber | null = null,
    private readonly thinker: Thinker = thinkHere,
  ) {
    this.judging = new Judging(
      store,
      () => this.season(),
      () => {
        this.written++;
      },
    );
  }

  private readonly judging: Judging;
  /** Writes under way: while a load takes its time, findings are told as they stand. */
  private busy = 0;

  get folder(): string {
    return this.store.dir;
  }

  get revision(): number {
    return this.written;
  }

  async today(): Promise<DayNumber> {
    return this.standingAt ?? this.dayNow(await this.season());
  }

  /** Says in the folder where this process answers; the token lets a command of the same user through. */
  announce(address: string): Promise<{ readonly token: string }> {
    this.judging.begin();
    return this.store.announce(address);
  }

  season(): Promise<Season> {
    return this.seasons.of(this.revision, '', async () => {
      const row = await this.store.catalogue.season();
      return row === null ? unnamedSeason(null) : readSeason(row.text, this.folder);
    });
  }

  async seasonText(): Promise<string> {
    return renderSeason(await this.season());
  }

  async previewSeason(text: string, file: string): Promise<readonly SeasonChange[]> {
    return compareSeasons(await this.season(), readSeason(text, file));
  }

  applySeason(text: string, file: string, who: string, expected?: number): Promise<readonly SeasonChange[]> {
    const after = readSeason(text, file);
    return this.writing(() =>
      this.store.write(who, async (write) => {
        const standing = await write.season();
        refuseMoved(standing, expected);
        const before = standing === null ? unnamedSeason(null) : readSeason(standing.text, this.folder);
        await write.applySeason(seasonEntry(after, renderSeason(after)));
        return compareSeasons(before, after);
      }),
    );
  }

  async seasonVersions(): Promise<readonly SeasonVersionRow[]> {
    const versions = await this.store.catalogue.seasons();
    return versions.map(({ version, by, at }) => ({ version, by, at })).reverse();
  }

  async seasonAt(version: number): Promise<string> {
    const row = await this.store.catalogue.seasonVersion(version);
    if (row === null) throw new UnknownName({ code: 'unknown-version', with: { version } });
    return row.text;
  }

  load(request: LoadRequest): Promise<readonly FileOutcome[]> {
    const { files, asked, createStations, dryRun, who, progress, preview } = request;
    const told = preview === undefined ? null : { preview };
    const work = async () =>
      loadFiles(
        this.store,
        files.map((file) => ({ ...file, name: file.name ?? lastPiece(file.path) })),
        {
          ...asked,
          layouts: (await this.season()).layouts,
          by: who,
          dryRun,
          createStations,
          seasonWith: (text, made) => withStations(text, made, asked.zone ?? null),
          ...(progress === null ? {} : { progress }),
          inspect: async (write, load, { path }) => {
            if (told === null) return;
            for (const series of await broughtSeries(this.store, write, load)) told.preview(path, series);
          },
        },
      );
    return dryRun ? work() : this.writing(work);
  }

  async loads(): Promise<readonly LoadRow[]> {
    return (await this.store.catalogue.loads()).map(loadRow);
  }

  async withdraw(load: string, who: string): Promise<LoadRow> {
    const number = /^\d{1,9}$/.test(load) ? Number(load) : null;
    if (number === null) throw new UnknownName({ code: 'not-a-load', with: { load } });
    return loadRow(await this.writing(() => this.store.withdraw(number, who)));
  }

  async forecast(request: {
    readonly box: string | null;
    readonly asOf: DayNumber | null;
  }): Promise<Forecast> {
    const season = await this.season();
    const boxes = season.boxes.map(({ id }) => id);
    if (request.box !== null && !boxes.includes(request.box))
      throw new UnknownName({ code: 'unknown-box', with: { box: request.box, boxes } });
    const askedFor = request.asOf ?? this.standingAt;
    const asOf = askedFor ?? this.dayNow(season);
    // A service is asked for every box before long; a command that asks for one is answered with that one.
    const only = this.thinker === thinkHere ? request.box : null;
    if (this.thinker === thinkHere && this.busy === 0) await this.judging.newest();
    const question = `${asOf} ${askedFor !== null} ${only ?? ''}`;
    const made = await this.forecasts.of(this.revision, question, async () => {
      const days = await this.knownDays(season, asOf, askedFor !== null);
      return this.thinker.forecast(forecastInput(season, days, this.tablesOf(season), asOf, only));
    });
    if (request.box === null || only !== null) return made;
    return { ...made, boxes: made.boxes.filter(({ box }) => box === request.box) };
  }

  async findings(station: string): Promise<readonly StationFinding[]> {
    const known = await this.store.catalogue.stations();
    if (!known.some(({ id }) => id === station))
      throw new UnknownName({
        code: 'unknown-station-name',
        with: { station, stations: known.map(({ id }) => id) },
      });
    if (this.busy === 0) await this.judging.station(station);
    return stationFindings(await this.store.catalogue.findings(station), station, await this.season());
  }

  async stations(): Promise<readonly StationRow[]> {
    const season = await this.season();
    return this.rows.of(this.revision, '', () => stationRows(this.store, season));
  }

  async *record(request: RecordRequest): AsyncIterable<string> {
    const station = stationNamed(await this.season(), request.station);
    if (request.daily) {
      const { days, first, last } = await this.daysAsked(request);
      yield* dayLines(days, first, last);
      return;
    }
    const midnight = (day: DayNumber) => day * DAY - station.dayOffset * 60_000;
    const from = request.from === null ? Number.NEGATIVE_INFINITY : midnight(request.from);
    const to = request.to === null ? Number.POSITIVE_INFINITY : midnight(request.to + 1);
    yield* readingLines(await this.store.record(station.id, 'temperature', from, to));
  }

  async series(request: SeriesRequest): Promise<Series> {
    const rows = await this.stations();
    const offset = offsetOf(await this.season(), rows, request.station);
    const kept = (station: string) =>
      this.kept.of(this.revision, station, async () => {
        const days = await this.store.catalogue.days([station]);
        return days.get(station) ?? null;
      });
    const { station, quantity } = request;
    const { revision } = this;
    return recordSeries(rows, kept, offset, request, (from, to, readingsADay) =>
      this.blocks.between(revision, { station, quantity, from, to, readingsADay }, (first, end) =>
        this.store.record(station, quantity, first, end),
      ),
    );
  }

  async days(request: Omit<RecordRequest, 'daily'>): Promise<DaySeries> {
    return (await this.daysAsked(request)).days;
  }

  async tables(): Promise<readonly DevelopmentTable[]> {
    return [...this.tablesOf(await this.season()).values()];
  }

  backup(file: string): Promise<BackupMade> {
    return this.store.backup(file);
  }

  verify(): Promise<Verified> {
    return this.store.verify();
  }

  exportAll(folder: string): Promise<ExportMade> {
    return this.store.exportAll(folder);
  }

  async copyStore(to: StoreKind): Promise<StoreCopied> {
    refuseUnsettled(this.folder, to);
    const { server } = storeChoice(this.folder);
    const copied = await this.writing(() => this.store.copyTo(to, server));
    settleStore(this.folder, to);
    return copied;
  }

  async close(): Promise<void> {
    await this.judging.stop();
    await this.thinker.close();
    await this.store.close();
  }

  /** Measured days, gaps filled, and the projection as far as `to` asks. */
  private async daysAsked(
    request: Omit<RecordRequest, 'daily'>,
  ): Promise<{ readonly days: DaySeries; readonly first: DayNumber; readonly last: DayNumber }> {
    const season = await this.season();
    stationNamed(season, request.station);
    const asOf = this.standingAt ?? this.dayNow(season);
    const stations = stationDays(season, await this.knownDays(season, asOf, this.standingAt !== null));
    const target = stations.find(({ station }) => station === request.station);
    const first = request.from ?? target?.days.firstDay ?? asOf;
    const last = request.to ?? (target ? target.days.firstDay + target.days.mean.length - 1 : asOf);
    if (target === undefined) return { days: daysWithoutReadings(first, first - 1), first, last };
    const question = `${request.station} ${asOf} ${first} ${last}`;
    const days = await this.daySeries.of(this.revision, question, async () => {
      const { curve, sightings, seed } = forecastInput(season, new Map(), this.tablesOf(season), asOf, null);
      const neighbours = stations.filter((station) => station !== target);
      const to = Math.max(first, last);
      const input = { asOf, from: first, to, target, neighbours, sightings, curve, seed, traces: 0 };
      return (await this.thinker.water(input)).days;
    });
    return { days, first, last };
  }

  /**
   * Runs what changes something; what was remembered before it, or while it ran, is forgotten once it is done. Until
   * then the answers of before stand, so that nobody waits for a load that takes its time.
   */
  private async writing<T>(work: () => Promise<T>): Promise<T> {
    this.busy++;
    const done = await work().finally(() => {
      this.busy--;
      this.written++;
    });
    await this.judging.afterWrite();
    return done;
  }

  /**
   * Kept days to the as-of day. Looking back (`askedFor`), a logger's days count only once it had been read; today,
   * what is in the folder is what is known.
   */
  private async knownDays(
    season: Season,
    asOf: DayNumber,
    askedFor: boolean,
  ): Promise<ReadonlyMap<string, DaySeries>> {
    const kept = await this.store.catalogue.days();
    return new Map(
      [...kept].map(([station, days]) => [
        station,
        askedFor ? knownDays(days, asOf, knownOn(season, station, asOf)) : knownDays(days, asOf),
      ]),
    );
  }

  private tablesOf(season: Season): ReadonlyMap<string, DevelopmentTable> {
    return new Map([...shippedTables, ...season.tables].map((table) => [table.id, table]));
  }

  private dayNow(season: Season): DayNumber {
    return Math.floor((this.now() + standardOffset(season.group.zone) * 60_000) / DAY);
  }
}

/** @throws UnknownName where another version stands than the person changed. */
function refuseMoved(standing: SeasonRow | null, expected: number | undefined): void {
  const version = standing?.version ?? 0;
  if (expected === undefined || expected === version) return;
  throw new UnknownName({
    code: 'season-moved',
    with: { expected, version, by: standing?.by ?? '-' },
  });
}

function lastPiece(path: string): string {
  return path.split(/[\\/]/).at(-1) ?? path;
}

function loadRow(load: Load): LoadRow {
  return {
    load: String(load.load),
    file: load.file,
    stations: [...new Set(load.series.map(({ station }) => station))],
    readings: load.series.reduce((sum, { readings }) => sum + readings, 0),
    at: load.at,
    withdrawn: load.withdrawn?.at ?? null,
  };
}
