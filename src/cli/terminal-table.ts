import Table from 'cli-table3';
import wrap from 'wrap-ansi';

const open = {
  top: '',
  'top-mid': '',
  'top-left': '',
  'top-right': '',
  bottom: '',
  'bottom-mid': '',
  'bottom-left': '',
  'bottom-right': '',
  left: '',
  'left-mid': '',
  mid: '',
  'mid-mid': '',
  right: '',
  'right-mid': '',
  middle: '   ',
};

/** Columns of text under their headings, no frame: it reads well aloud and in a narrow terminal. */
export function columns(
  head: readonly string[],
  rows: readonly (readonly string[])[],
  right: readonly number[] = [],
): string {
  const table = new Table({
    head: [...head],
    chars: open,
    style: { head: [], border: [], 'padding-left': 0, 'padding-right': 0, compact: true },
    colAligns: head.map((_, column) => (right.includes(column) ? 'right' : 'left')),
  });
  for (const row of rows) table.push([...row]);
  return table
    .toString()
    .split('\n')
    .map((line) => line.trimEnd())
    .join('\n');
}

/**
 * A paragraph broken at spaces to a width, continued lines set in under the first; never at a no-break space, inside a
 * French quote's mark, before a mark that French sets apart, or between a figure and its unit.
 */
export function paragraph(text: string, width: number, bullet = ''): string {
  const indent = ' '.repeat(bullet.length);
  const held = text.replace(NEVER_BROKEN, HELD);
  const lines = wrap(held, Math.max(20, width - bullet.length)).replaceAll(HELD, ' ');
  return bullet + lines.replaceAll('\n', `\n${indent}`);
}

const NEVER_BROKEN =
  /(?<=«) | (?=[»:;?!](?:\s|[.,)]|$))|(?<=\d) (?=(?:%|°C|h)(?![\p{L}]))|(?<=\d h) (?=\d)/gu;
/** A space at which no line is broken. */
const HELD = '\u00a0';
