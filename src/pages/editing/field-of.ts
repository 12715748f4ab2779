import type { SeasonPath, SeasonProblem } from '../../season/index.js';
import { capitalised } from '../../words/season-field.js';
import type { FormField } from '../parts/refused-form.js';
import type { View } from '../view.js';
import type { Field, Kind } from './kinds.js';

/** A field's label in the form. */
export const labelOf = ({ say }: View, { word }: Field): string => capitalised(say(word, {}));

/** The column of a fill's row in the form. */
export const fillAt = (row: number, column: string): string => `fill.${row}.${column}`;

/** The field of a thing's form that a problem of the season lies in; null where the form has none. */
export function fieldOf(view: View, kind: Kind, index: number) {
  return (problem: SeasonProblem): FormField | null => {
    const [list, at, ...rest] = problem.path;
    if (list !== kind.list || at !== index || rest.length === 0) return null;
    const [first, row, column] = rest;
    if (first === 'fills' && typeof row === 'number' && typeof column === 'string')
      return {
        at: fillAt(row, column),
        label: view.say('season.place', { problem: { ...problem, of: null, path: rest } }),
      };
    const field = kind.fields.find(({ path }) => leadsTo(path, rest));
    return field === undefined ? null : { at: field.path.join('.'), label: labelOf(view, field) };
  };
}

const leadsTo = (path: readonly string[], rest: SeasonPath): boolean =>
  path.every((key, i) => rest[i] === key || rest[i] === undefined);
