import { type AdapterRemark, type Asked, DownloadRefused, type Known } from '../download.js';
import { fixedZone, type Zone, zoneNamed } from './zone.js';

/** Zone as given by a person or a season, or the refusal that names what would do. */
export function zoneOrRefuse(name: string): Zone {
  const zone = zoneNamed(name);
  if (zone !== null) return zone;
  throw new DownloadRefused({ code: 'unknown-zone', with: { zone: name } }, { code: 'which-zone', with: {} });
}

type Say = (remark: AdapterRemark) => void;

/** A zone the file states goes before the person's; where they differ, that is said. */
export function compareWithAsked(stated: Zone, asked: Asked, say: Say): void {
  if (asked.zone === undefined) return;
  const other = zoneOrRefuse(asked.zone);
  if (other.name !== stated.name)
    say({ code: 'zone-asked-not-used', with: { asked: other.name, stated: stated.name } });
}

/**
 * The zone of a clock of which the file states nothing: the person's, else the deployment's, else the station's.
 * null where nobody knows.
 */
export function givenZone(
  asked: Asked,
  known: Known,
  station: string | null,
  local: number,
  say: Say,
): Zone | null {
  if (asked.zone !== undefined) {
    const zone = zoneOrRefuse(asked.zone);
    say({ code: 'zone-asked', with: { zone: zone.name } });
    return zone;
  }
  const found = known.zoneOf(station, local);
  if (found === null) return null;
  const zone = zoneOrRefuse(found.zone);
  const code = found.from === 'deployment' ? 'zone-from-deployment' : 'zone-from-station';
  say({ code, with: { zone: zone.name, station } });
  return zone;
}

/** Where days begin of which neither zone nor place is known: at the group's midnight, standard time, else at that of UTC. */
export function homeZoneForDays({ homeZone }: Asked, local: number, say: Say): Zone {
  if (homeZone === undefined) {
    say({ code: 'zone-utc-for-days', with: {} });
    return fixedZone(0);
  }
  const home = zoneOrRefuse(homeZone);
  const zone = home.kind === 'fixed' ? home : fixedZone(home.transitions.standardOffset(local));
  say({ code: 'zone-home-for-days', with: { zone: zone.name } });
  return zone;
}
