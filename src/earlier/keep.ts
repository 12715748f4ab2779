import { createHash } from 'node:crypto';
import type { Group } from '../group/index.js';
import { renderSeason, type SeasonChange, seasonDocument, seasonFrom } from '../season/index.js';
import { EarlierRefused } from './refused.js';
import type { EarlierTable } from './table.js';

/** Keeps a table of past seasons; the same table twice is refused. Gives the id it can be withdrawn by. */
export async function keepEarlier(
  group: Group,
  file: string,
  { boxes }: EarlierTable,
  who: string,
): Promise<string> {
  const id = createHash('sha256').update(JSON.stringify(boxes)).digest('hex').slice(0, 12);
  const [season, versions] = [await group.season(), await group.seasonVersions()];
  const before = season.earlier.find((one) => one.id === id);
  if (before !== undefined)
    throw new EarlierRefused({ code: 'earlier-twice', with: { file: before.file, id } });
  const document = seasonDocument(season);
  const kept = Array.isArray(document.earlier) ? document.earlier : [];
  await change(
    group,
    { ...document, earlier: [...kept, { id, file, boxes }] },
    who,
    versions[0]?.version ?? 0,
  );
  return id;
}

/** Takes out what one file told. @throws EarlierRefused 'earlier-unknown' */
export async function withdrawEarlier(group: Group, id: string, who: string): Promise<void> {
  const [season, versions] = [await group.season(), await group.seasonVersions()];
  if (!season.earlier.some((one) => one.id === id))
    throw new EarlierRefused({ code: 'earlier-unknown', with: { id } });
  const earlier = season.earlier.filter((one) => one.id !== id);
  const document = seasonDocument({ ...season, earlier });
  await change(group, document, who, versions[0]?.version ?? 0);
}

function change(
  group: Group,
  document: Record<string, unknown>,
  who: string,
  version: number,
): Promise<readonly SeasonChange[]> {
  return group.applySeason(renderSeason(seasonFrom(document, 'season')), 'season', who, version);
}
