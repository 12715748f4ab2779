import { typedFigure } from '../../season/index.js';
import type { Document } from '../parts/season-change.js';
import type { Field, Kind } from './kinds.js';

/** Rows of fills a form always offers more than there are. */
const SPARE_FILLS = 2;

export interface FillRow {
  readonly lot: string;
  readonly part: string;
  readonly eggs: string;
  readonly planted: string;
}

/** A field's value as the text an input shows. */
export function shown(thing: Document, { path, as }: Field): string {
  let value: unknown = thing;
  for (const key of path) value = isThing(value) ? value[key] : undefined;
  if (value === undefined || value === null) return '';
  if (Array.isArray(value)) return value.map(String).join(', ');
  return as === 'yes'
    ? value === true || value === 'true' || value === 'yes'
      ? 'yes'
      : 'no'
    : String(value);
}

/** How a list and a form's heading name it: by its name, or where it has none by what tells it from the others. */
export function nameOf({ list, named }: Kind, thing: Document, stationName: (id: string) => string): string {
  const shown = (key: string) => (key === 'station' ? stationName(String(thing[key])) : String(thing[key]));
  const parts = named.flatMap((key) => (thing[key] === undefined ? [] : [shown(key)]));
  return parts.slice(0, ['deployments', 'blocked', 'permits'].includes(list) ? 3 : 1).join(', ');
}

/** Its fills as rows, with a few empty ones to add more. */
export function fillRows(thing: Document): FillRow[] {
  const fills: unknown[] = Array.isArray(thing.fills) ? thing.fills : [];
  const text = (fill: unknown, key: string) => String((isThing(fill) ? fill[key] : undefined) ?? '');
  const planted = text(thing, 'planted');
  const empty = { lot: '', part: '', eggs: '', planted: '' };
  return [
    ...fills.map((fill) => ({
      lot: text(fill, 'lot'),
      part: text(fill, 'part'),
      eggs: text(fill, 'eggs'),
      planted: text(fill, 'planted') || planted,
    })),
    ...Array.from({ length: SPARE_FILLS }, () => empty),
  ];
}

/**
 * The thing as the form states it, over what it was: fields the form has none of stay, empty ones are taken away. What
 * is wrong with a value the season says when it is read.
 */
export function stated(kind: Kind, was: Document, form: FormLike): Document {
  let thing: Document = { ...was };
  for (const field of kind.fields) thing = withValue(thing, field, form.field(field.path.join('.')).trim());
  if (kind.fills === undefined) return thing;
  const { planted: _each, ...rest } = thing;
  const columns = ['lot', 'part', 'eggs', 'planted'] as const;
  const [lots = [], ...others] = columns.map((name) => form.all(`fill.${name}`));
  const fills = lots.flatMap((lot, i) => {
    if (lot.trim() === '') return [];
    const fill: [string, string][] = [
      ['lot', lot],
      ...others.map((all, j): [string, string] => [columns[j + 1] ?? '', all[i] ?? '']),
    ];
    return [
      Object.fromEntries(
        fill
          .filter(([, value]) => value.trim() !== '')
          .map(([key, value]) => [key, key === 'eggs' ? typedFigure(value) : value.trim()]),
      ),
    ];
  });
  return { ...rest, fills };
}

interface FormLike {
  field(name: string): string;
  all(name: string): readonly string[];
}

function withValue(thing: Document, { path, as }: Pick<Field, 'path' | 'as'>, given: string): Document {
  const [key = '', inner] = path;
  if (inner !== undefined) {
    const was = thing[key];
    const inside = withValue(isThing(was) ? was : {}, { path: [inner], as }, given);
    const { [key]: _old, ...rest } = thing;
    return Object.keys(inside).length === 0 ? rest : { ...rest, [key]: inside };
  }
  const { [key]: _old, ...rest } = thing;
  if (given === '') return rest;
  if (as === 'list')
    return {
      ...thing,
      [key]: given
        .split(',')
        .map((one) => one.trim())
        .filter((one) => one !== ''),
    };
  return { ...thing, [key]: as === 'number' ? typedFigure(given) : given };
}

export function isThing(value: unknown): value is Document {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
