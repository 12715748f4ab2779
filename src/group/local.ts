import type { DaySeries } from '../../forecasting/day-series.js';
import type { Forecast } from '../../forecasting/forecast.js';
import { shippedTables } from '../../forecasting/index.js';
import type { DevelopmentTable } from '../../forecasting/table.js';
import type { DayNumber } from '../../forecasting/units.js';
import { batteriesIn, type FileOutcome, gather, loadFiles, type ToGather } from '../loading/index.js';
import { frozenSeason } from '../reports/frozen.js';
import { ReportRefused, refuseClosed } from '../reports/refused.js';
import { compareSeasons, readSeason, renderSeason, type Season, type SeasonChange } from '../season/index.js';
import { refuseUnsettled, settleStore, storeChoice } from '../settings/store-choice.js';
import type { Settled, SpellEvent, SpellRow, SpellsRequest } from '../spells/contract.js';
import type {
  BackupMade,
  ClosedSeasonRow,
  ExportMade,
  Folder,
  Load,
  SeasonRow,
  StoreCopied,
  StoreKind,
  Verified,
} from '../store/index.js';
import { forecastInput } from './forecast-input.js';
import type {
  ClosedGiven,
  Group,
  LoadRequest,
  LoadRow,
  RecordRequest,
  SeasonVersionRow,
  StationRow,
} from './group.js';
import { JudgedSpells } from './judged-spells.js';
import { type StationFinding, stationFindings } from './judging/findings.js';
import { Judging } from './judging/index.js';
import { Records } from './records.js';
import { Remembered } from './remembered.js';
import { seasonEntry, stationsCalled } from './season-entries.js';
import type { Series, SeriesRequest } from './series.js';
import { broughtSeries } from './station-records.js';
import { type Thinker, thinkHere } from './thinker.js';
import { UnknownName } from './unknown-name.js';
import { unnamedSeason, withStations } from './unnamed-season.js';
import { View } from './view.js';

/** Whole forecasts kept, by as-of day. */
const FORECASTS_KEPT = 6;

/** A group whose data folder this process owns. */
export class LocalGroup implements Group {
  /** Counts what was written: what is remembered below holds until the next. */
  private written = 0;
  private readonly seasons = new Remembered<Season>(1);
  private seasonRead: { readonly text: string; readonly season: Season } | null = null;
  private readonly forecasts = new Remembered<Forecast>(FORECASTS_KEPT);
  private readonly view: View;
  private readonly records: Records;
  private readonly spellsJudged: JudgedSpells;
  private readonly judging: Judging;
  /** Writes under way: while a load takes its time, findings are told as they stand. */
  private busy = 0;

  constructor(
    private readonly store: Folder,
    now: () => number,
    standingAt: DayNumber | null = null,
    private readonly thinker: Thinker = thinkHere,
  ) {
    this.view = new View(store, now, standingAt);
    this.records = new Records(store, this.view, thinker, this);
    this.spellsJudged = new JudgedSpells(store, this.view, this);
    this.judging = new Judging(
      store,
      () => this.season(),
      thinker,
      () => {
        this.written++;
      },
    );
  }

  get folder(): string {
    return this.store.dir;
  }

  /** What is to be told to whom, and where the feeds stand: the service's own (src/messages, src/feeds). */
  get outbox(): Folder['outbox'] {
    return this.store.outbox;
  }

  get revision(): number {
    return this.written;
  }

  async today(): Promise<DayNumber> {
    return this.view.day(await this.season());
  }

  /** Says in the folder where this process answers; the token lets a command of the same user through. */
  announce(address: string): Promise<{ readonly token: string }> {
    this.judging.begin();
    return this.store.announce(address);
  }

  season(): Promise<Season> {
    return this.seasons.of(this.revision, '', async () => {
      const row = await this.store.catalogue.season();
      if (row === null) return unnamedSeason(null);
      // Most writes leave the season as it was, and reading one of hundreds of boxes takes a while.
      if (this.seasonRead?.text !== row.text)
        this.seasonRead = { text: row.text, season: readSeason(row.text, this.folder) };
      return this.seasonRead.season;
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

  closedSeasons(): Promise<readonly ClosedSeasonRow[]> {
    return this.store.catalogue.closedSeasons();
  }

  closedContent(season: string): Promise<string | null> {
    return this.store.catalogue.closedContent(season);
  }

  keepClosed({ content, ...closed }: ClosedGiven, who: string): Promise<ClosedSeasonRow> {
    return this.writing(() =>
      this.store.write(who, async (write) => {
        refuseClosed(await write.closedSeasons(), closed.season);
        if (((await write.season())?.version ?? 0) !== closed.version)
          throw new ReportRefused({ code: 'close-moved', with: {} });
        return write.keepClosed(closed, content);
      }),
    );
  }

  load(request: LoadRequest): Promise<readonly FileOutcome[]> {
    const { files, asked, createStations, dryRun, who, progress, preview } = request;
    const told = preview === undefined ? null : { preview };
    let seasonStands = true;
    const work = async () => {
      const season = await this.season();
      return loadFiles(
        this.store,
        files.map((file) => ({ ...file, name: file.name ?? lastPiece(file.path) })),
        {
          ...asked,
          layouts: season.layouts,
          called: stationsCalled(season),
          ...(season.group.zone === 'UTC' ? {} : { homeZone: season.group.zone }),
          by: who,
          dryRun,
          createStations,
          seasonWith: (text, made) => {
            seasonStands = false;
            return withStations(text, made, asked.zone ?? null);
          },
          ...(progress === null ? {} : { progress }),
          inspect: async (write, load, { path }) => {
            if (told === null) return;
            for (const series of await broughtSeries(this.store, write, load)) told.preview(path, series);
          },
        },
      );
    };
    return dryRun ? work() : this.writing(work, () => seasonStands);
  }

  async loads(): Promise<readonly LoadRow[]> {
    return (await this.store.catalogue.loads()).map(loadRow);
  }

  async withdraw(load: string, who: string): Promise<LoadRow> {
    const number = /^\d{1,9}$/.test(load) ? Number(load) : null;
    if (number === null) throw new UnknownName({ code: 'not-a-load', with: { load } });
    return loadRow(
      await this.writing(
        () => this.store.withdraw(number, who),
        () => true,
      ),
    );
  }

  /** Puts what an older load of a feed still shows into the feed's load of that month: see src/loading/gather.ts. */
  gather(loads: ToGather, who: string): Promise<ToGather['months']> {
    return this.writing(
      () => gather(this.store, loads, who),
      () => true,
    );
  }

  async forecast(request: Parameters<Group['forecast']>[0]): Promise<Forecast> {
    const frozen = await this.frozen(request.closed);
    const season = frozen?.season ?? (await this.season());
    if (request.box !== null) refuseUnknownBox(request.box, season.boxes);
    const looksBack = request.asOf !== null || this.view.looksBack;
    const asOf = request.asOf ?? this.view.day(season);
    // A service is asked for every box before long; a command that asks for one is answered with that one.
    const only = this.thinker === thinkHere ? request.box : null;
    if (this.thinker === thinkHere && this.busy === 0) await this.judging.newest();
    const today = question(asOf, looksBack, only);
    const made = await this.forecasts.of(
      this.revision,
      frozen === null ? today : `${today} ${request.closed}`,
      () => this.workOut(season, asOf, looksBack, only, frozen?.tables),
    );
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
    await this.lookedAt([station]);
    return stationFindings(await this.store.catalogue.findings(station), station, await this.season());
  }

  /** Judges the readings of stations; while a load takes its time, findings are told as they stand. */
  private async lookedAt(stations: readonly string[]): Promise<void> {
    if (this.busy === 0) await this.judging.stations(stations);
  }

  /**
   * Judges the readings of stations since a moment; what came before it is judged behind the answer where that is much.
   * Whether all is judged: a command, which ends with its answer, waits for it.
   */
  async checked(stations: readonly string[], since: number): Promise<boolean> {
    if (this.busy > 0) return this.judging.settled;
    if (this.thinker !== thinkHere) return this.judging.since(stations, since);
    await this.judging.stations(stations);
    return true;
  }

  /** Once the checks have looked at all that came. */
  async allChecked(): Promise<void> {
    if (this.busy === 0 && this.thinker !== thinkHere) await this.judging.whole();
  }

  /** Whether the checks are still looking at what came: earlier years, after the season's own. */
  get stillChecking(): boolean {
    return this.judging.behind;
  }

  /** Ends after the year at hand; what is left is found by the next process. */
  stopChecking(): Promise<void> {
    return this.judging.stop();
  }

  stations(): Promise<readonly StationRow[]> {
    return this.records.stations();
  }

  record(request: RecordRequest): AsyncIterable<string> {
    return this.records.lines(request);
  }

  series(request: SeriesRequest): Promise<Series> {
    return this.records.series(request);
  }

  days(request: Omit<RecordRequest, 'daily'>): Promise<DaySeries> {
    return this.records.days(request);
  }

  async tables(): Promise<readonly DevelopmentTable[]> {
    return [...this.tablesOf(await this.season()).values()];
  }

  async spells(request: SpellsRequest): Promise<readonly SpellRow[]> {
    const { boxes } = await this.season();
    if (request.box !== null) refuseUnknownBox(request.box, boxes);
    return this.spellsJudged.asked(request);
  }

  spellEvents(after: number): Promise<readonly SpellEvent[]> {
    return this.spellsJudged.events(after);
  }

  async acknowledgeSpell(id: string, note: string, who: string): Promise<SpellRow> {
    await this.spellsJudged.known(id);
    return this.writing(() => this.spellsJudged.acknowledge(id, note, who));
  }

  async settleExposure(id: string, how: Settled['how'], note: string, who: string): Promise<SpellRow> {
    await this.spellsJudged.known(id);
    return this.writing(() => this.spellsJudged.settle(id, how, note, who));
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

  /**
   * Runs what changes something; what was remembered before it, or while it ran, is forgotten once it is done. Until
   * then the answers of before stand, so that nobody waits for a load that takes its time: with `ahead` (it left the
   * season as it was), not even for the forecast after it.
   */
  private async writing<T>(work: () => Promise<T>, ahead = () => false): Promise<T> {
    let ready: Ready | null = null;
    let done: T;
    this.busy++;
    try {
      done = await work();
      if (ahead()) ready = await this.forecastAhead().catch(() => null);
    } finally {
      this.busy--;
      this.written++;
      this.judging.forget();
      if (ready?.before === this.written - 1) {
        this.seasons.begin(this.written, '', Promise.resolve(ready.season));
        this.forecasts.begin(this.written, ready.question, Promise.resolve(ready.forecast));
      }
    }
    await this.judging.afterWrite();
    return done;
  }

  /** Today's forecast as it will be once the write that was just done shows, where readers asked for it before. */
  private async forecastAhead(): Promise<Ready | null> {
    const before = this.written;
    const { looksBack } = this.view;
    const asOf = await this.today();
    const asked = question(asOf, looksBack, null);
    if (this.thinker === thinkHere || !this.forecasts.has(before, asked)) return null;
    const season = await this.season();
    const forecast = await this.workOut(season, asOf, looksBack, null);
    return { before, season, question: asked, forecast };
  }

  private async workOut(
    season: Season,
    asOf: DayNumber,
    looksBack: boolean,
    only: string | null,
    tables = this.tablesOf(season),
  ): Promise<Forecast> {
    const days = await this.view.days(season, asOf, looksBack);
    return this.thinker.forecast(forecastInput(season, days, tables, asOf, only));
  }

  /** The document and tables of a closed season. @throws ReportRefused 'close-unknown' */
  private async frozen(closed: string | undefined) {
    if (closed === undefined) return null;
    const content = await this.closedContent(closed);
    if (content === null) {
      const seasons = (await this.closedSeasons()).map(({ season }) => season);
      throw new ReportRefused({ code: 'close-unknown', with: { season: closed, seasons } });
    }
    const { text, figures } = frozenSeason(content);
    return {
      season: readSeason(text, closed),
      tables: new Map(figures.tables.map((table) => [table.id, table])),
    };
  }

  /** Tables by id: those that ship, and the season's own in their place where they share one. */
  tablesOf(season: Season): ReadonlyMap<string, DevelopmentTable> {
    return new Map([...shippedTables, ...season.tables].map((table) => [table.id, table]));
  }
}

/** What stands once a write shows, worked out on top of revision `before`. */
interface Ready {
  readonly before: number;
  readonly season: Season;
  readonly question: string;
  readonly forecast: Forecast;
}

function question(asOf: DayNumber, looksBack: boolean, only: string | null): string {
  return `${asOf} ${looksBack} ${only ?? ''}`;
}

/** @throws UnknownName where the season has no such box. */
function refuseUnknownBox(box: string, boxes: Season['boxes']): void {
  const known = boxes.map(({ id }) => id);
  if (!known.includes(box)) throw new UnknownName({ code: 'unknown-box', with: { box, boxes: known } });
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
    battery: batteriesIn(load.understood),
  };
}
