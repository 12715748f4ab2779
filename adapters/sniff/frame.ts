import type { Asked, Delimiter } from '../download.js';
import { fieldsOf } from '../fields/quoted.js';
import { cellKind } from './cells.js';
import { type HeaderSays, readHeader } from './header.js';
import { findHeader, type HeaderRow, headerAt } from './header-row.js';
import { positionOf } from './layout-columns.js';
import { refusePastedAbove } from './pasted-above.js';
import { type Preamble, readPreamble } from './preamble.js';
import { findTable, type SampleRow, type Table } from './table.js';
import { countedForm, findTime, type TimeFound } from './time-columns.js';

/** Where in a file its table stands and which of its columns hold the time. */
export interface Frame {
  readonly lines: readonly string[];
  readonly delimiter: Delimiter;
  /** Position of the first reading in `lines`. */
  readonly first: number;
  readonly header: HeaderRow | null;
  readonly says: readonly HeaderSays[] | null;
  readonly preamble: Preamble;
  readonly time: TimeFound;
  /** Sampled rows that hold a time where it is expected. */
  readonly rows: readonly SampleRow[];
  readonly width: number;
}

const isTime = (kind: string | undefined) => kind === 'datetime' || kind === 'date';

function usualWidth(rows: readonly SampleRow[]): number {
  const counts = new Map<number, number>();
  for (const { cells } of rows) counts.set(cells.length, (counts.get(cells.length) ?? 0) + 1);
  return [...counts].reduce((a, b) => (b[1] > a[1] || (b[1] === a[1] && b[0] > a[0]) ? b : a))[0];
}

/** Whether a row holds a time where the table has it and something beside it. */
function isReading(row: SampleRow, time: TimeFound, width: number, datesWritten: boolean): boolean {
  const { cells, kinds } = row;
  if (datesWritten ? !isTime(kinds[time.date]) : kinds[time.date] !== 'number') return false;
  return cells.length === width || kinds.some((kind, i) => kind === 'number' && i !== time.date);
}

/** The very first reading may stand between two sampled lines: walk back to it. */
function firstReading(
  lines: readonly string[],
  table: Table,
  row: SampleRow,
  time: TimeFound,
  width: number,
): number {
  let first = row.index;
  for (let i = row.index - 1; i >= 0; i--) {
    if (lines[i].trim() === '') continue;
    const cells = fieldsOf(lines[i], table.delimiter).map((cell) => cell.trim());
    const above: SampleRow = { index: i, cells, kinds: cells.map(cellKind) };
    if (!isReading(above, time, width, table.datesWritten)) break;
    first = i;
  }
  return first;
}

/** The columns a saved layout names; how they are written, and an offset beside them, the file still shows. */
function settledTime(
  found: TimeFound,
  rows: readonly SampleRow[],
  asked: Asked,
  headers: readonly string[] | null,
  width: number,
): TimeFound {
  const named = asked.layout?.time;
  if (named === undefined || named.length === 0) return found;
  const [date, clock = -1] = named.map((name) => positionOf(name, headers, width));
  return {
    form: countedForm(rows, date) ?? 'civil',
    date,
    clock,
    zone: found.zone === date ? -1 : found.zone,
    parts: [],
  };
}

/** Finds the table in the head of a file; null where nothing in it looks like readings. */
export function frameOf(lines: readonly string[], asked: Asked): Frame | null {
  const table = findTable(lines, asked.layout?.delimiter);
  if (table === null) return null;
  const { delimiter, datesWritten } = table;
  const guess = findTime(table, [], []);
  if (guess === null) return null;
  const timed = table.rows.filter(({ kinds }) => (datesWritten ? isTime(kinds[guess.date]) : true));
  const width = usualWidth(timed);
  const start = timed.find((row) => isReading(row, guess, width, datesWritten));
  if (start === undefined) return null;
  const first = firstReading(lines, table, start, guess, width);
  refusePastedAbove(lines, first, delimiter);
  const header = headerOf(lines, first, width, delimiter, asked);
  const says = header?.headers.map((text, i) => readHeader(`${text} ${header.units[i]}`.trim())) ?? null;
  const rowsBelow = timed.filter(({ index }) => index >= first);
  const found = findTime({ ...table, rows: rowsBelow }, header?.headers ?? [], says ?? []) ?? guess;
  const time = settledTime(found, rowsBelow, asked, header?.headers ?? null, width);
  const rows = rowsBelow.filter((row) => isReading(row, time, width, datesWritten));
  const preamble = readPreamble(lines.slice(0, header?.index ?? first), delimiter);
  return { lines, delimiter, first, header, says, preamble, time, rows, width };
}

function headerOf(
  lines: readonly string[],
  first: number,
  width: number,
  delimiter: Delimiter,
  asked: Asked,
): HeaderRow | null {
  const line = asked.layout?.headerLine;
  if (line === 0) return null;
  return line === undefined
    ? findHeader(lines, first, width, delimiter)
    : headerAt(lines, line - 1, first, delimiter);
}
