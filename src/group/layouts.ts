import { layoutFrom, type SavedLayout } from '../../adapters/layouts-saved.js';
import type { FileOutcome } from '../loading/index.js';
import { keepLayout, removeLayout, renderSeason, type Season } from '../season/index.js';
import type { Group, LoadRequest } from './group.js';
import { UnknownName } from './unknown-name.js';

/** Keeps a layout of downloads in the group's season, in place of one of the same name. */
export function saveLayout(group: Group, layout: SavedLayout, who: string): Promise<Season> {
  return changed(group, who, (season) => keepLayout(season, layout));
}

/** @throws UnknownName 'unknown-layout' */
export function dropLayout(group: Group, name: string, who: string): Promise<Season> {
  return changed(group, who, (season) => {
    const without = removeLayout(season, name);
    if (without !== null) return without;
    const layouts = season.layouts.map((layout) => layout.name);
    throw new UnknownName({ code: 'unknown-layout', with: { layout: name, layouts } });
  });
}

/**
 * Keeps the layout of a download that was understood, with what the person answered about it.
 *
 * @throws UnknownName 'no-layout-needed' where the file was refused or its format explains itself
 */
export function saveLayoutOf(
  group: Group,
  name: string,
  { understood, file }: FileOutcome,
  asked: LoadRequest['asked'],
  who: string,
): Promise<Season> {
  const layout = understood === null ? null : layoutFrom(name, { understood }, asked, file);
  if (layout === null) throw new UnknownName({ code: 'no-layout-needed', with: { file } });
  return saveLayout(group, layout, who);
}

/** The version is asked for first: whatever changes after it is not overwritten. */
async function changed(group: Group, who: string, change: (season: Season) => Season): Promise<Season> {
  const version = (await group.seasonVersions())[0]?.version ?? 0;
  const season = change(await group.season());
  await group.applySeason(renderSeason(season), season.group.name, who, version);
  return season;
}
