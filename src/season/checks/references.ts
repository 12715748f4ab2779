import { shippedTables } from '../../../forecasting/index.js';
import type { SeasonPath, ThingName } from '../problem.js';
import type { Season } from '../season.js';
import type { Found } from './index.js';

/** How many known names an answer lists. */
const NAMES_SHOWN = 12;

/** Every id that stands for another thing of the season must be there. */
export function references(season: Season): Found[] {
  const found: Found[] = [];
  const known: Partial<Record<ThingName, readonly string[]>> = {
    station: season.stations.map(({ id }) => id),
    logger: season.loggers.map(({ id }) => id),
    site: season.sites.map(({ id }) => id),
    broodstock: season.broodstock.map(({ id }) => id),
    lot: season.lots.map(({ id }) => id),
    box: season.boxes.map(({ id }) => id),
    table: [...season.tables.map(({ id }) => id), ...shippedTables.map(({ id }) => id)],
  };
  const sets = new Map(Object.entries(known).map(([thing, ids]) => [thing, new Set(ids)]));
  const refers = (thing: ThingName, id: string | null, ...path: SeasonPath) => {
    if (id === null || sets.get(thing)?.has(id)) return;
    const names = known[thing] ?? [];
    const some = names.slice(0, NAMES_SHOWN).join(', ') + (names.length > NAMES_SHOWN ? '…' : '');
    found.push({ path, trouble: { code: 'season.no-such', with: { thing, id, known: some } } });
  };

  season.deployments.forEach((deployment, i) => {
    refers('logger', deployment.logger, 'deployments', i, 'logger');
    refers('station', deployment.station, 'deployments', i, 'station');
    refers('box', deployment.box, 'deployments', i, 'box');
  });
  season.sites.forEach((site, i) => {
    refers('station', site.station, 'sites', i, 'station');
  });
  season.crosses.forEach((cross, i) => {
    refers('broodstock', cross.female, 'crosses', i, 'female');
    cross.males.forEach((male, j) => {
      refers('broodstock', male, 'crosses', i, 'males', j);
    });
    refers('lot', cross.lot, 'crosses', i, 'lot');
  });
  season.permits.forEach((permit, i) => {
    refers('site', permit.site, 'permits', i, 'site');
  });
  season.lots.forEach((lot, i) => {
    lot.parents.forEach((parent, j) => {
      refers('broodstock', parent, 'lots', i, 'parents', j);
    });
    refers('table', lot.table, 'lots', i, 'table');
    if (lot.before.kind === 'station') refers('station', lot.before.station, 'lots', i, 'before', 'station');
    if (lot.before.kind === 'lot') refers('lot', lot.before.lot, 'lots', i, 'before', 'with');
  });
  season.boxes.forEach((box, i) => {
    refers('site', box.site, 'boxes', i, 'site');
    box.fills.forEach((fill, j) => {
      refers('lot', fill.lot, 'boxes', i, 'fills', j, 'lot');
    });
    box.stations.forEach((station, j) => {
      refers('station', station, 'boxes', i, 'stations', j);
    });
  });
  season.visits.forEach((visit, i) => {
    refers('site', visit.site, 'visits', i, 'site');
    refers('station', visit.station, 'visits', i, 'station');
    visit.hand.forEach((hand, j) => {
      refers('station', hand.station, 'visits', i, 'hand', j, 'station');
    });
    visit.loggers.forEach((one, j) => {
      refers('logger', one.logger, 'visits', i, 'loggers', j, 'logger');
      refers('station', one.station, 'visits', i, 'loggers', j, 'station');
      refers('box', one.box, 'visits', i, 'loggers', j, 'box');
    });
    visit.clockChecks.forEach((check, j) => {
      refers('logger', check.logger, 'visits', i, 'clockChecks', j, 'logger');
    });
  });
  season.rulings.forEach((ruling, i) => {
    refers('station', ruling.station, 'rulings', i, 'station');
  });
  season.observed.forEach((seen, i) => {
    refers('box', seen.box, 'observed', i, 'box');
    refers('lot', seen.lot, 'observed', i, 'lot');
  });
  season.blocked.forEach((blocked, i) => {
    refers('site', blocked.site, 'blocked', i, 'site');
  });
  for (const list of ['checkedAndPutBack', 'tallies'] as const) {
    season[list].forEach((count, i) => {
      refers('box', count.box, list, i, 'box');
    });
  }
  refers('station', season.lifting?.gauge?.station ?? null, 'lifting', 'gauge', 'station');
  season.lifting?.trips.forEach((trip, i) => {
    trip.forEach((site, j) => {
      refers('site', site, 'lifting', 'trips', i, j);
    });
  });
  return found;
}
