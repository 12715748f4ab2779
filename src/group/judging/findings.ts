import type { Finding } from '../../../forecasting/quality/finding.js';
import { epochMillis, type Ruling, type Season } from '../../season/index.js';
import type { Quantity, StoredFinding } from '../../store/index.js';
import { rulingOn } from './flags.js';

/** A finding as the faces show it. */
export interface StationFinding extends Finding {
  /** Names it in an address: the same stretch of the same check keeps it. */
  readonly id: string;
  readonly station: string;
  readonly quantity: Quantity;
  /** What a person ruled of it; null where the check's word stands. */
  readonly ruling: Ruling | null;
  /** The logger whose deployment an accepted correction would go to; null where the season names none there. */
  readonly logger: string | null;
}

export function stationFindings(
  found: readonly StoredFinding[],
  station: string,
  season: Season,
): StationFinding[] {
  const rulings = season.rulings.filter((one) => one.station === station);
  return found.map((one) => ({
    ...one,
    id: findingId(one),
    station,
    ruling: rulingOn(
      one,
      rulings.filter(({ quantity }) => quantity === one.quantity),
    ),
    logger: deploymentUnder(season, station, one)?.logger ?? null,
  }));
}

export function findingId({ kind, quantity, from }: StoredFinding): string {
  const record = quantity === 'temperature' ? '' : `${quantity}.`;
  return `${record}${kind}.${Math.floor(from / 1000).toString(36)}`;
}

/** The deployment in which most of a finding lies. */
export function deploymentUnder(
  season: Season,
  station: string,
  { from, to }: Pick<Finding, 'from' | 'to'>,
): Season['deployments'][number] | null {
  const middle = (from + to) / 2;
  return (
    season.deployments.find(
      (one) =>
        one.station === station &&
        epochMillis(one.from) <= middle &&
        (one.to === null || epochMillis(one.to) >= middle),
    ) ?? null
  );
}
