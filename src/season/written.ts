import { writtenLayout } from './layouts.js';
import { USUAL_EMERGED, USUAL_STILL_IN_BOX } from './lifting.js';
import type { Before } from './lots.js';
import { writtenMoment, writtenWhen } from './moments.js';
import type { Season } from './season.js';
import { reportsUsually, usualQuantities } from './stations.js';
import { HAND_ACCURACY } from './visits.js';

type Plain = Record<string, unknown>;

/**
 * A season in the shape of its file, as plain JSON: keys in the file's order, what is absent or usual left out,
 * moments on the group's wall clock. `seasonFrom` takes it back.
 */
export function seasonDocument(season: Season): Plain {
  const { zone } = season.group;
  const wall = (moment: string | null) => (moment === null ? null : writtenMoment(moment, zone));
  return brief(
    {
      group: brief({ ...season.group }, { language: 'en' }),
      stations: season.stations.map(({ dayOffset: _derived, ...station }) =>
        brief(station, {
          name: station.id,
          quantities: usualQuantities(station.kind),
          zone,
          reports: reportsUsually(station.kind),
        }),
      ),
      loggers: season.loggers.map((logger) => brief(logger)),
      deployments: season.deployments.map((deployment) =>
        brief(
          {
            ...deployment,
            from: wall(deployment.from),
            to: wall(deployment.to),
            read: deployment.read.map(wall),
            clockChecks: deployment.clockChecks.map(({ at, fast }) => ({ at: wall(at), fast })),
            iceBath: deployment.iceBath === null ? null : brief(deployment.iceBath),
            corrections: deployment.corrections.map((one) => withWallClock(one, wall)),
          },
          { lost: false },
        ),
      ),
      sites: season.sites.map((site) => brief(site)),
      broodstock: season.broodstock.map((adult) =>
        brief({ ...adult, when: adult.when === null ? null : writtenWhen(adult.when, zone) }),
      ),
      crosses: season.crosses.map((cross) =>
        brief({ ...cross, when: cross.when === null ? null : writtenWhen(cross.when, zone) }),
      ),
      lots: season.lots.map((lot) =>
        brief({
          ...lot,
          fertilised: wall(lot.fertilised),
          before: writtenBefore(lot.before),
          disinfected:
            lot.disinfected === null ? null : brief({ ...lot.disinfected, at: wall(lot.disinfected.at) }),
          control: lot.control === null ? null : brief(lot.control),
        }),
      ),
      boxes: season.boxes.map((box) =>
        brief(
          {
            ...box,
            lifted: wall(box.lifted),
            fills: box.fills.map((fill) => brief({ ...fill, planted: wall(fill.planted) })),
            planting: box.planting === null ? null : brief(box.planting),
          },
          { stations: usualStations(season, box.site) },
        ),
      ),
      visits: season.visits.map((visit) =>
        brief(
          {
            ...visit,
            when: writtenWhen(visit.when, zone),
            hand: visit.hand.map((hand) =>
              brief({ ...hand, at: wall(hand.at) }, { accuracy: HAND_ACCURACY }),
            ),
            loggers: visit.loggers.map((logger) => brief(logger)),
          },
          { station: usualStations(season, visit.site)[0] ?? null },
        ),
      ),
      observed: season.observed.map((seen) => brief(seen)),
      blocked: season.blocked.map((blocked) => brief(blocked)),
      checkedAndPutBack: season.checkedAndPutBack.map((check) =>
        brief({ ...check, when: writtenWhen(check.when, zone) }),
      ),
      tallies: season.tallies.map((tally) => writtenTally(tally, zone)),
      lifting: season.lifting === null ? null : writtenLifting(season.lifting, wall),
      permits: season.permits.map((permit) => brief(permit)),
      entries: season.entries.map((entry) =>
        brief({ ...entry, entered: wall(entry.entered), received: wall(entry.received) }),
      ),
      rulings: season.rulings.map((ruling) =>
        brief(withWallClock(ruling, wall), { quantity: 'temperature' }),
      ),
      earlier: season.earlier.map((one) => ({ ...one, boxes: one.boxes.map((box) => brief(box)) })),
      seasonalCurve: season.seasonalCurve === null ? null : brief(season.seasonalCurve, { spread: 1 }),
      oldRule: season.oldRule,
      tables: season.tables.map(writtenTable),
      layouts: season.layouts.map(writtenLayout),
    },
    {},
  );
}

/** A stretch that somebody spoke about at a time, its moments on the wall clock. */
function withWallClock<T extends { from: string; to: string; at: string }>(
  one: T,
  wall: (moment: string | null) => string | null,
): Plain {
  return { ...one, from: wall(one.from), to: wall(one.to), at: wall(one.at) };
}

function writtenTally(tally: Season['tallies'][number], zone: string): Plain {
  const kinds = tally.kinds === null ? null : brief({ ...tally.kinds });
  return brief(
    { ...tally, when: writtenWhen(tally.when, zone), kinds },
    { found: 'in-place', countStands: false, kinds: {} },
  );
}

function writtenLifting(
  lifting: NonNullable<Season['lifting']>,
  wall: (moment: string | null) => string | null,
): Plain {
  const { approved } = lifting;
  return brief(
    { ...lifting, approved: approved === null ? null : brief({ ...approved, at: wall(approved.at) }) },
    { rule: 'before-emergence', stillInBox: USUAL_STILL_IN_BOX, emerged: USUAL_EMERGED },
  );
}

function usualStations(season: Season, site: string): string[] {
  const station = season.sites.find((one) => one.id === site)?.station ?? null;
  return station === null ? [] : [station];
}

function writtenBefore(before: Before): Plain | null {
  switch (before.kind) {
    case 'none':
      return null;
    case 'station':
      return { station: before.station };
    case 'stated':
      return { celsius: before.celsius };
    case 'lot':
      return { with: before.lot };
  }
}

function writtenTable(table: Season['tables'][number]): Plain {
  return brief({
    ...table,
    stages: table.stages.map((row) => brief({ ...row })),
    doNotHandle: brief({ ...table.doNotHandle }),
    temper: brief({ ...table.temper }),
    leavesBox: brief({ ...table.leavesBox }),
    harm: table.harm.map((limit) => brief({ ...limit })),
  });
}

/** Without what is absent, empty or as usual. */
function brief(thing: Plain, usual: Plain = {}): Plain {
  return Object.fromEntries(
    Object.entries(thing).filter(([key, value]) => {
      if (value === null || value === undefined) return false;
      if (key in usual) return JSON.stringify(value) !== JSON.stringify(usual[key]);
      return !Array.isArray(value) || value.length > 0;
    }),
  );
}
