import { createHash } from 'node:crypto';
import type { DaySeries } from '../../../forecasting/day-series.js';
import type { LoadEntry, Write } from '../catalogue.js';
import type {
  ClosedSeasonRow,
  EpochMillis,
  FlagEntry,
  Judgement,
  Load,
  LoadNumber,
  Quantity,
  SeasonEntry,
  SeasonRow,
  Series,
  SeriesNumber,
  Span,
  Station,
  StationEntry,
} from '../entries.js';
import type { SeasonApplied } from '../folder.js';
import { allDays, daysOf, touchedDays } from '../kept-days.js';
import type { LoadWriter, ReadingStore } from '../reading-store.js';
import { StoreRefused } from '../refused.js';
import type { JudgingEntry, SpellEntry } from '../spell-entries.js';
import { type Reach, StationReader } from '../station-reader.js';
import { WatchedWriter } from '../watched-writer.js';
import { StoredCatalogue } from './catalogue.js';
import type { OneConnection } from './connections.js';
import { keepDays } from './day-rows.js';
import { writeJudgement } from './judgement.js';
import { applySeasonEntry } from './season-apply.js';
import { keepJudging, keepSpell } from './spell-rows.js';

/** A write in the store file: one transaction on one connection. */
export class StoredWrite extends StoredCatalogue implements Write {
  /** Stations of which `record` or the kept days say something else once this write stands; null: any of them. */
  touched: Set<string> | null = new Set();
  /** The load being taken, whose days are worked out as it comes. */
  private watched: { readonly load: LoadNumber; readonly writer: WatchedWriter } | null = null;

  constructor(
    connection: OneConnection,
    private readonly store: ReadingStore,
    readonly by: string,
    readonly at: EpochMillis,
  ) {
    super(connection);
  }

  async makeStation(entry: StationEntry, inSeason = false): Promise<Station> {
    const number = await this.next('station', 'number');
    const station = { ...entry, number, inSeason };
    await this.rows('INSERT INTO station VALUES (?, ?, ?, ?, ?, ?::DOUBLE, ?::DOUBLE, ?)', [
      number,
      entry.id,
      entry.kind,
      entry.zone,
      entry.offsetMinutes,
      entry.latitude,
      entry.longitude,
      inSeason,
    ]);
    return station;
  }

  async reviseStation(station: Station): Promise<void> {
    this.touched = null;
    await this.saveStation(station);
  }

  /** Of a station that keeps its name; where its offset is another, its days are to be renewed. */
  async saveStation(station: Station): Promise<void> {
    const { id, kind, zone, offsetMinutes, latitude, longitude, inSeason, number } = station;
    await this.rows(
      `UPDATE station SET id = ?, kind = ?, zone = ?, offset_minutes = ?, latitude = ?::DOUBLE,
        longitude = ?::DOUBLE, in_season = ? WHERE number = ?`,
      [id, kind, zone, offsetMinutes, latitude, longitude, inSeason, number],
    );
  }

  async seriesOf(station: Station, quantity: Quantity, span: Span): Promise<SeriesNumber> {
    const [found] = await this.rows(
      'SELECT number FROM series WHERE station = ? AND quantity = ? AND span = ?',
      [station.number, quantity, span],
    );
    if (found !== undefined) return found.number('number');
    const number = await this.next('series', 'number');
    await this.rows('INSERT INTO series VALUES (?, ?, ?, ?)', [number, station.number, quantity, span]);
    return number;
  }

  async beginLoad(): Promise<{ load: LoadNumber; writer: LoadWriter }> {
    const load = await this.next('load', 'number');
    const writer = new WatchedWriter(await this.store.beginLoad(this, load), (series) =>
      this.placeOf(series),
    );
    this.watched = { load, writer };
    return { load, writer };
  }

  async recordLoad(entry: LoadEntry): Promise<Load> {
    const { load, file, sha256, bytes, understood } = entry;
    await this.rows('INSERT INTO load VALUES (?, ?, ?, ?, ?, ?, NULL, NULL, ?)', [
      load,
      file,
      sha256,
      bytes,
      this.by,
      this.at,
      understood,
    ]);
    for (const series of entry.series) {
      await this.rows(
        'INSERT INTO load_series VALUES (?, ?, ?, ?, ?, ?::DOUBLE, ?::DOUBLE, ?, ?, ?::DOUBLE)',
        [
          load,
          series.series,
          series.readings,
          series.first,
          series.last,
          series.min,
          series.max,
          series.overlapping,
          series.differing,
          series.largestDifference,
        ],
      );
    }
    const recorded = await this.known(load);
    this.touch(recorded.series);
    await this.renewTouched(recorded);
    return recorded;
  }

  async recordSeason(text: string): Promise<SeasonRow> {
    const version = await this.next('season', 'version');
    await this.rows('INSERT INTO season VALUES (?, ?, ?, ?)', [version, text, this.by, this.at]);
    return { version, text, by: this.by, at: this.at };
  }

  async keepClosed(closed: Omit<ClosedSeasonRow, 'by' | 'at'>, content: string): Promise<ClosedSeasonRow> {
    const { season, version, method } = closed;
    const sha256 = createHash('sha256').update(content).digest('hex');
    await this.rows('INSERT INTO closed_season VALUES (?, ?, ?, ?, ?, ?, ?)', [
      season,
      version,
      method,
      content,
      sha256,
      this.by,
      this.at,
    ]);
    return { ...closed, by: this.by, at: this.at };
  }

  applySeason(season: SeasonEntry): Promise<SeasonApplied> {
    return applySeasonEntry(this, season);
  }

  async withdraw(load: LoadNumber): Promise<Load> {
    const standing = await this.known(load);
    if (standing.withdrawn !== null) {
      const at = new Date(standing.withdrawn.at).toISOString();
      throw new StoreRefused({ code: 'already-withdrawn', with: { load: String(load), at } }, 2);
    }
    await this.rows('UPDATE load SET withdrawn_by = ?, withdrawn_at = ? WHERE number = ?', [
      this.by,
      this.at,
      load,
    ]);
    await this.store.withdraw(this, load);
    this.touch(standing.series);
    await this.renewTouched(standing);
    return this.known(load);
  }

  async setFlags(flags: readonly Omit<FlagEntry, 'by' | 'at'>[]): Promise<void> {
    this.touch(flags);
    for (const { station, quantity, from, to, flag, set, note } of flags) {
      const { number } = await this.knownStation(station);
      await this.rows('INSERT INTO flag VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)', [
        number,
        quantity,
        from,
        to,
        flag,
        set,
        this.by,
        this.at,
        note,
      ]);
      if (quantity === 'temperature') await this.renewDays(station, { first: from, last: to });
    }
  }

  keepJudging(judging: JudgingEntry): Promise<void> {
    return keepJudging((...asked) => this.rows(...asked), judging);
  }

  keepSpell(view: number, spell: SpellEntry): Promise<void> {
    return keepSpell((...asked) => this.rows(...asked), view, spell);
  }

  async recordJudgement(judgement: Judgement): Promise<{ readonly changed: boolean }> {
    const { changed, renew } = await writeJudgement(this, judgement);
    if (changed) this.touch([judgement]);
    for (const stretch of renew) await this.renewDays(judgement.station, stretch);
    return { changed };
  }

  async renewStation(id: string): Promise<void> {
    this.touch([{ station: id }]);
    await this.renewDays(id, null);
  }

  private touch(those: readonly { readonly station: string }[]): void {
    for (const { station } of those) this.touched?.add(station);
  }

  private async renewTouched(load: Load): Promise<void> {
    const touched = new Map<string, Reach>();
    for (const { station, quantity, first, last } of load.series) {
      if (quantity !== 'temperature') continue;
      const before = touched.get(station) ?? { first, last };
      touched.set(station, { first: Math.min(before.first, first), last: Math.max(before.last, last) });
    }
    for (const [station, changed] of touched) {
      const fresh = await this.freshDays(load.load, station);
      if (fresh === null) await this.renewDays(station, changed);
      else await keepDays(this.connections, fresh.station, fresh.days);
    }
  }

  /** The days worked out while the load came: right where its readings are all that is known of the station. */
  private async freshDays(
    load: LoadNumber,
    id: string,
  ): Promise<{ station: number; days: readonly DaySeries[] } | null> {
    if (this.watched?.load !== load) return null;
    const [alone] = await this.rows(
      `SELECT s.number, s.offset_minutes, max(p.series) AS series FROM station s
        JOIN series r ON r.station = s.number AND r.quantity = 'temperature'
        JOIN load_series p ON p.series = r.number JOIN load l ON l.number = p.load AND l.withdrawn_at IS NULL
        WHERE s.id = ? AND s.number NOT IN (SELECT station FROM deployment UNION ALL SELECT station FROM flag)
        GROUP BY s.number, s.offset_minutes HAVING count(*) = 1`,
      [id],
    );
    if (alone === undefined) return null;
    const days = this.watched.writer.daysOf(alone.number('series'));
    if (days?.offsetMinutes !== alone.number('offset_minutes')) return null;
    return { station: alone.number('number'), days: days.finish() };
  }

  private async placeOf(number: SeriesNumber): Promise<{ series: Series; station: Station }> {
    const series = (await this.series()).find((one) => one.number === number);
    const station = (await this.stations()).find((one) => one.number === series?.station);
    if (series === undefined || station === undefined) throw new RangeError(`there is no series ${number}`);
    return { series, station };
  }

  /** Days that a change in `changed` (instants as the files gave them) can alter; all days where it is null. */
  private async renewDays(id: string, changed: Reach | null): Promise<void> {
    const { number, offsetMinutes } = await this.knownStation(id);
    const reader = await StationReader.of(this, this.store, id, 'temperature');
    const stretch =
      changed === null
        ? allDays(reader, offsetMinutes)
        : await touchedDays(reader, reader.shifted(changed), offsetMinutes);
    if (changed === null) await this.rows('DELETE FROM day WHERE station = ?', [number]);
    if (stretch === null) return;
    await this.rows('DELETE FROM day WHERE station = ? AND day BETWEEN ? AND ?', [
      number,
      stretch.first,
      stretch.last,
    ]);
    await keepDays(this.connections, number, daysOf(reader, stretch, offsetMinutes));
  }

  private async known(load: LoadNumber): Promise<Load> {
    const found = await this.load(load);
    if (found !== null) return found;
    throw new StoreRefused({ code: 'unknown-load', with: { load: String(load) } }, 2);
  }

  async knownStation(id: string): Promise<Station> {
    const found = await this.station(id);
    if (found !== null) return found;
    throw new StoreRefused({ code: 'folder-unknown-station', with: { station: id } }, 2);
  }

  /** Numbers are never given twice: no row of these tables is ever deleted. */
  private async next(table: string, column: string): Promise<number> {
    const [row] = await this.rows(`SELECT coalesce(max(${column}), 0) + 1 AS number FROM ${table}`);
    return row.number('number');
  }

  /** For the parts of a write that are files of their own. */
  run(sql: string, values: Parameters<StoredCatalogue['rows']>[1] = []): ReturnType<StoredCatalogue['rows']> {
    return this.rows(sql, values);
  }
}
