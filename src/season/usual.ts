import type { Season } from './season.js';

/** Puts in what a person need not write: a box's and a visit's water is the site's, a box of one lot names that lot. */
export function withUsual(season: Season): Season {
  const stationOf = new Map(season.sites.map((site) => [site.id, site.station]));
  const boxOf = new Map(season.boxes.map((box) => [box.id, box]));
  return {
    ...season,
    boxes: season.boxes.map((box) => {
      const usual = stationOf.get(box.site) ?? null;
      return box.stations.length > 0 || usual === null ? box : { ...box, stations: [usual] };
    }),
    visits: season.visits.map((visit) => ({
      ...visit,
      station: visit.station ?? stationOf.get(visit.site) ?? null,
    })),
    observed: season.observed.map((seen) => {
      if (seen.lot !== null || seen.box === null) return seen;
      const lots = new Set(boxOf.get(seen.box)?.fills.map((fill) => fill.lot));
      const [only] = lots;
      return lots.size === 1 && only !== undefined ? { ...seen, lot: only } : seen;
    }),
  };
}
