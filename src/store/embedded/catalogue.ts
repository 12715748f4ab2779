import { type DaySeries, emptyDays, Origin } from '../../../forecasting/day-series.js';
import type { Catalogue, StoredFinding } from '../catalogue.js';
import type {
  ClosedSeasonRow,
  DeploymentEntry,
  EpochMillis,
  FlagEntry,
  JudgedYear,
  Load,
  LoadedSeries,
  LoadNumber,
  Quantity,
  SeasonRow,
  SeasonVersion,
  Series,
  Station,
} from '../entries.js';
import type { JudgingRow, SpellEntry, SpellEventRow } from '../spell-entries.js';
import {
  closedOf,
  deploymentOf,
  findingOf,
  flagOf,
  judgedOf,
  loadedSeriesOf,
  loadOf,
  seasonOf,
  seriesOf,
  stationOf,
} from './catalogue-rows.js';
import type { Connections } from './connections.js';
import { readDayColumns } from './read-columns.js';
import { eventsIn, judgedFrom, lastJudgingIn, spellsIn } from './spell-rows.js';
import { type Row, rows } from './sql.js';

type Value = number | string | boolean | null;

/** The catalogue in the store file, seen through `connections`. */
export class StoredCatalogue implements Catalogue {
  constructor(readonly connections: Connections) {}

  protected rows(sql: string, values: readonly Value[] = []): Promise<Row[]> {
    return this.connections.use((connection) => rows(connection, sql, values));
  }

  async stations(): Promise<readonly Station[]> {
    return (await this.rows('SELECT * FROM station ORDER BY number')).map(stationOf);
  }

  async station(id: string): Promise<Station | null> {
    const [found] = await this.rows('SELECT * FROM station WHERE id = ?', [id]);
    return found === undefined ? null : stationOf(found);
  }

  async series(): Promise<readonly Series[]> {
    return (await this.rows('SELECT * FROM series ORDER BY number')).map(seriesOf);
  }

  async deployments(station?: string): Promise<readonly DeploymentEntry[]> {
    const found = await this.rows(
      `SELECT d.*, s.id FROM deployment d JOIN station s ON s.number = d.station
        ${station === undefined ? '' : 'WHERE s.id = ?'} ORDER BY d.position`,
      station === undefined ? [] : [station],
    );
    return found.map(deploymentOf);
  }

  loads(): Promise<readonly Load[]> {
    return this.loadsWhere('true');
  }

  loadsAt(station: string): Promise<readonly Load[]> {
    return this.loadsWhere(
      `l.withdrawn_at IS NULL AND l.number IN (SELECT here.load FROM load_series here
        JOIN series ON series.number = here.series JOIN station ON station.number = series.station WHERE station.id = ?)`,
      [station],
    );
  }

  async standsWith(bytes: number): Promise<boolean> {
    const found = await this.rows(
      'SELECT number FROM load WHERE bytes = ?::DOUBLE AND withdrawn_at IS NULL LIMIT 1',
      [bytes],
    );
    return found.length > 0;
  }

  async load(load: LoadNumber): Promise<Load | null> {
    return (await this.loadsWhere('l.number = ?', [load]))[0] ?? null;
  }

  async loadOf(sha256: string): Promise<Load | null> {
    return (await this.loadsWhere('l.sha256 = ? AND l.withdrawn_at IS NULL', [sha256]))[0] ?? null;
  }

  async season(): Promise<SeasonRow | null> {
    const [found] = await this.rows('SELECT * FROM season ORDER BY version DESC LIMIT 1');
    return found === undefined ? null : seasonOf(found);
  }

  async seasons(): Promise<readonly SeasonRow[]> {
    return (await this.rows('SELECT * FROM season ORDER BY version')).map(seasonOf);
  }

  async seasonVersion(version: SeasonVersion): Promise<SeasonRow | null> {
    const [found] = await this.rows('SELECT * FROM season WHERE version = ?', [version]);
    return found === undefined ? null : seasonOf(found);
  }

  async closedSeasons(): Promise<readonly ClosedSeasonRow[]> {
    const found = await this.rows(
      'SELECT season, season_version, method, made_by, made_at FROM closed_season ORDER BY season, made_at',
    );
    return found.map(closedOf);
  }

  async closedContent(season: string): Promise<string | null> {
    const [found] = await this.rows('SELECT content FROM closed_season WHERE season = ?', [season]);
    return found === undefined ? null : found.text('content');
  }

  async flags(
    station: string,
    quantity: Quantity,
    from: EpochMillis,
    to: EpochMillis,
  ): Promise<readonly FlagEntry[]> {
    const found = await this.rows(
      `SELECT f.*, s.id FROM flag f JOIN station s ON s.number = f.station
        WHERE s.id = ? AND f.quantity = ? AND f.to_ms >= ?::DOUBLE AND f.from_ms < ?::DOUBLE
        ORDER BY f.made_at, f.from_ms`,
      [station, quantity, from, to],
    );
    return found.map(flagOf);
  }

  async judged(): Promise<readonly JudgedYear[]> {
    const found = await this.rows(
      'SELECT j.*, s.id FROM judged j JOIN station s ON s.number = j.station ORDER BY j.station, j.year',
    );
    return found.map(judgedOf);
  }

  async findings(station: string): Promise<readonly StoredFinding[]> {
    const found = await this.rows(
      `SELECT f.* FROM finding f JOIN station s ON s.number = f.station WHERE s.id = ?
        ORDER BY f.from_ms, f.to_ms, f.kind`,
      [station],
    );
    return found.map(findingOf);
  }

  async allFindings(): Promise<ReadonlyMap<string, readonly StoredFinding[]>> {
    const found = await this.rows(
      `SELECT f.*, s.id FROM finding f JOIN station s ON s.number = f.station
        ORDER BY f.from_ms, f.to_ms, f.kind`,
    );
    const byStation = new Map<string, StoredFinding[]>();
    for (const row of found) {
      const id = row.text('id');
      const known = byStation.get(id);
      if (known === undefined) byStation.set(id, [findingOf(row)]);
      else known.push(findingOf(row));
    }
    return byStation;
  }

  async days(stations?: readonly string[]): Promise<ReadonlyMap<string, DaySeries>> {
    const wanted = (await this.stations()).filter(
      ({ id }) => stations === undefined || stations.includes(id),
    );
    if (wanted.length === 0) return new Map();
    const ids = new Map(wanted.map(({ number, id }) => [number, id]));
    const rest = stations === undefined ? '' : `WHERE station IN (${[...ids.keys()].join(', ')})`;
    const kept = await this.connections.use((connection) => readDayColumns(connection, rest));
    return daySeries(kept, ids);
  }

  spells(view: number): Promise<readonly SpellEntry[]> {
    return spellsIn((...asked) => this.rows(...asked), view);
  }

  spellEvents(view: number, after: number): Promise<readonly SpellEventRow[]> {
    return eventsIn((...asked) => this.rows(...asked), view, after);
  }

  lastJudging(view: number): Promise<JudgingRow | null> {
    return lastJudgingIn((...asked) => this.rows(...asked), view);
  }

  judgedFrom(): Promise<string> {
    return judgedFrom((...asked) => this.rows(...asked));
  }

  private async loadsWhere(condition: string, values: readonly Value[] = []): Promise<Load[]> {
    const loads = await this.rows(`SELECT * FROM load l WHERE ${condition} ORDER BY number`, values);
    if (loads.length === 0) return [];
    const series = await this.rows(
      `SELECT p.*, s.id, r.quantity, r.span FROM load_series p JOIN load l ON l.number = p.load
        JOIN series r ON r.number = p.series JOIN station s ON s.number = r.station
        WHERE ${condition} ORDER BY p.load, p.series`,
      values,
    );
    const byLoad = new Map<number, LoadedSeries[]>();
    for (const row of series) {
      const load = row.number('load');
      byLoad.set(load, [...(byLoad.get(load) ?? []), loadedSeriesOf(row)]);
    }
    return loads.map((row) => loadOf(row, byLoad.get(row.number('number')) ?? []));
  }
}

/** The connections behind a catalogue of this store. */
export function connectionsOf(catalogue: Catalogue): Connections {
  if (catalogue instanceof StoredCatalogue) return catalogue.connections;
  throw new TypeError('this catalogue belongs to another store');
}

/** Kept rows, sorted by station and day, as one day series for each station. */
function daySeries(
  kept: Awaited<ReturnType<typeof readDayColumns>>,
  ids: ReadonlyMap<number, string>,
): Map<string, DaySeries> {
  const series = new Map<string, DaySeries>();
  const { station, day, mean, min, max, coverage } = kept;
  for (let from = 0; from < station.length; ) {
    let to = from + 1;
    while (to < station.length && station[to] === station[from]) to++;
    const days = emptyDays(day[from], day[to - 1] - day[from] + 1);
    for (let i = from; i < to; i++) {
      const d = day[i] - day[from];
      days.mean[d] = mean[i];
      days.min[d] = min[i];
      days.max[d] = max[i];
      days.coverage[d] = coverage[i];
      if (Number.isNaN(mean[i])) continue;
      days.spread[d] = 0;
      days.origin[d] = Origin.measured;
    }
    const id = ids.get(station[from]);
    if (id !== undefined) series.set(id, days);
    from = to;
  }
  return series;
}
