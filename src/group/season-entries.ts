import type { StationCalled } from '../loading/index.js';
import { type Deployment, epochMillis, type Season } from '../season/index.js';
import type { Check, DeploymentEntry, SeasonEntry, StationEntry } from '../store/index.js';
import { withCorrections } from './deployment-checks.js';

/** What of a season bears on readings: its stations and deployments as the store keeps them, beside its text. */
export function seasonEntry(season: Season, text: string): SeasonEntry {
  return {
    text,
    stations: season.stations.map(stationEntry),
    deployments: season.deployments.map((deployment) => deploymentEntry(deployment, season)),
  };
}

function stationEntry(station: Season['stations'][number]): StationEntry {
  return {
    id: station.id,
    kind: station.kind,
    zone: station.zone,
    offsetMinutes: station.dayOffset,
    latitude: station.latitude,
    longitude: station.longitude,
  };
}

function deploymentEntry(deployment: Deployment, season: Season): DeploymentEntry {
  const logger = season.loggers.find(({ id }) => id === deployment.logger);
  return {
    station: deployment.station,
    logger: deployment.logger,
    from: epochMillis(deployment.from),
    to: deployment.to === null ? null : epochMillis(deployment.to),
    zone: deployment.clock ?? logger?.clock ?? null,
    // A clock so many seconds fast is set right by taking them off.
    clock: withCorrections(
      deployment.clockChecks.map(({ at, fast }) => ({ at: epochMillis(at), add: -fast * 1000 })),
      deployment.corrections,
      'clock',
    ),
    temperature: withCorrections(iceBathChecks(deployment), deployment.corrections, 'temperature'),
  };
}

/** By what a download may mean a station of the season: its name, and the loggers that lay there. */
export function stationsCalled(season: Season): StationCalled[] {
  return season.stations.map(({ id, name }) => ({
    station: id,
    name,
    serials: season.deployments
      .filter(({ station }) => station === id)
      .flatMap(({ logger }) => season.loggers.find((one) => one.id === logger)?.serial ?? []),
  }));
}

/** What a logger shows in melting ice is its error at 0 °C: taken off its readings, drifting between two checks. */
function iceBathChecks({ iceBath, from, to }: Deployment): Check[] {
  if (iceBath === null) return [];
  const before = iceBath.before === null ? [] : [{ at: epochMillis(from), add: -iceBath.before }];
  const after = iceBath.after === null || to === null ? [] : [{ at: epochMillis(to), add: -iceBath.after }];
  return [...before, ...after];
}
