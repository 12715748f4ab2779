import type { Remark } from '../../adapters/remark.js';
import { LISTS, told } from './lists.js';
import type { ThingName } from './problem.js';
import type { Season } from './season.js';
import { seasonDocument } from './written.js';

/** What would change between two states of a season; words in src/words/<lang>/season. */
export interface SeasonChangeWords {
  'season.added': { readonly thing: ThingName; readonly id: string };
  'season.removed': { readonly thing: ThingName; readonly id: string };
  /** `field` is the key in the file, dotted where it lies deeper; null: nothing stated. */
  'season.changed': {
    readonly thing: ThingName;
    readonly id: string;
    readonly field: string;
    readonly before: string | null;
    readonly after: string | null;
  };
}
export type SeasonChange = Remark<SeasonChangeWords>;

/**
 * What would change if `after` took the place of `before`: things added, removed, and fields changed, in the order of
 * the file. Empty where the two render alike, but for the order of a list.
 */
export function compareSeasons(before: Season, after: Season): SeasonChange[] {
  const [was, is] = [seasonDocument(before), seasonDocument(after)];
  const changes = fieldChanges('group', after.group.name, groupOf(was), groupOf(is));
  for (const { key, thing, by } of LISTS) {
    const [old, now] = [named(was[key], by), named(is[key], by)];
    for (const [id, one] of old) {
      const other = now.get(id);
      if (other === undefined) changes.push({ code: 'season.removed', with: { thing, id } });
      else changes.push(...fieldChanges(thing, id, one, other));
    }
    for (const id of now.keys())
      if (!old.has(id)) changes.push({ code: 'season.added', with: { thing, id } });
  }
  return changes;
}

/** What the file states once: the group, how it lifts, its curve and its rule. */
function groupOf({ group, lifting, seasonalCurve, oldRule }: Record<string, unknown>): unknown {
  return { ...(isObject(group) ? group : {}), lifting, seasonalCurve, oldRule };
}

/** The things of a list by name; the second of the same name gets a number. */
function named(list: unknown, by: readonly string[]): Map<string, unknown> {
  const things = new Map<string, unknown>();
  for (const thing of Array.isArray(list) ? list : []) {
    const base = told(thing, by);
    let id = base;
    for (let n = 2; things.has(id); n++) id = `${base} (${n})`;
    things.set(id, thing);
  }
  return things;
}

function fieldChanges(thing: ThingName, id: string, was: unknown, is: unknown): SeasonChange[] {
  const [old, now] = [leaves(was), leaves(is)];
  const fields = [...old.keys(), ...[...now.keys()].filter((field) => !old.has(field))];
  return fields.flatMap((field): SeasonChange[] => {
    const [before, after] = [old.get(field) ?? null, now.get(field) ?? null];
    return before === after ? [] : [{ code: 'season.changed', with: { thing, id, field, before, after } }];
  });
}

/** Every value by its dotted path; lists of plain values are one value, list positions count from 1. */
function leaves(value: unknown, path = ''): Map<string, string> {
  if (value === undefined || value === null) return new Map();
  if (Array.isArray(value) && value.every((one) => !isObject(one)))
    return new Map([[path, value.join(', ')]]);
  const inside = Array.isArray(value)
    ? value.map((one, i) => [String(i + 1), one] as const)
    : isObject(value)
      ? Object.entries(value)
      : null;
  if (inside === null) return new Map([[path, String(value)]]);
  return new Map(inside.flatMap(([key, one]) => [...leaves(one, path === '' ? key : `${path}.${key}`)]));
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}
