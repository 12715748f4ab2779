import type { DaySeries, StationDays } from '../../forecasting/day-series.js';
import type { BoxForecast, Forecast, ForecastInput } from '../../forecasting/forecast.js';

/*
 * What crosses between the service's thread and the one that forecasts, which would be copied each time: 15 MB of days
 * one way and 30 MB of possible winters the other for fifty stations and two hundred boxes. What the other side holds
 * already, as the same object, is named only. Both ends see every question and every answer, in the same order.
 */

/** `days` null: those given for this station the last time. */
export interface PackedInput extends Omit<ForecastInput, 'stations'> {
  readonly stations: readonly (Omit<StationDays, 'days'> & { readonly days: DaySeries | null })[];
}

/** A box by its name alone stands as it was in the last answer. */
export interface PackedForecast extends Omit<Forecast, 'boxes'> {
  readonly boxes: readonly (BoxForecast | string)[];
}

/** The end that gives days and receives forecasts, or the other way round: one at each end of the line. */
export class LineEnd {
  private days = new Map<string, DaySeries>();
  private boxes = new Map<string, BoxForecast>();

  packInput({ stations, ...input }: ForecastInput): PackedInput {
    const before = this.days;
    this.days = new Map(stations.map(({ station, days }) => [station, days]));
    return {
      ...input,
      stations: stations.map((one) => (before.get(one.station) === one.days ? { ...one, days: null } : one)),
    };
  }

  unpackInput({ stations, ...input }: PackedInput): ForecastInput {
    const whole = stations.map((one) => ({ ...one, days: one.days ?? held(this.days, one.station) }));
    this.days = new Map(whole.map(({ station, days }) => [station, days]));
    return { ...input, stations: whole };
  }

  packForecast({ boxes, ...forecast }: Forecast): PackedForecast {
    const before = this.boxes;
    this.boxes = new Map(boxes.map((one) => [one.box, one]));
    return { ...forecast, boxes: boxes.map((one) => (before.get(one.box) === one ? one.box : one)) };
  }

  unpackForecast({ boxes, ...forecast }: PackedForecast): Forecast {
    const whole = boxes.map((one) => (typeof one === 'string' ? held(this.boxes, one) : one));
    this.boxes = new Map(whole.map((one) => [one.box, one]));
    return { ...forecast, boxes: whole };
  }
}

function held<T>(known: ReadonlyMap<string, T>, name: string): T {
  const found = known.get(name);
  if (found === undefined) throw new RangeError(`nothing is held of ${name}`);
  return found;
}
