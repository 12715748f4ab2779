import type { DaySeries } from '../../../forecasting/day-series.js';
import { daily } from '../../../forecasting/quality/hours.js';
import type { Comparison, LoggerBattery, RecordToJudge } from '../../../forecasting/quality/index.js';
import { hourly } from '../../../forecasting/quality/index.js';
import { batteriesIn } from '../../loading/index.js';
import type { Season } from '../../season/index.js';
import type { Folder, Load, StationRecord } from '../../store/index.js';
import { accuracy, USUAL_ACCURACY } from '../forecast-input.js';
import { laidLoggers } from './laid.js';
import type { YearToJudge } from './years.js';

/** Gathers a year of a record with what it is judged by. Hours of a neighbour are read once for all who ask. */
export class YearReader {
  private readonly hours = new Map<string, Promise<Comparison>>();

  constructor(
    private readonly store: Folder,
    private readonly season: Season,
    private readonly loads: readonly Load[],
    private readonly kept: ReadonlyMap<string, DaySeries>,
  ) {}

  async read(year: YearToJudge): Promise<RecordToJudge> {
    const { station: id, quantity, from, to } = year;
    const { kind, offsetMinutes } = await this.known(id);
    const { at, value } = await this.instants(year);
    const station = this.season.stations.find((one) => one.id === id);
    const beside = (ids: readonly string[]) =>
      Promise.all(ids.map((one) => this.comparison(one, from, to, offsetMinutes)));
    return {
      kind,
      quantity,
      at,
      value,
      offsetMinutes,
      accuracy: station === undefined ? USUAL_ACCURACY : accuracy(this.season, station),
      deployments: quantity === 'temperature' ? laidLoggers(this.season, year) : [],
      batteries: this.batteries(id),
      neighbours: await beside(year.neighbours),
      air: await beside(year.air),
      history: quantity === 'temperature' ? (this.kept.get(id) ?? null) : null,
    };
  }

  private async known(id: string) {
    const station = await this.store.catalogue.station(id);
    if (station === null) throw new RangeError(`there is no station ${id}`);
    return station;
  }

  /** What the standing loads say of the battery, in the order they were accepted; moments as the clock gave them. */
  private batteries(station: string): LoggerBattery[] {
    return this.loads
      .filter(({ withdrawn, series }) => withdrawn === null && series.some((one) => one.station === station))
      .flatMap(({ understood }) => batteriesIn(understood))
      .filter((one) => one.station === station)
      .map(({ unit, highest, last, low }) => ({
        unit,
        highest: highest?.value ?? null,
        last,
        low: low?.at ?? null,
      }));
  }

  /** An agency's daily means are no readings to judge: they are left away. */
  private async instants({
    station,
    quantity,
    from,
    to,
  }: Pick<YearToJudge, 'station' | 'quantity' | 'from' | 'to'>): Promise<
    Pick<StationRecord, 'at' | 'value'>
  > {
    const given = new Set(
      this.loads
        .filter(({ series }) =>
          series.some((one) => one.station === station && one.quantity === quantity && one.span === 'day'),
        )
        .map(({ load }) => load),
    );
    const record = await this.store.record(station, quantity, from, to + 1);
    if (given.size === 0) return record;
    const kept = [...record.at.keys()].filter((i) => !given.has(record.load[i]));
    return {
      at: Float64Array.from(kept, (i) => record.at[i]),
      value: Float64Array.from(kept, (i) => record.value[i]),
    };
  }

  private comparison(station: string, from: number, to: number, offset: number): Promise<Comparison> {
    const asked = `${station} ${from}`;
    const known = this.hours.get(asked);
    if (known !== undefined) return known;
    const made = this.instants({ station, quantity: 'temperature', from, to }).then(({ at, value }) => {
      const history = this.kept.get(station) ?? { firstDay: 0, mean: new Float64Array(0) };
      if (at.length === 0) return { station, hours: null, days: history, history };
      const hours = hourly(at, value);
      return { station, hours, days: daily(hours, offset), history };
    });
    this.hours.set(asked, made);
    return made;
  }
}
