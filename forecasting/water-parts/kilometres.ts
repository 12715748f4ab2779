import type { StationDays } from '../day-series.js';

const EARTH_KM = 6371;
const RADIANS = Math.PI / 180;

/** Great-circle distance (haversine), km; null where a station has no coordinates. */
export function kilometresBetween(
  a: Pick<StationDays, 'latitude' | 'longitude'>,
  b: Pick<StationDays, 'latitude' | 'longitude'>,
): number | null {
  if (a.latitude === null || a.longitude === null || b.latitude === null || b.longitude === null) return null;
  const north = Math.sin(((b.latitude - a.latitude) * RADIANS) / 2);
  const east = Math.sin(((b.longitude - a.longitude) * RADIANS) / 2);
  const h = north ** 2 + Math.cos(a.latitude * RADIANS) * Math.cos(b.latitude * RADIANS) * east ** 2;
  return 2 * EARTH_KM * Math.asin(Math.sqrt(h));
}
