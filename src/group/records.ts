import type { DaySeries } from '../../forecasting/day-series.js';
import type { DevelopmentTable } from '../../forecasting/table.js';
import type { DayNumber } from '../../forecasting/units.js';
import type { Season } from '../season/index.js';
import type { Folder } from '../store/index.js';
import { forecastInput, stationDays } from './forecast-input.js';
import type { RecordRequest, StationRow } from './group.js';
import { dayLines, readingLines } from './record.js';
import { RecordBlocks } from './record-blocks.js';
import { Remembered } from './remembered.js';
import type { Series, SeriesRequest } from './series.js';
import { daysWithoutReadings, offsetOf, recordSeries, stationNamed, stationRows } from './station-records.js';
import type { Thinker } from './thinker.js';
import type { View } from './view.js';

const DAY = 86_400_000;

const DAY_SERIES_KEPT = 60;

/** Where records lie in the rest of the group. */
export interface RecordGround {
  readonly revision: number;
  season(): Promise<Season>;
  tablesOf(season: Season): ReadonlyMap<string, DevelopmentTable>;
}

interface Asked {
  readonly days: DaySeries;
  readonly first: DayNumber;
  readonly last: DayNumber;
}

/** What a group's stations recorded: rows of stations, readings, days measured, filled and projected. */
export class Records {
  private readonly rows = new Remembered<readonly StationRow[]>(1);
  private readonly daySeries = new Remembered<DaySeries>(DAY_SERIES_KEPT);
  private readonly blocks = new RecordBlocks();

  constructor(
    private readonly store: Folder,
    private readonly view: View,
    private readonly thinker: Pick<Thinker, 'water'>,
    private readonly group: RecordGround,
  ) {}

  async stations(): Promise<readonly StationRow[]> {
    const season = await this.group.season();
    return this.rows.of(this.group.revision, '', () => stationRows(this.store, season));
  }

  async *lines(request: RecordRequest): AsyncIterable<string> {
    const station = stationNamed(await this.group.season(), request.station);
    if (request.daily) {
      const { days, first, last } = await this.asked(request);
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
    const offset = offsetOf(await this.group.season(), rows, request.station);
    const { revision } = this.group;
    const kept = async (station: string) => (await this.store.days()).get(station) ?? null;
    const { station, quantity } = request;
    return recordSeries(rows, kept, offset, request, (from, to, readingsADay) =>
      this.blocks.between(revision, { station, quantity, from, to, readingsADay }, (first, end) =>
        this.store.record(station, quantity, first, end),
      ),
    );
  }

  async days(request: Omit<RecordRequest, 'daily'>): Promise<DaySeries> {
    return (await this.asked(request)).days;
  }

  /** Measured days, gaps filled, and the projection as far as `to` asks. */
  private async asked(request: Omit<RecordRequest, 'daily'>): Promise<Asked> {
    const season = await this.group.season();
    stationNamed(season, request.station);
    const asOf = this.view.day(season);
    const stations = stationDays(season, await this.view.days(season, asOf));
    const target = stations.find(({ station }) => station === request.station);
    const first = request.from ?? target?.days.firstDay ?? asOf;
    const last = request.to ?? (target ? target.days.firstDay + target.days.mean.length - 1 : asOf);
    if (target === undefined) return { days: daysWithoutReadings(first, first - 1), first, last };
    const question = `${request.station} ${asOf} ${first} ${last}`;
    const days = await this.daySeries.of(this.group.revision, question, async () => {
      const tables = this.group.tablesOf(season);
      const { curve, sightings, seed } = forecastInput(season, new Map(), tables, asOf, null);
      const neighbours = stations.filter((station) => station !== target);
      const to = Math.max(first, last);
      const input = { asOf, from: first, to, target, neighbours, sightings, curve, seed, traces: 0 };
      return (await this.thinker.water(input)).days;
    });
    return { days, first, last };
  }
}
