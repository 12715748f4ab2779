import type { DeploymentEntry, SeasonEntry } from '../entries.js';
import type { SeasonApplied } from '../folder.js';
import type { StoredWrite } from './write.js';

/**
 * Takes over a season document: its text as a new version, its stations, its deployments. Stations that the
 * document no longer names keep their readings. Days are computed anew where an offset or a deployment changed.
 */
export async function applySeasonEntry(write: StoredWrite, season: SeasonEntry): Promise<SeasonApplied> {
  const standing = await write.season();
  const stale = new Set([...(await takeStations(write, season)), ...(await takeDeployments(write, season))]);
  for (const id of stale) await write.renewStation(id);
  if (standing?.text === season.text)
    return { version: standing.version, unchanged: true, renewed: [...stale] };
  const { version } = await write.recordSeason(season.text);
  return { version, unchanged: false, renewed: [...stale] };
}

async function takeStations(write: StoredWrite, { stations }: SeasonEntry): Promise<string[]> {
  const known = new Map((await write.stations()).map((station) => [station.id, station]));
  const stale: string[] = [];
  await write.run('UPDATE station SET in_season = false WHERE in_season');
  for (const station of stations) {
    const before = known.get(station.id);
    if (before === undefined) {
      await write.makeStation(station, true);
      continue;
    }
    await write.saveStation({ ...station, number: before.number, inSeason: true });
    if (before.offsetMinutes !== station.offsetMinutes) stale.push(station.id);
  }
  return stale;
}

async function takeDeployments(write: StoredWrite, { deployments }: SeasonEntry): Promise<string[]> {
  const before = byStation(await write.deployments());
  const after = byStation(deployments);
  const stale = [...new Set([...before.keys(), ...after.keys()])].filter(
    (id) => JSON.stringify(before.get(id)) !== JSON.stringify(after.get(id)),
  );
  if (stale.length === 0) return [];
  await write.run('DELETE FROM deployment');
  for (const [position, deployment] of deployments.entries()) {
    const { station, logger, from, to, zone, clock, temperature } = deployment;
    const { number } = await write.knownStation(station);
    await write.run('INSERT INTO deployment VALUES (?, ?, ?, ?, ?, ?, ?, ?)', [
      number,
      position,
      logger,
      from,
      to,
      zone,
      JSON.stringify(clock),
      JSON.stringify(temperature),
    ]);
  }
  return stale;
}

/** The deployments of each station with what of them bears on readings, in an order of the fields that is ours. */
function byStation(deployments: readonly DeploymentEntry[]): Map<string, readonly unknown[]> {
  const grouped = new Map<string, readonly unknown[]>();
  for (const { station, from, to, clock, temperature, logger, zone } of deployments) {
    const checks = [clock, temperature].map((list) => list.map(({ at, add }) => [at, add]));
    grouped.set(station, [...(grouped.get(station) ?? []), [from, to, checks, logger, zone]]);
  }
  return grouped;
}
