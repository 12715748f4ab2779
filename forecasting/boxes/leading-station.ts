import type { StationDays } from '../day-series.js';
import type { BoxInput } from '../forecast.js';

/** A station with fewer measured days than this has too little to be joined to others by a regression (ours). */
const ENOUGH_DAYS = 30;

/** Air and gauges tell of the water, but are not it. */
const inWater: ReadonlySet<StationDays['kind']> = new Set(['stream', 'gravel', 'tank']);

/**
 * The station whose water stands for the box: the first of its stations, in order of trust, that has enough
 * measured days, this winter's or earlier ones'; where none has enough, the one with most; null where none is known.
 * The others fill its gaps like every neighbour does, by how well they follow it.
 */
export function leadingStation(
  box: BoxInput,
  station: (id: string) => StationDays | null,
): StationDays | null {
  const known = box.stations
    .map(station)
    .filter((one) => one !== null)
    .filter(({ kind }) => inWater.has(kind));
  const counted = known.map((one) => ({ one, days: measuredDays(one) }));
  const enough = counted.find(({ days }) => days >= ENOUGH_DAYS);
  if (enough !== undefined) return enough.one;
  return (
    counted.reduce<(typeof counted)[number] | null>(
      (best, next) => (best === null || next.days > best.days ? next : best),
      null,
    )?.one ?? null
  );
}

const counts = new WeakMap<StationDays, number>();

export function measuredDays(station: StationDays): number {
  let count = counts.get(station);
  if (count === undefined) {
    count = station.days.mean.reduce((n, celsius) => n + (Number.isFinite(celsius) ? 1 : 0), 0);
    counts.set(station, count);
  }
  return count;
}
