import type { Season } from '../season.js';
import type { Found } from './index.js';

/** A lot kept with another, kept with another … must end at water, not where it began. */
export function loops({ lots }: Season): Found[] {
  const keptWith = new Map(
    lots.flatMap(({ id, before }) => (before.kind === 'lot' ? [[id, before.lot]] : [])),
  );
  return lots.flatMap(({ id }, i): Found[] => {
    const loop = loopFrom(id, (lot) => keptWith.get(lot));
    if (loop === null) return [];
    return [
      {
        path: ['lots', i, 'before', 'with'],
        trouble: { code: 'season.history-loop', with: { loop: loop.join(' → ') } },
      },
    ];
  });
}

/** The way from `start` back to itself, or null where the way ends or turns elsewhere. */
export function loopFrom(start: string, next: (name: string) => string | undefined): string[] | null {
  const way = [start];
  const passed = new Set(way);
  for (let name = next(start); name !== undefined; name = next(name)) {
    way.push(name);
    if (name === start) return way;
    if (passed.has(name)) return null;
    passed.add(name);
  }
  return null;
}
