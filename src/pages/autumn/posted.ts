import { fieldsOf } from '../../field/index.js';
import type { Form as Posted } from '../../http/received/form.js';
import type { FieldEntry } from '../../season/index.js';
import { plainFigure } from '../client/field/checks.js';
import type { Form, Question } from '../client/field/forms.js';

/** Parts of a row of a question that has rows, as form fields are named: `loggers.logger`. */
export const rowParts: Readonly<Record<'loggers' | 'samples', readonly string[]>> = {
  loggers: ['logger', 'did', 'station', 'lay', 'box', 'fast', 'iceBath'],
  samples: ['eggs', 'amount'],
};

/** An entry as it was sent, as the fields of its form: the moment it was entered where it states none. */
export function typedBefore(entry: FieldEntry, form: Form): (name: string) => readonly string[] {
  const fields: Readonly<Record<string, unknown>> = { when: entry.entered.slice(0, 16), ...fieldsOf(entry) };
  const text = (value: unknown): string =>
    value === undefined || value === null
      ? ''
      : Array.isArray(value)
        ? value.map(text).join(', ')
        : String(value);
  return (name) => {
    const [question = '', part] = name.split('.');
    const value = fields[question];
    if (part === undefined)
      return value === undefined ? [] : [text(value).replace(/^(\d{4}-\d\d-\d\d) (\d\d:\d\d)/, '$1T$2')];
    const asked = form.screens.flat().some((one) => one.name === question);
    return asked && Array.isArray(value) ? value.filter(isThing).map((row) => text(row[part])) : [];
  };
}

/** What a form at a desk posted, as an entry's fields. */
export function postedFields(form: Form, posted: Posted): Record<string, unknown> {
  return Object.fromEntries(form.screens.flat().flatMap((question) => answersTo(question, posted)));
}

function answersTo({ name, as }: Question, posted: Posted): [string, unknown][] {
  if (as === 'photo') return [];
  if (as === 'position')
    return ['latitude', 'longitude'].flatMap((key): [string, unknown][] => {
      const given = plainFigure(posted.field(key).trim());
      return given === '' ? [] : [[key, given]];
    });
  if (as === 'loggers' || as === 'samples') {
    const columns = rowParts[as].map((part) => [part, posted.all(`${name}.${part}`)] as const);
    const length = Math.max(0, ...columns.map(([, all]) => all.length));
    const rows = Array.from({ length }, (_, i) =>
      Object.fromEntries(
        columns.flatMap(([part, all]) => {
          const given = (all[i] ?? '').trim();
          return given === '' ? [] : [[part, given]];
        }),
      ),
    ).filter((row) => Object.keys(row).length > 0);
    return rows.length === 0 ? [] : [[name, rows]];
  }
  const given = posted.field(name).trim();
  if (given === '') return [];
  return [[name, as === 'figure' ? plainFigure(given) : given]];
}

const isThing = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null;
