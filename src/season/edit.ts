import { seasonFrom } from './read.js';
import type { Season } from './season.js';
import { seasonDocument } from './written.js';

/** A group that has stated nothing yet. */
export function emptySeason(group: { name: string; zone: string; language?: 'en' | 'fr' }): Season {
  return seasonFrom({ group }, group.name);
}

/** A station as the season file would state it; all but the id may be left out. */
export interface NewStation {
  readonly id: string;
  readonly name?: string;
  readonly kind?: Season['stations'][number]['kind'];
  readonly quantities?: readonly Season['stations'][number]['quantities'][number][];
  readonly place?: string;
  readonly zone?: string;
  readonly latitude?: number;
  readonly longitude?: number;
  readonly reports?: boolean;
  readonly accuracy?: number;
}

/** The season with these stations added; those it has already stay as they are. Throws SeasonRefused. */
export function addStations(season: Season, stations: readonly NewStation[]): Season {
  const known = new Set(season.stations.map(({ id }) => id));
  const added = stations.filter(({ id }) => !known.has(id));
  if (added.length === 0) return season;
  const document = seasonDocument(season);
  const before = Array.isArray(document.stations) ? document.stations : [];
  return seasonFrom({ ...document, stations: [...before, ...added] }, season.group.name);
}
