import { epochMillis } from '../moments.js';
import type { Season } from '../season.js';
import type { Found } from './index.js';

/** Counts that can have come out of the boxes they name. */
export function counts(season: Season): Found[] {
  return [...sameEntries(season), ...tallies(season), ...putBacks(season), ...gauge(season)];
}

function sameEntries(season: Season): Found[] {
  return (['tallies', 'checkedAndPutBack'] as const).flatMap((list) => {
    const seen = new Set<string>();
    return season[list].flatMap(({ entry }, i): Found[] => {
      if (entry === null) return [];
      const again = seen.has(entry);
      seen.add(entry);
      return again
        ? [{ path: [list, i, 'entry'], trouble: { code: 'season.same-entry', with: { entry } } }]
        : [];
    });
  });
}

function tallies(season: Season): Found[] {
  return season.tallies.flatMap((tally, i): Found[] => {
    const path = ['tallies', i];
    const box = season.boxes.find(({ id }) => id === tally.box);
    if (box === undefined) return [];
    const numbers = [tally.empty, tally.dead, tally.alive].filter((one) => one !== null);
    const gone = tally.found === 'not-found' || tally.found === 'carried-away';
    if (gone && numbers.length > 0)
      return [{ path, trouble: { code: 'season.counted-though-gone', with: { box: box.id } } }];
    if (!gone && numbers.length === 0)
      return [{ path, trouble: { code: 'season.nothing-counted', with: { box: box.id } } }];
    const parts = box.fills.flatMap(({ part }) => part ?? []);
    if (tally.part !== null && parts.length > 0 && !parts.includes(tally.part))
      return [
        {
          path: [...path, 'part'],
          trouble: {
            code: 'season.no-such-part',
            with: { box: box.id, part: tally.part, known: parts.join(', ') },
          },
        },
      ];
    return [
      ...tooEarly(box, tally.when, [...path, 'when']),
      ...tooMany(tally, plantedIn(box, tally.part), path),
      ...kinds(tally, path),
      ...livingEggs(tally, path),
    ];
  });
}

function putBacks(season: Season): Found[] {
  return season.checkedAndPutBack.flatMap((check, i): Found[] => {
    const path = ['checkedAndPutBack', i];
    const box = season.boxes.find(({ id }) => id === check.box);
    if (box === undefined) return [];
    const stands = { ...check, countStands: false };
    return [
      ...tooEarly(box, check.when, [...path, 'when']),
      ...tooMany(stands, plantedIn(box, null), path),
      ...livingEggs(check, path),
    ];
  });
}

type Box = Season['boxes'][number];

/** Eggs planted in a box, or in one of its parts. */
export function plantedIn({ fills }: Box, part: string | null): number {
  const named = fills.some((fill) => fill.part === part);
  return fills.reduce(
    (sum, fill) => (part === null || !named || fill.part === part ? sum + fill.eggs : sum),
    0,
  );
}

function tooMany(
  tally: Pick<Season['tallies'][number], 'box' | 'empty' | 'dead' | 'alive' | 'countStands'>,
  planted: number,
  path: Found['path'],
): Found[] {
  const counted = (tally.empty ?? 0) + (tally.dead ?? 0) + (tally.alive ?? 0);
  if (tally.countStands || counted <= planted) return [];
  return [{ path, trouble: { code: 'season.counted-more', with: { box: tally.box, counted, planted } } }];
}

function tooEarly(box: Box, when: Season['tallies'][number]['when'], path: Found['path']): Found[] {
  const early = box.fills.find(({ planted }) =>
    when.at === null ? when.date < planted.slice(0, 10) : epochMillis(when.at) < epochMillis(planted),
  );
  if (early === undefined) return [];
  const counted = when.at ?? when.date;
  return [
    {
      path,
      trouble: {
        code: 'season.counted-before-planted',
        with: { box: box.id, counted, planted: early.planted },
      },
    },
  ];
}

function kinds({ kinds, dead }: Season['tallies'][number], path: Found['path']): Found[] {
  if (kinds === null) return [];
  const told = Object.values(kinds).reduce<number>((sum, one) => sum + (one ?? 0), 0);
  if (told <= (dead ?? 0)) return [];
  return [
    {
      path: [...path, 'kinds'],
      trouble: { code: 'season.kinds-more-than-dead', with: { kinds: told, dead: dead ?? 0 } },
    },
  ];
}

function livingEggs(
  { box, alive, aliveEggs }: Pick<Season['tallies'][number], 'box' | 'alive' | 'aliveEggs'>,
  path: Found['path'],
): Found[] {
  const [eggs, all] = [aliveEggs ?? 0, alive ?? 0];
  if (eggs <= all) return [];
  return [
    {
      path: [...path, 'aliveEggs'],
      trouble: { code: 'season.eggs-more-than-alive', with: { box, eggs, alive: all } },
    },
  ];
}

function gauge({ lifting, stations }: Season): Found[] {
  const stated = lifting?.gauge ?? null;
  const station = stations.find(({ id }) => id === stated?.station);
  if (stated === null || station === undefined || station.quantities.includes(stated.quantity)) return [];
  return [
    {
      path: ['lifting', 'gauge', 'station'],
      trouble: {
        code: 'season.gauge-has-no',
        with: { station: station.id, quantity: stated.quantity },
      },
    },
  ];
}
