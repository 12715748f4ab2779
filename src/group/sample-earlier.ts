import { readFile } from 'node:fs/promises';
import { parse } from 'yaml';
import { samplePath } from '../../sample-logs/plan.js';
import { closeSeason } from '../reports/index.js';
import { renderSeason, seasonDocument, seasonFrom } from '../season/index.js';
import type { Group } from './group.js';

/** The autumn day on which the invented earlier season is closed: its boxes long out, the next eggs not yet taken. */
export const earlierSampleClosed = Date.parse('2025-10-15T12:00Z');

/**
 * Puts the invented season before the sample one into a group that holds the sample season, closes it, and takes the
 * sample season up again.
 */
export async function closeEarlierSample(group: Group, who: string): Promise<void> {
  const current = await group.season();
  const text = await readFile(samplePath('season-2024.yaml'), 'utf8');
  // As text throughout: dates and numbers are read by the season's own schema.
  const told: Record<string, unknown> = parse(text, { schema: 'failsafe' });
  // What lay where stays, as it bears on the readings; the boxes it was tied to are another season's.
  const deployments = current.deployments.map((deployment) => ({ ...deployment, box: null }));
  const places = { ...current, deployments, visits: [], boxes: [], lots: [], broodstock: [] };
  const document = { ...seasonDocument(places), ...told };
  await group.applySeason(renderSeason(seasonFrom(document, 'season-2024.yaml')), 'season-2024.yaml', who);
  await closeSeason(group, who, null);
  const { earlier } = await group.season();
  const again = seasonFrom(seasonDocument({ ...current, earlier }), 'season.yaml');
  await group.applySeason(renderSeason(again), 'season.yaml', who);
}
