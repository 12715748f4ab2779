import type { SavedLayout } from '../../adapters/layouts-saved.js';
import { writtenLayout } from './layouts.js';
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

/** The season with a layout of downloads kept, in place of one of the same name. Throws SeasonRefused. */
export function keepLayout(season: Season, layout: SavedLayout): Season {
  const others = season.layouts.filter(({ name }) => !sameName(name, layout.name));
  return withLayouts(season, [...others, layout]);
}

/** The season without the layout of that name; null where there is none. */
export function removeLayout(season: Season, name: string): Season | null {
  const others = season.layouts.filter((layout) => !sameName(layout.name, name));
  return others.length === season.layouts.length ? null : withLayouts(season, others);
}

function withLayouts(season: Season, layouts: readonly SavedLayout[]): Season {
  return seasonFrom({ ...seasonDocument(season), layouts: layouts.map(writtenLayout) }, season.group.name);
}

const sameName = (one: string, other: string): boolean =>
  one.trim().toLowerCase() === other.trim().toLowerCase();
