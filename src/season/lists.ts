import type { SeasonPath, ThingName, ThingNamed } from './problem.js';

/** The lists of the file, what each holds, and the keys that tell one from another. */
export const LISTS: readonly { key: string; thing: ThingName; by: readonly string[] }[] = [
  { key: 'stations', thing: 'station', by: ['id'] },
  { key: 'loggers', thing: 'logger', by: ['id'] },
  { key: 'deployments', thing: 'deployment', by: ['logger', 'from'] },
  { key: 'sites', thing: 'site', by: ['id'] },
  { key: 'broodstock', thing: 'broodstock', by: ['id'] },
  { key: 'lots', thing: 'lot', by: ['id'] },
  { key: 'boxes', thing: 'box', by: ['id'] },
  { key: 'visits', thing: 'visit', by: ['site', 'when'] },
  { key: 'observed', thing: 'observed', by: ['date', 'box', 'lot', 'stage'] },
  { key: 'blocked', thing: 'blocked', by: ['from', 'site'] },
  { key: 'checkedAndPutBack', thing: 'putBack', by: ['box', 'when'] },
  { key: 'tallies', thing: 'tally', by: ['box', 'part', 'when', 'counter'] },
  { key: 'rulings', thing: 'ruling', by: ['station', 'check', 'from'] },
  { key: 'permits', thing: 'permit', by: ['number'] },
  { key: 'crosses', thing: 'cross', by: ['id'] },
  { key: 'tables', thing: 'table', by: ['id'] },
  { key: 'layouts', thing: 'layout', by: ['name'] },
];

/** What tells one from another, in a line: the values of its keys. */
export function told(thing: unknown, by: readonly string[]): string {
  if (typeof thing !== 'object' || thing === null) return '';
  const stated = new Map<string, unknown>(Object.entries(thing));
  return by.flatMap((key) => (stated.get(key) === undefined ? [] : [String(stated.get(key))])).join(', ');
}

/** The thing of a list that a path leads into; null where it leads into none. */
export function thingAt(plain: unknown, path: SeasonPath): ThingNamed | null {
  const [key, index] = path;
  const list = LISTS.find((one) => one.key === key);
  if (list === undefined || typeof index !== 'number') return null;
  const things: unknown = new Map<string, unknown>(Object.entries(plain ?? {})).get(list.key);
  return Array.isArray(things) ? { thing: list.thing, id: told(things[index], list.by) } : null;
}
