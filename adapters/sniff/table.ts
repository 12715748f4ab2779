import type { Delimiter } from '../download.js';
import { fieldsOf } from '../fields/quoted.js';
import { type CellKind, cellKind } from './cells.js';

export const delimiters: readonly Delimiter[] = [',', ';', '\t', '|'];
/** Lines looked at closely; more would only cost time. */
const MOST_LINES = 400;
/** Characters looked at closely: of a table with thousands of columns fewer lines are enough. */
const MOST_CHARACTERS = 1_000_000;
const FEWEST_LINES = 40;

export interface SampleRow {
  /** Position in the lines of the head, from 0. */
  readonly index: number;
  readonly cells: readonly string[];
  readonly kinds: readonly CellKind[];
}

/** The head of a file as a table: which delimiter, and rows that look like readings. */
export interface Table {
  readonly delimiter: Delimiter;
  readonly rows: readonly SampleRow[];
  /** Some cell of the rows is a date with its marks, so that no bare number need be taken for a time. */
  readonly datesWritten: boolean;
}

/** Up to MOST_LINES lines: the first ones, where a table may begin, the last ones, and some between. */
function sampled(lines: readonly string[]): number[] {
  const all = lines.map((_, i) => i).filter((i) => lines[i].trim() !== '');
  const length = all.reduce((sum, i) => sum + lines[i].length, 0) / Math.max(1, all.length);
  const sample = Math.max(FEWEST_LINES, Math.min(MOST_LINES, 4 * Math.floor(MOST_CHARACTERS / length / 4)));
  if (all.length <= sample) return all;
  const edge = sample / 4;
  const middle = all.slice(edge, -edge);
  const step = middle.length / (sample / 2);
  const between = Array.from({ length: sample / 2 }, (_, i) => middle[Math.floor(i * step)]);
  return [...new Set([...all.slice(0, edge), ...between, ...all.slice(-edge)])];
}

const isTime = (kind: CellKind) => kind === 'datetime' || kind === 'date';

export function rowOf(line: string, index: number, delimiter: Delimiter): SampleRow {
  const cells = fieldsOf(line, delimiter).map((cell) => cell.trim());
  return { index, cells, kinds: cells.map(cellKind) };
}

export const hasTimeAndNumber = ({ kinds }: SampleRow) =>
  kinds.some(isTime) && kinds.some((kind) => kind === 'number');
const hasTimeAndRoom = ({ kinds }: SampleRow) => kinds.length > 1 && kinds.some(isTime);
const hasNumbers = ({ kinds }: SampleRow) => kinds.filter((kind) => kind === 'number').length > 1;

function plainShare(rows: readonly SampleRow[]): number {
  let plain = 0;
  let cells = 0;
  for (const { kinds } of rows) {
    cells += kinds.length;
    for (const kind of kinds) if (kind !== 'text') plain++;
  }
  return cells === 0 ? 0 : plain / cells;
}

function tableBy(
  lines: readonly string[],
  at: readonly number[],
  delimiter: Delimiter,
): Table & { score: number } {
  // One cell alone is never a reading: a line without the mark need not be looked at closely.
  const cut = at.filter((index) => lines[index].includes(delimiter));
  const rows = cut.map((index) => rowOf(lines[index], index, delimiter));
  const dated = rows.filter(hasTimeAndNumber);
  if (dated.length > 0) {
    const withRoom = rows.filter(hasTimeAndRoom);
    return { delimiter, rows: withRoom, datesWritten: true, score: dated.length + plainShare(dated) / 2 };
  }
  const numbers = rows.filter(hasNumbers);
  // Cut at the wrong mark, numbers leave texts between them: a stray line must not outweigh that.
  const score = (numbers.length * plainShare(numbers)) / 4;
  return { delimiter, rows: numbers, datesWritten: false, score };
}

/** Finds the delimiter under which most lines hold a time and a number; null where none does. */
export function findTable(lines: readonly string[], settled: Delimiter | undefined): Table | null {
  const at = sampled(lines);
  const tries = (settled === undefined ? delimiters : [settled]).map((delimiter) =>
    tableBy(lines, at, delimiter),
  );
  const best = tries.reduce((a, b) => (b.score > a.score ? b : a));
  return best.score > 0 ? best : null;
}
