import type { Delimiter } from '../download.js';
import { plain } from '../fields/plain.js';
import { fieldsOf } from '../fields/quoted.js';
import { cellKind } from './cells.js';
import { readHeader } from './header.js';
import { temperatureUnit } from './unit-text.js';

/** How far above the first reading a header may stand, in lines that are not empty. */
const REACH = 12;

export interface HeaderRow {
  /** Position in the lines of the head, from 0. */
  readonly index: number;
  readonly headers: readonly string[];
  /** What the line of units below adds to each header; same length. */
  readonly units: readonly string[];
}

const cells = (line: string, delimiter: Delimiter) =>
  fieldsOf(line.replace(/^\s*(?:#|\/\/)\s*/, ''), delimiter).map(plain);

/** How much the fields of a line look like headers: what the vocabulary knows, none of it numbers. */
function score(fields: readonly string[], width: number): number {
  if (fields.length < 2 || fields.some((field) => cellKind(field) === 'datetime')) return 0;
  const filled = fields.filter((field) => field !== '');
  if (filled.filter((field) => cellKind(field) === 'number').length > filled.length / 2) return 0;
  const known = fields.map((field) => readHeader(field)).filter(({ role }) => role !== 'unknown');
  const strength = known.reduce((sum, says) => sum + says.strength, 0);
  return known.length === 0 ? 0 : strength + (fields.length === width ? 10 : 0);
}

/**
 * Finds the header among the lines above the first reading. Where the vocabulary knows none of them, the line
 * right above counts when it is as wide as the readings and all words (station names, say).
 */
export function findHeader(
  lines: readonly string[],
  firstReading: number,
  width: number,
  delimiter: Delimiter,
): HeaderRow | null {
  const above: number[] = [];
  for (let i = firstReading - 1; i >= 0 && above.length < REACH; i--)
    if (lines[i].trim() !== '') above.push(i);
  let best = -1;
  let most = 0;
  for (const i of above) {
    const found = score(cells(lines[i], delimiter), width);
    if (found > most) {
      most = found;
      best = i;
    }
  }
  if (best < 0 && above.length > 0) {
    const fields = cells(lines[above[0]], delimiter);
    if (fields.length === width && width > 1 && fields.every((field) => cellKind(field) === 'text'))
      best = above[0];
  }
  return best < 0 ? null : headerAt(lines, best, firstReading, delimiter);
}

/** The header in a given line, with the line of units below it. */
export function headerAt(
  lines: readonly string[],
  index: number,
  firstReading: number,
  delimiter: Delimiter,
): HeaderRow {
  const headers = cells(lines[index], delimiter);
  const units = headers.map(() => '');
  for (let i = index + 1; i < firstReading; i++) {
    const below = cells(lines[i], delimiter);
    if (
      below.length < 2 ||
      !below.some((field) => temperatureUnit(field) !== null || /^\W*(?:UTC|GMT)/i.test(field))
    )
      continue;
    below.forEach((field, column) => {
      if (column < units.length) units[column] = field;
    });
  }
  return { index, headers, units };
}
