import { addStations, emptySeason, readSeason, renderSeason, type Season } from '../season/index.js';
import type { StationEntry } from '../store/index.js';

/** What stands before a season file is taken over: only a zone, the one asked for, else this computer's. */
export function unnamedSeason(zone: string | null): Season {
  return emptySeason({ name: '-', zone: zone ?? Intl.DateTimeFormat().resolvedOptions().timeZone });
}

/** The season document with the stations a load makes. */
export function withStations(
  text: string | null,
  made: readonly StationEntry[],
  zone: string | null,
): string {
  const season = text === null ? unnamedSeason(zone) : readSeason(text, '-');
  return renderSeason(
    addStations(
      season,
      made.map(({ id, kind, zone, latitude, longitude }) => ({
        id,
        kind,
        zone,
        reports: true,
        ...(latitude === null ? {} : { latitude }),
        ...(longitude === null ? {} : { longitude }),
      })),
    ),
  );
}
