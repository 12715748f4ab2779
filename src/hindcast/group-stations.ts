import { Origin, type StationDays } from '../../forecasting/day-series.js';
import { stationDays } from '../group/forecast-input.js';
import type { Group } from '../group/index.js';

/** The measured days of a group's own stations; what was filled or projected is no witness. */
export async function groupStations(group: Group): Promise<StationDays[]> {
  const season = await group.season();
  const days = new Map<string, StationDays['days']>();
  for (const { station, inSeason } of await group.stations()) {
    if (!inSeason) continue;
    const all = await group.days({ station, from: null, to: null });
    const mean = all.mean.map((value, d) => (all.origin[d] === Origin.measured ? value : Number.NaN));
    const origin = all.origin.map((of) => (of === Origin.measured ? of : Origin.none));
    if (origin.includes(Origin.measured)) days.set(station, { ...all, mean, origin });
  }
  return stationDays(season, days).filter(({ kind }) => kind !== 'tank');
}
