import type { ThingName } from '../problem.js';
import type { Season } from '../season.js';
import type { Found } from './index.js';

/** Ids are told apart without regard to capitals, so that nobody has to say "capital B" on the phone. */
export function duplicates(season: Season): Found[] {
  const lists: readonly [ThingName, string, readonly { id: string }[]][] = [
    ['station', 'stations', season.stations],
    ['logger', 'loggers', season.loggers],
    ['site', 'sites', season.sites],
    ['broodstock', 'broodstock', season.broodstock],
    ['lot', 'lots', season.lots],
    ['cross', 'crosses', season.crosses],
    ['entry', 'entries', season.entries],
    ['box', 'boxes', season.boxes],
    ['table', 'tables', season.tables],
    ['layout', 'layouts', season.layouts.map(({ name }) => ({ id: name }))],
  ];
  return lists.flatMap(([thing, key, things]) => {
    const seen = new Set<string>();
    return things.flatMap(({ id }, i): Found[] => {
      const name = id.toLowerCase();
      const again = seen.has(name);
      seen.add(name);
      return again
        ? [
            {
              path: [key, i, thing === 'layout' ? 'name' : 'id'],
              trouble: { code: 'season.duplicate-id', with: { thing, id } },
            },
          ]
        : [];
    });
  });
}
