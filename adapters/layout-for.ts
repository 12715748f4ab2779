import iconv from 'iconv-lite';
import type { SettledLayout } from './download.js';
import { encodingOf } from './source/encoding.js';

/** How a download is known to be of a saved layout. */
export type LayoutMark =
  /** Columns, by their headers, that stand in one line near the file's beginning, in this order or another. */
  | { readonly header: readonly string[] }
  /** How the file's first line begins. */
  | { readonly opening: string }
  /** For files that say nothing of themselves: a part of their name. */
  | { readonly fileName: string };

/** A layout that a group meets every year, as it keeps it. */
export interface SavedLayout {
  readonly name: string;
  readonly match: LayoutMark;
  readonly settled: SettledLayout;
}

const plain = (text: string): string =>
  text
    .normalize('NFC')
    .replace(/^\uFEFF/, '')
    .replace(/["'\s]+/g, ' ')
    .trim()
    .toLowerCase();

/** A header stands this near to the beginning, or the file is not known by it. */
const LINES_LOOKED_AT = 300;

function matches(
  { match, settled: parts }: SavedLayout,
  fileName: string,
  lines: readonly string[],
): boolean {
  if ('fileName' in match) return plain(fileName).includes(plain(match.fileName));
  if ('opening' in match) return plain(lines[0] ?? '').startsWith(plain(match.opening));
  const wanted = match.header.map(plain);
  return lines.some((line) => {
    const cells = new Set(line.split(parts.delimiter ?? /[,;\t|]/).map(plain));
    return wanted.every((header) => cells.has(header));
  });
}

const weight = ({ match }: SavedLayout): number =>
  'header' in match ? match.header.join('').length : 'opening' in match ? match.opening.length : 0;

/**
 * The saved layout a download is of: the one that asks most of it. Where two ask equally much it is neither.
 *
 * @param head the file's first bytes, after any gzip was undone
 */
export function layoutFor(
  layouts: readonly SavedLayout[],
  fileName: string,
  head: Uint8Array,
): SavedLayout | null {
  const text = iconv.decode(Buffer.from(head), encodingOf(head).encoding);
  const lines = text.split(/\r\n?|\n/, LINES_LOOKED_AT);
  const fitting = layouts
    .filter((layout) => matches(layout, fileName, lines))
    .sort((a, b) => weight(b) - weight(a));
  const [best, next] = fitting;
  if (best === undefined || (next !== undefined && weight(next) === weight(best))) return null;
  return best;
}
