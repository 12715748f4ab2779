import type { Known } from '../../adapters/index.js';
import type { Catalogue } from '../store/index.js';
import type { StationCalled } from './index.js';
import type { KnownStation } from './messages.js';
import { stationNamed } from './station-names.js';

export async function knownStations(
  catalogue: Catalogue,
  called: readonly StationCalled[],
): Promise<KnownStation[]> {
  const deployments = await catalogue.deployments();
  return (await catalogue.stations()).map(({ id, kind, zone }) => ({
    id,
    name: called.find(({ station }) => station === id)?.name ?? id,
    serials: called.find(({ station }) => station === id)?.serials ?? [],
    kind,
    zone,
    deployments: deployments
      .filter(({ station }) => station === id)
      .map(({ from, to, zone: clock }) => ({ from, to, zone: clock })),
  }));
}

/** Readings may begin in the office some time before a deployment does. */
const BEFORE = 60 * 86_400_000;

/** What the season knows, as the adapters ask for it. `asked` is the station the person named. */
export function knownTo(stations: readonly KnownStation[], asked: string | undefined): Known {
  const named = (station: string | null) => {
    const name = station ?? asked;
    return name === undefined ? undefined : stationNamed(name, stations);
  };
  return {
    zoneOf(station, at) {
      const found = named(station);
      if (found === undefined) return null;
      const deployed =
        at === undefined
          ? undefined
          : found.deployments.findLast(({ from, to }) => at >= from - BEFORE && (to === null || at <= to));
      return deployed === undefined || deployed.zone === null
        ? { zone: found.zone, from: 'station' }
        : { zone: deployed.zone, from: 'deployment' };
    },
    stationOfSerial(serial) {
      const lay = stations.filter(({ serials }) => serials.some((one) => sameSerial(one, serial)));
      return lay.length === 1 ? (lay[0]?.id ?? null) : null;
    },
    isAir: (station) => named(station)?.kind === 'air',
  };
}

/** Loggers print and files write the same number in capitals or not. */
function sameSerial(one: string, other: string): boolean {
  return one.trim().toLowerCase() === other.trim().toLowerCase();
}
