import { readFile } from 'node:fs/promises';
import { SAMPLE_DATES, samplePath, samplePlan } from '../../sample-logs/plan.js';
import type { FileOutcome } from '../loading/index.js';
import type { Group } from './group.js';
import { UnknownName } from './unknown-name.js';

/** The invented season's winter date: some water measured, some filled, some projected (day number). */
export const sampleWinterDay = Date.parse(`${SAMPLE_DATES[0]}T00:00Z`) / 86_400_000;

/**
 * Puts the invented season into an empty group: its season file, then every download as the group loaded them.
 * Looking back with --as-of shows only what had been read by then.
 * @throws UnknownName 'folder-taken' where the group holds a season or loads already.
 */
export async function loadSampleSeason(group: Group, who: string): Promise<readonly FileOutcome[]> {
  const { stations, boxes } = await group.season();
  if (stations.length > 0 || boxes.length > 0 || (await group.loads()).length > 0)
    throw new UnknownName({ code: 'folder-taken', with: { folder: group.folder } });
  const file = samplePath('season.yaml');
  await group.applySeason(await readFile(file, 'utf8'), 'season.yaml', who);
  return group.load({
    files: samplePlan.map(({ file, ...stated }) => ({ path: samplePath(`downloads/${file}`), ...stated })),
    asked: {},
    createStations: false,
    dryRun: false,
    who,
    progress: null,
  });
}
