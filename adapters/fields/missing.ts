/**
 * Numbers that loggers and agencies write where nothing was measured. Only values no water or air has are among
 * them; common practice, no standard.
 */
const numbers = new Set([
  -99, -99.9, -99.99, -999, -999.9, -999.99, -888.88, -6999, -6999.9, -8888, -9999, -9999.9, -9999.99, -99999,
  -999999, 999, 999.9, 999.99, 6999, 7999, 9999, 9999.9, 99999, 999999, -1e30, 1e30, -1.797e308,
]);

/** Whether a number stands for "nothing measured". */
export function isMissingNumber(value: number): boolean {
  return numbers.has(value) || Math.abs(value) >= 1e29;
}

/** Whether a text stands for "nothing measured": nothing, dashes, or words without any digit (NaN, logged off, Ice). */
export function isMissingText(text: string): boolean {
  return !/\d/.test(text) || /^#(?:n\/?a|value!|div\/0!|num!|ref!)$/i.test(text.trim());
}
