import type { FieldKey, SeasonPath } from '../season/index.js';

/**
 * A place in a thing of the season as people say it, from the dotted path of the file: "fills.2.eggs" is "fill 2, eggs".
 * A key without a name (the coefficients of a law, the columns of a saved layout) stays as the file writes it.
 */
export function fieldNamed(names: Record<FieldKey, string>, path: string): string {
  const known = new Map<string, string>(Object.entries(names));
  return path
    .split('.')
    .map((key) => known.get(key) ?? key)
    .join(', ')
    .replace(/, (?=\d+(?:,|$))/g, '\u00a0');
}

/** With the file's own key in brackets where that is another word. */
export function fieldWithKey(names: Record<FieldKey, string>, path: string): string {
  const name = fieldNamed(names, path);
  return name === path ? name : `${name} (${path})`;
}

/** The same, from the path of a problem: its positions count from 0. */
export function pathNamed(names: Record<FieldKey, string>, path: SeasonPath): string {
  const steps = path.map((step) => (typeof step === 'number' ? String(step + 1) : step));
  return fieldNamed(names, steps.join('.'));
}

/** As it stands at the beginning of a line; a unit such as mL stays. */
export const capitalised = (text: string): string =>
  /^\p{Ll}\p{Lu}/u.test(text) ? text : `${text.slice(0, 1).toUpperCase()}${text.slice(1)}`;
