/** 6 000, 1 250,5: thousands set apart by a space, which nobody reads as two numbers. */
const SPACED = /^[+-]?\d{1,3}(?:\s\d{3})+(?:[.,]\d+)?$/;

/**
 * A number as people type it into a form, in the season's way of writing it: without spaces, a point for the decimal
 * comma. Anything else stays as given, and the season says what is wrong with it.
 */
export function typedFigure(given: string): string {
  const text = given.trim().replace(/^−/, '-');
  const closed = SPACED.test(text) ? text.replace(/\s/g, '') : text;
  return closed.replace(/^([+-]?\d+),(\d+)$/, '$1.$2');
}
