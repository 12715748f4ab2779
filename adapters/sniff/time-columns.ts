import { abbreviatedOffset, foldWord } from '../fields/words-of-time.js';
import type { TimeColumns, TimeForm } from '../reading/plan.js';
import { zoneNamed } from '../zones/zone.js';
import { type CellKind, timeReadings } from './cells.js';
import { findDateParts } from './date-parts.js';
import type { HeaderSays } from './header.js';
import { clockInHeader } from './stated-clock.js';
import type { SampleRow, Table } from './table.js';

/** Share of rows in which a column must hold a time, of those in which the best column does. */
const NEARLY_ALL = 0.6;

export interface TimeFound {
  readonly form: TimeForm;
  readonly date: number;
  readonly clock: number;
  readonly zone: number;
  readonly parts: readonly number[];
}

interface Candidate {
  readonly column: number;
  readonly count: number;
  readonly rank: number;
}

const isTime = (kind: CellKind | undefined) => kind === 'datetime' || kind === 'date';

export function share(rows: readonly SampleRow[], column: number, kind: CellKind): number {
  return rows.filter(({ kinds }) => kinds[column] === kind).length / Math.max(1, rows.length);
}

function width(rows: readonly SampleRow[]): number {
  return rows.reduce((widest, { cells }) => Math.max(widest, cells.length), 0);
}

/** Which column holds the dates: its header, an offset in it and a clock beside the date speak for it. */
function dateColumn(
  rows: readonly SampleRow[],
  headers: readonly string[],
  says: readonly HeaderSays[],
): number {
  const candidates: Candidate[] = [];
  const columns = width(rows);
  for (let column = 0; column < columns; column++) {
    const count = rows.filter(({ kinds }) => isTime(kinds[column])).length;
    const rank =
      (says[column]?.role === 'time' ? 4 : 0) +
      (share(rows, column, 'datetime') > 0.5 ? 2 : 0) +
      (clockInHeader(headers[column] ?? '')?.kind === 'zone' ? 1 : 0);
    candidates.push({ column, count, rank });
  }
  const most = Math.max(...candidates.map(({ count }) => count));
  const fit = candidates.filter(({ count }) => count > 0 && count >= NEARLY_ALL * most);
  return fit.reduce((a, b) => (b.rank > a.rank ? b : a)).column;
}

function clockColumn(rows: readonly SampleRow[], date: number, says: readonly HeaderSays[]): number {
  let best = -1;
  const columns = width(rows);
  for (let column = 0; column < columns; column++) {
    const written = share(rows, column, 'clock') > 0.5;
    const counted =
      says[column]?.role === 'time' &&
      rows.every(({ cells }) => cells[column] === undefined || /^\d{3,4}$/.test(cells[column]));
    if (column === date || (!written && !counted)) continue;
    if (best < 0 || Math.abs(column - date) < Math.abs(best - date)) best = column;
  }
  return best;
}

function zoneColumn(rows: readonly SampleRow[], date: number, says: readonly HeaderSays[]): number {
  const isOffset = (cell: string | undefined) =>
    cell !== undefined &&
    (abbreviatedOffset(foldWord(cell)) !== null ||
      (/^(?:UTC|GMT)?[+-]\d/i.test(cell) && zoneNamed(cell) !== null));
  const columns = width(rows);
  for (let column = 0; column < columns; column++) {
    if (column === date) continue;
    const offsets = rows.filter(({ cells }) => isOffset(cells[column])).length;
    const named = says[column]?.role === 'zone';
    const texts = share(rows, column, 'text') > 0.5;
    if (offsets > 0.5 * rows.length && (named || texts)) return column;
  }
  return -1;
}

/** Numbers that never fall and lie where instants of loggers lie. Ranges: 1980 to 2100. */
const forms: readonly { readonly form: TimeForm; fits(cell: string): boolean }[] = [
  { form: 'civil', fits: (cell) => /^(?:\d{8}|\d{12}|\d{14})$/.test(cell) && timeReadings(cell).length > 0 },
  { form: 'epoch-seconds', fits: (cell) => inRange(cell, 315_532_800, 4_102_444_800) },
  { form: 'epoch-millis', fits: (cell) => inRange(cell, 315_532_800_000, 4_102_444_800_000) },
  { form: 'serial-days', fits: (cell) => inRange(cell, 29_221, 73_051) },
];

function inRange(cell: string, from: number, to: number): boolean {
  const value = Number(cell.replace(',', '.'));
  return value >= from && value < to;
}

function neverFalls(rows: readonly SampleRow[], column: number): boolean {
  const values = rows.map(({ cells }) => Number((cells[column] ?? '').replace(',', '.')));
  const steps = values.slice(1).map((value, i) => value - values[i]);
  const falling = steps.filter((step) => step < 0).length;
  return falling <= 0.1 * steps.length || falling >= 0.9 * steps.length;
}

/** How the numbers of a column count time; null where they do not. */
export function countedForm(rows: readonly SampleRow[], column: number): TimeForm | null {
  const numbers = rows.filter(({ kinds }) => kinds[column] === 'number');
  if (numbers.length < NEARLY_ALL * rows.length) return null;
  const enough = 0.9 * numbers.length;
  const found = forms.find(({ fits }) => numbers.filter(({ cells }) => fits(cells[column])).length >= enough);
  return found?.form ?? null;
}

function countedColumn(rows: readonly SampleRow[], says: readonly HeaderSays[]): TimeFound | null {
  const found: (TimeFound & { rank: number })[] = [];
  const columns = width(rows);
  for (let column = 0; column < columns; column++) {
    const form = countedForm(rows, column);
    const named = says[column]?.role === 'time';
    const numbers = rows.filter(({ kinds }) => kinds[column] === 'number');
    if (form === null || (!named && !neverFalls(numbers, column))) continue;
    const clock = form === 'civil' ? clockColumn(numbers, column, says) : -1;
    found.push({ form, date: column, clock, zone: -1, parts: [], rank: named ? 1 : 0 });
  }
  if (found.length === 0) return null;
  return found.reduce((a, b) => (b.rank > a.rank ? b : a));
}

function partsColumns(
  rows: readonly SampleRow[],
  headers: readonly string[],
  says: readonly HeaderSays[],
): TimeFound | null {
  const parts = findDateParts(rows, headers);
  if (parts === null) return null;
  const [year, , , hour] = parts;
  const clock = hour < 0 ? clockColumn(rows, year, says) : -1;
  return { form: 'date-parts', date: year, clock, zone: zoneColumn(rows, year, says), parts };
}

/** Finds the time among the columns of a table; null where no column can be one. */
export function findTime(
  table: Table,
  headers: readonly string[],
  says: readonly HeaderSays[],
): TimeFound | null {
  const { rows } = table;
  if (!table.datesWritten) return partsColumns(rows, headers, says) ?? countedColumn(rows, says);
  const date = dateColumn(rows, headers, says);
  const dated = rows.filter(({ kinds }) => isTime(kinds[date]));
  const needsClock = share(dated, date, 'date') > 0.5 || dated.every(({ cells }) => atMidnight(cells[date]));
  const clock = needsClock ? clockColumn(dated, date, says) : -1;
  return { form: 'civil', date, clock, zone: zoneColumn(dated, date, says), parts: [] };
}

function atMidnight(cell: string): boolean {
  return timeReadings(cell).every(({ at }) => at % 86_400_000 === 0);
}

export function namesOf(found: TimeFound, headers: readonly string[] | null): TimeColumns {
  const dates = found.form === 'date-parts' ? found.parts.filter((column) => column >= 0) : [found.date];
  const positions = found.clock < 0 ? dates : [...dates, found.clock];
  return { ...found, names: positions.map((i) => columnName(headers, i)) };
}

/** A column's header as the file has it, or `#N` counted from 1. */
export function columnName(headers: readonly string[] | null, column: number): string {
  const header = headers?.[column]?.trim();
  return header === undefined || header === '' ? `#${column + 1}` : header;
}
