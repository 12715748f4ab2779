import type { DayNumber } from '../units.js';
import { daily, dayAt, hourAt, median, swingAt } from './hours.js';
import type { Comparison, Judged } from './record.js';

/** What the places nearby say of a day: NaN where none says anything. */
export interface DayNearby {
  /** Middle of the neighbours' daily means, and of their swings, °C. */
  readonly water: number;
  readonly waterSwing: number;
  readonly air: number;
  readonly airSwing: number;
}

/** Looks up what neighbours and air say, day by day. */
export function nearby(record: Judged): (day: DayNumber) => DayNearby {
  const swings = (places: readonly Comparison[]) =>
    places.flatMap(({ hours }) => (hours === null ? [] : [daily(hours, record.offsetMinutes)]));
  const waterSwings = swings(record.neighbours);
  const airSwings = swings(record.air);
  return (day) => ({
    water: median(record.neighbours.map(({ days }) => dayAt(days, day))),
    waterSwing: median(waterSwings.map((days) => swingAt(days, day))),
    air: median(record.air.map(({ days }) => dayAt(days, day))),
    airSwing: median(airSwings.map((days) => swingAt(days, day))),
  });
}

/** Middle of what neighbours read in an hour. */
export function waterAtHour(record: Judged): (hour: number) => number {
  const places = record.neighbours.flatMap(({ hours }) => (hours === null ? [] : [hours]));
  return (hour) => median(places.map((hours) => hourAt(hours, hour)));
}
