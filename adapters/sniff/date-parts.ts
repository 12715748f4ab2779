import { fold } from './fold.js';
import type { SampleRow } from './table.js';

/** Headers of year, month, day, hour and minute, folded. */
const headings = [
  /^(?:year|annee|an|yyyy|aaaa|yr)$/,
  /^(?:month|mois|mm|mo)$/,
  /^(?:day|jour|dd|jj|day of month)$/,
  /^(?:hour|heure|hours|heures|hr|hh)$/,
  /^(?:minute|minutes|min)$/,
];

const spans = [
  [1900, 2100],
  [1, 12],
  [1, 31],
  [0, 24],
  [0, 59],
] as const;

function wholeWithin(
  rows: readonly SampleRow[],
  column: number,
  [low, high]: readonly [number, number],
): boolean {
  const fits = rows.filter(({ cells }) => {
    const value = Number(cells[column] || 'none');
    return Number.isInteger(value) && value >= low && value <= high;
  });
  return fits.length >= 0.9 * rows.length;
}

/**
 * The columns of year, month, day, hour and minute (-1 for those that are missing), where a table has its dates in
 * parts: by their headers, or three columns side by side that can be nothing else. null where there are none.
 */
export function findDateParts(
  rows: readonly SampleRow[],
  headers: readonly string[],
): readonly number[] | null {
  const folded = headers.map(fold);
  const named = headings.map((heading, i) => {
    const column = folded.findIndex((header) => heading.test(header));
    return column >= 0 && wholeWithin(rows, column, spans[i]) ? column : -1;
  });
  if (named.slice(0, 3).every((column) => column >= 0)) return named;
  const width = Math.max(0, ...rows.map(({ cells }) => cells.length));
  for (let year = 0; year + 2 < width; year++)
    if (spans.slice(0, 3).every((span, i) => wholeWithin(rows, year + i, span)))
      return [year, year + 1, year + 2, -1, -1];
  return null;
}

/** The date of a row in parts as one text, with its clock where hour and minute have columns. */
export function joinParts(cells: readonly string[], parts: readonly number[]): string {
  const [year, month, day, hour, minute] = parts.map((column) => cells[column]?.trim() ?? '');
  const date = `${year}-${month}-${day}`;
  return hour === '' ? date : `${date} ${hour}:${(minute === '' ? '0' : minute).padStart(2, '0')}`;
}
