import type { DaySeries } from '../../forecasting/day-series.js';
import type { Forecast } from '../../forecasting/forecast.js';
import { forecast, shippedTables, waterAt } from '../../forecasting/index.js';
import type { DevelopmentTable } from '../../forecasting/table.js';
import type { DayNumber } from '../../forecasting/units.js';
import { type FileOutcome, loadFiles } from '../loading/index.js';
import {
  addStations,
  compareSeasons,
  emptySeason,
  readSeason,
  renderSeason,
  type Season,
  type SeasonChange,
  standardOffset,
} from '../season/index.js';
import type { Folder, Load, StationEntry } from '../store/index.js';
import { forecastInput, stationDays } from './forecast-input.js';
import type { Group, LoadRequest, LoadRow, RecordRequest } from './group.js';
import { knownDays, knownOn } from './known-days.js';
import { dayLines, readingLines } from './record.js';
import { seasonEntry } from './season-entries.js';
import { UnknownName } from './unknown-name.js';

const DAY = 86_400_000;

/** A group whose data folder this process owns. */
export class LocalGroup implements Group {
  private standing: { readonly text: string; readonly season: Season } | null = null;

  constructor(
    private readonly store: Folder,
    private readonly now: () => number,
    private readonly standingAt: DayNumber | null = null,
  ) {}

  get folder(): string {
    return this.store.dir;
  }

  async today(): Promise<DayNumber> {
    return this.standingAt ?? this.dayNow(await this.season());
  }

  /** Says in the folder where this process answers; the token lets a command of the same user through. */
  announce(address: string): Promise<{ readonly token: string }> {
    return this.store.announce(address);
  }

  async season(): Promise<Season> {
    const row = await this.store.catalogue.season();
    if (row === null) return unnamedSeason(null);
    if (this.standing?.text !== row.text)
      this.standing = { text: row.text, season: readSeason(row.text, this.folder) };
    return this.standing.season;
  }

  async seasonText(): Promise<string> {
    return renderSeason(await this.season());
  }

  async previewSeason(text: string, file: string): Promise<readonly SeasonChange[]> {
    return compareSeasons(await this.season(), readSeason(text, file));
  }

  async applySeason(text: string, file: string, who: string): Promise<readonly SeasonChange[]> {
    const after = readSeason(text, file);
    const changes = compareSeasons(await this.season(), after);
    await this.store.applySeason(seasonEntry(after, renderSeason(after)), who);
    return changes;
  }

  async load(request: LoadRequest): Promise<readonly FileOutcome[]> {
    const { files, asked, createStations, dryRun, who, progress } = request;
    return loadFiles(
      this.store,
      files.map((file) => ({ ...file, name: file.path.split(/[\\/]/).at(-1) ?? file.path })),
      {
        ...asked,
        by: who,
        dryRun,
        createStations,
        seasonWith: (text, made) => withStations(text, made, asked.zone ?? null),
        ...(progress === null ? {} : { progress }),
      },
    );
  }

  async loads(): Promise<readonly LoadRow[]> {
    return (await this.store.catalogue.loads()).map(loadRow);
  }

  async withdraw(load: string, who: string): Promise<LoadRow> {
    const number = /^\d{1,9}$/.test(load) ? Number(load) : null;
    if (number === null) throw new UnknownName({ code: 'not-a-load', with: { load } });
    return loadRow(await this.store.withdraw(number, who));
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
    const days = await this.knownDays(season, asOf, askedFor !== null);
    return forecast(forecastInput(season, days, this.tablesOf(season), asOf, request.box));
  }

  async *record(request: RecordRequest): AsyncIterable<string> {
    const season = await this.season();
    const station = season.stations.find(({ id }) => id === request.station);
    if (station === undefined)
      throw new UnknownName({
        code: 'unknown-station-name',
        with: { station: request.station, stations: season.stations.map(({ id }) => id) },
      });
    if (request.daily) yield* this.dailyRecord(season, request);
    else {
      const midnight = (day: DayNumber) => day * DAY - station.dayOffset * 60_000;
      const from = request.from === null ? Number.NEGATIVE_INFINITY : midnight(request.from);
      const to = request.to === null ? Number.POSITIVE_INFINITY : midnight(request.to + 1);
      yield* readingLines(await this.store.record(station.id, 'temperature', from, to));
    }
  }

  async tables(): Promise<readonly DevelopmentTable[]> {
    return [...this.tablesOf(await this.season()).values()];
  }

  close(): Promise<void> {
    return this.store.close();
  }

  /** Measured days, gaps filled, and the projection as far as `to` asks. */
  private async *dailyRecord(season: Season, request: RecordRequest): AsyncIterable<string> {
    const asOf = this.standingAt ?? this.dayNow(season);
    const stations = stationDays(season, await this.knownDays(season, asOf, this.standingAt !== null));
    const target = stations.find(({ station }) => station === request.station);
    const first = request.from ?? target?.days.firstDay ?? asOf;
    const last = request.to ?? (target ? target.days.firstDay + target.days.mean.length - 1 : asOf);
    if (target === undefined) return void (yield* dayLines(noDays(first), first, last));
    const { curve, sightings, seed } = forecastInput(season, new Map(), this.tablesOf(season), asOf, null);
    const water = waterAt({
      asOf,
      from: first,
      to: Math.max(first, last),
      target,
      neighbours: stations.filter((station) => station !== target),
      sightings,
      curve,
      seed,
      traces: 0,
    });
    yield* dayLines(water.days, first, last);
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

/** What stands before a season file is taken over: only a zone, the one asked for, else this computer's. */
function unnamedSeason(zone: string | null): Season {
  return emptySeason({ name: '-', zone: zone ?? Intl.DateTimeFormat().resolvedOptions().timeZone });
}

/** The season document with the stations a load makes. */
function withStations(text: string | null, made: readonly StationEntry[], zone: string | null): string {
  const season = text === null ? unnamedSeason(zone) : readSeason(text, '-');
  return renderSeason(
    addStations(
      season,
      made.map(({ id, kind, zone, latitude, longitude }) => ({
        id,
        kind,
        zone,
        reports: true,
        ...(latitude === null ? {} : { latitude }),
        ...(longitude === null ? {} : { longitude }),
      })),
    ),
  );
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

function noDays(firstDay: DayNumber): DaySeries {
  const none = new Float64Array(0);
  return {
    firstDay,
    mean: none,
    min: none,
    max: none,
    coverage: none,
    spread: none,
    origin: new Uint8Array(0),
  };
}
