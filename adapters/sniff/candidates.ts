import { type Asked, DownloadRefused, type Known, type TemperatureUnit } from '../download.js';
import { fold } from './fold.js';
import type { HeaderSays } from './header.js';
import type { SampleRow } from './table.js';
import { columnName } from './time-columns.js';

/** A column that could be taken for a temperature. */
export interface Candidate {
  readonly index: number;
  readonly name: string;
  readonly says: HeaderSays;
}

export interface ValueContext {
  readonly rows: readonly SampleRow[];
  readonly headers: readonly string[] | null;
  readonly says: readonly HeaderSays[];
  /** Positions that are spoken for: time, station, unit. */
  readonly taken: ReadonlySet<number>;
  readonly asked: Asked;
  readonly known: Known;
  readonly preambleUnit: TemperatureUnit | null;
  readonly preambleMedium: 'water' | 'air' | null;
  readonly hasUnitColumn: boolean;
  readonly hasStationColumn: boolean;
  /** The first reading as it stands in the file, for questions. */
  readonly firstLine: string;
}

/** The numbers that the sampled rows have in a column. */
export function numbersIn(rows: readonly SampleRow[], column: number): number[] {
  const found: number[] = [];
  for (const { cells, kinds } of rows)
    if (kinds[column] === 'number')
      found.push(Number.parseFloat(cells[column].replace(',', '.').replace(/^[\u2212]/, '-')));
  return found;
}

/** 1, 2, 3, … : a counter of records. */
function isCounter(values: readonly number[]): boolean {
  return values.length > 1 && values.every((v, i) => Number.isInteger(v) && (i === 0 || v > values[i - 1]));
}

/** The columns that may hold values: headed so, or numbers that nothing explains. */
export function candidatesOf(context: ValueContext): Candidate[] {
  const { rows, headers, says, taken } = context;
  const width = Math.max(headers?.length ?? 0, ...rows.map(({ cells }) => cells.length));
  const found: Candidate[] = [];
  for (let index = 0; index < width; index++) {
    if (taken.has(index)) continue;
    const said = says[index];
    const values = numbersIn(rows, index);
    const written = rows.filter(({ kinds }) => kinds[index] === 'text' || kinds[index] === 'clock');
    if (said !== undefined && said.role !== 'value' && said.role !== 'unknown') continue;
    if (values.length === 0 && (said?.strength ?? 0) < 7) continue;
    if (
      (said === undefined || said.role === 'unknown') &&
      (values.length < written.length || isCounter(values))
    )
      continue;
    found.push({ index, name: columnName(headers, index), says: said ?? unexplained });
  }
  return found;
}

const unexplained: HeaderSays = {
  role: 'unknown',
  quantity: 'temperature',
  medium: null,
  statistic: null,
  unit: null,
  factor: null,
  strength: 0,
};

/** The column a person named: by header as people write it, by its number, or by a part only one header has. */
export function columnAsked(context: ValueContext, asked: string): Candidate {
  const { headers, rows, says } = context;
  const width = Math.max(headers?.length ?? 0, ...rows.map(({ cells }) => cells.length));
  const at = (index: number): Candidate => ({
    index,
    name: columnName(headers, index),
    says: says[index] ?? unexplained,
  });
  const all = Array.from({ length: width }, (_, i) => at(i));
  const number = /^#?(\d+)$/.exec(asked.trim());
  const exact = all.filter(({ name }) => name === asked.trim());
  const same = exact.length === 1 ? exact : all.filter(({ name }) => fold(name) === fold(asked));
  const part = same.length === 1 ? same : all.filter(({ name }) => fold(name).includes(fold(asked)));
  if (part.length === 1) return part[0];
  if (number !== null && Number(number[1]) >= 1 && Number(number[1]) <= width)
    return at(Number(number[1]) - 1);
  const columns = all.map(({ name }) => name);
  throw new DownloadRefused(
    { code: 'unknown-column', with: { asked, headers: columns } },
    { code: 'which-column', with: { columns } },
  );
}
