import type { SeriesKey } from '../batch.js';
import type { LineRemark } from '../words.js';
import { BatchColumns } from './batch-columns.js';
import type { Plan } from './plan.js';
import { airRange, anything, type Range, SeriesBook, waterRange } from './series-book.js';
import type { Station, Stations } from './stations.js';

/** The readings of a file as they are taken: columns to hand on, and the figures of each series. */
export class Readings {
  readonly columns = new BatchColumns();
  readonly book = new SeriesBook();

  constructor(
    private readonly plan: Plan,
    private readonly stations: Stations,
  ) {}

  /** Keeps a value of the plan's value column k; a remark where its series has another value at the same instant. */
  keep(station: Station, k: number, at: number, value: number, line: number): LineRemark | null {
    let series = station.series[k];
    if (series < 0) series = this.open(station, k);
    const place = this.book.note(series, at, value, line);
    if (place === 'new') {
      this.columns.add(series, at, value, line);
      return null;
    }
    if (place === 'same') return null;
    const kept = this.book.newest(series);
    return { code: 'line-same-instant', with: { firstLine: kept.line, kept: kept.value, dropped: value } };
  }

  private open(station: Station, k: number): number {
    const { quantity, medium } = this.plan.values[k];
    const span = this.plan.daily ? 'day' : 'instant';
    const key: SeriesKey = { station: station.name, quantity, span, medium, place: station.place };
    station.series[k] = this.book.open(key, station.clock, this.rangeOf(station, k));
    return station.series[k];
  }

  private rangeOf(station: Station, k: number): Range {
    const { quantity, medium } = this.plan.values[k];
    if (quantity !== 'temperature') return anything;
    const isAir = this.stations.isAir(station);
    return medium === 'water' || (medium === null && isAir === false) ? waterRange : airRange;
  }
}
