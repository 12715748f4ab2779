import type { EarlierWords } from '../../earlier/index.js';
import { whole } from '../format.js';

export const earlier: { [Code in keyof EarlierWords]: (figures: EarlierWords[Code]) => string } = {
  'earlier-columns': ({ headers }) =>
    `These columns do not tell which season and which box or site a line is about: ${headers.join(', ')}. Say which column is which (season, and box or site).`,
  'earlier-no-column': ({ column, headers }) =>
    `There is no column “${column}”. There are: ${headers.join(', ')}.`,
  'earlier-no-field': ({ field, fields }) =>
    `“${field}” is nothing a past box has. There are: ${fields.join(', ')}.`,
  'earlier-not-a-table': () =>
    'This is not a table: a first line with the columns’ names, then a line a box (CSV or .xlsx).',
  'earlier-too-long': ({ rows, most }) =>
    `The table has ${whole('en', rows)} lines; ${whole('en', most)} is the most taken: divide it.`,
  'earlier-cell': ({ line, column, given }) =>
    `Line ${line}, ${column}: “${given}” is not a date: write 2024-11-04. Nothing was kept.`,
  'earlier-cell-count': ({ line, column, given }) =>
    `Line ${line}, ${column}: “${given}” is not a whole number written without separators, such as 13000. Nothing was kept.`,
  'earlier-unknown': ({ id }) => `No table of past seasons is kept as “${id}”.`,
  'earlier-twice': ({ file, id }) => `The same table is kept already, from ${file} (${id}).`,
  'cli-earlier': () => 'plantings and tallies of past seasons: load, list, withdraw',
  'cli-earlier-load': () => 'take a table (CSV or .xlsx) of past boxes, a line a box',
  'cli-earlier-list': () => 'tables of past seasons that are kept',
  'cli-earlier-withdraw': () => 'take a table of past seasons out again',
  'cli-earlier-id': () => 'as “earlier list” shows it',
  'cli-earlier-column': () => 'which column is which, such as eggs="No. of eggs"',
  'cli-earlier-sheet': () => 'the sheet of a workbook (else the first)',
  'cli-earlier-dry-run': () => 'say what was understood and keep nothing',
  'cli-earlier-understood': ({ file, boxes, seasons, columns }) =>
    `${file}: ${whole('en', boxes)} boxes of ${seasons.join(', ')}. Columns: ${columns.join('; ')}.`,
  'cli-earlier-kept': ({ id }) => `Kept as ${id}; “underice earlier withdraw ${id}” takes it out again.`,
  'cli-earlier-not-kept': () => 'Nothing was kept (--dry-run).',
  'cli-earlier-none': () => 'No table of past seasons is kept.',
  'cli-earlier-withdrawn': ({ id }) => `${id} is taken out.`,
  'cli-earlier-line': ({ id, file, boxes }) => `${id}  ${file}: ${whole('en', boxes)} boxes`,
};
