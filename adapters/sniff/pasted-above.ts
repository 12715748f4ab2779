import { type Delimiter, DownloadRefused } from '../download.js';
import { shown } from '../reading/row-values.js';
import { delimiters, hasTimeAndNumber, rowOf } from './table.js';

/** Lines looked at above the first reading, and how many of them make another table: a preamble may hold a few. */
const LOOKED_AT = 40;
const ANOTHER_TABLE = 5;

/**
 * Refuses a file whose table goes on from one of another layout, which would otherwise pass for a long preamble:
 * half a winter would be left out without a word.
 *
 * @param first position of the first reading
 * @throws DownloadRefused 'layout-changes' with the line from which on it does
 */
export function refusePastedAbove(lines: readonly string[], first: number, delimiter: Delimiter): void {
  let readings = 0;
  let moved = false;
  for (let i = first - 1, seen = 0; i >= 0 && seen < LOOKED_AT; i--) {
    if (lines[i].trim() === '') continue;
    seen++;
    const marks = delimiters.filter((mark) => hasTimeAndNumber(rowOf(lines[i], i, mark)));
    if (marks.length === 0) continue;
    readings++;
    moved ||= marks.includes(delimiter);
  }
  if (readings < ANOTHER_TABLE) return;
  const code = moved ? 'line-columns-moved' : 'line-other-delimiter';
  const reason = { code, with: { text: shown(lines[first].trim()) } } as const;
  throw new DownloadRefused({ code: 'layout-changes', with: { line: first + 1, reason } });
}
