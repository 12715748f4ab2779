import type { Known } from '../download.js';
import type { HeaderSays } from './header.js';
import type { SampleRow } from './table.js';
import { share } from './time-columns.js';

function distinct(rows: readonly SampleRow[], column: number): Set<string> {
  return new Set(rows.flatMap(({ cells }) => ((cells[column] ?? '') ? [cells[column]] : [])));
}

/** Whole numbers that rise from row to row count records; they name no station. */
function counts(rows: readonly SampleRow[], column: number): boolean {
  return (
    rows.length > 1 &&
    rows.every(({ cells }, i) => {
      const value = Number(cells[column]);
      return Number.isInteger(value) && (i === 0 || value > Number(rows[i - 1].cells[column]));
    })
  );
}

/** The column that names each row's station, -1 without. Names the season knows go first, then identifiers. */
export function findStation(
  rows: readonly SampleRow[],
  says: readonly HeaderSays[] | null,
  time: { readonly date: number; readonly clock: number },
  known: Known,
): number {
  if (says === null) return unnamedStation(rows, time);
  let best = -1;
  let most = 0;
  says.forEach((said, column) => {
    if (said.role !== 'station' || counts(rows, column) || distinct(rows, column).size === 0) return;
    const isKnown = [...distinct(rows, column)].some((name) => known.zoneOf(name) !== null);
    const rank = said.strength + (isKnown ? 10 : 0);
    if (rank > most) {
      most = rank;
      best = column;
    }
  });
  return best;
}

/** Without a header: a column of few names, none of which has two rows at one time, while the file has. */
function unnamedStation(
  rows: readonly SampleRow[],
  time: { readonly date: number; readonly clock: number },
): number {
  const at = ({ cells }: SampleRow) => `${cells[time.date]} ${cells[time.clock] ?? ''}`;
  if (new Set(rows.map(at)).size === rows.length) return -1;
  const width = Math.max(0, ...rows.map(({ cells }) => cells.length));
  for (let column = 0; column < width; column++) {
    if (column === time.date || column === time.clock || share(rows, column, 'text') < 0.95) continue;
    const names = distinct(rows, column).size;
    const pairs = new Set(rows.map((row) => `${at(row)}\n${row.cells[column]}`));
    if (names > 1 && names <= rows.length / 2 && pairs.size === rows.length) return column;
  }
  return -1;
}
