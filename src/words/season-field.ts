import type { FieldKey } from '../season/index.js';

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
