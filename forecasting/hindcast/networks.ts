import type { StationDays } from '../day-series.js';
import { kilometresBetween } from '../water-parts/kilometres.js';

/** Stations this close share their weather and often their river, km (the nearest neighbour is sought as far). */
const NETWORK_KM = 25;

/**
 * Which network each station belongs to: single linkage at 25 km. Stations without coordinates are one network, for
 * nothing says that they are far apart.
 */
export function networks(
  stations: readonly Pick<StationDays, 'latitude' | 'longitude'>[],
): readonly number[] {
  const of = stations.map((_, i) => i);
  const root = (i: number): number => (of[i] === i ? i : root(of[i]));
  for (let i = 0; i < stations.length; i++) {
    for (let j = 0; j < i; j++) if (near(stations[i], stations[j])) of[root(i)] = root(j);
  }
  return of.map((_, i) => root(i));
}

function near(
  a: Pick<StationDays, 'latitude' | 'longitude'>,
  b: Pick<StationDays, 'latitude' | 'longitude'>,
): boolean {
  const km = kilometresBetween(a, b);
  return km === null ? isNowhere(a) && isNowhere(b) : km <= NETWORK_KM;
}

function isNowhere({ latitude, longitude }: Pick<StationDays, 'latitude' | 'longitude'>): boolean {
  return latitude === null || longitude === null;
}
