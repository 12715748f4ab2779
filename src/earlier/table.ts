import Papa from 'papaparse';
import { EarlierRefused } from './refused.js';

/** What a table of past seasons can tell of a box. */
export const earlierFields = [
  'season',
  'site',
  'box',
  'lot',
  'planted',
  'lifted',
  'eggs',
  'empty',
  'dead',
  'note',
] as const;
export type EarlierField = (typeof earlierFields)[number];
export const isEarlierField = (name: string): name is EarlierField =>
  earlierFields.some((field) => field === name);

/** Headers a person writes, without accents and capitals. */
const USUAL: Readonly<Record<EarlierField, RegExp>> = {
  season: /^(season|year|saison|annee)\b/,
  site: /^(site|river|riviere|place|lieu)\b/,
  box: /^(box|incubator|incubateur|boite)\b/,
  lot: /^(lot|batch|family|famille)\b/,
  planted: /^(planted|planting|date planted|mis|mise|plante)/,
  lifted: /^(lifted|lifting|date lifted|removed|leve|levee|retire)/,
  eggs: /^(eggs|number of eggs|nombre d.?oeufs|oeufs|nb oeufs)/,
  empty: /^(empty|empties|left|vides|vide|partis)/,
  dead: /^(dead|morts|mort)/,
  note: /^(note|notes|remark|remarque|comment)/,
};

const MOST_ROWS = 20_000;

/** Which header stands for which field; null where none does. */
export type Columns = Readonly<Record<EarlierField, string | null>>;

export interface EarlierBox {
  readonly [field: string]: string;
}

export interface EarlierTable {
  readonly headers: readonly string[];
  readonly columns: Columns;
  readonly boxes: readonly EarlierBox[];
}

/**
 * A table of past boxes: the first line names the columns, `asked` says which column is which where the headers do
 * not. Dates are year-month-day; a number with its thousands set apart is asked about, never read as a decimal.
 * @throws EarlierRefused naming the line, the column and what stood there
 */
export function readEarlier(text: string, asked: Partial<Record<EarlierField, string>> = {}): EarlierTable {
  const clean = text.replace(/^\uFEFF/, '');
  if (clean.includes('\u0000')) throw new EarlierRefused({ code: 'earlier-not-a-table', with: {} });
  const lines = Papa.parse<string[]>(clean, { delimiter: delimiterOf(clean), skipEmptyLines: 'greedy' }).data;
  const [first, ...rest] = lines;
  if (first === undefined || first.length < 2 || rest.length === 0)
    throw new EarlierRefused({ code: 'earlier-not-a-table', with: {} });
  if (rest.length > MOST_ROWS)
    throw new EarlierRefused({ code: 'earlier-too-long', with: { rows: rest.length, most: MOST_ROWS } });
  const headers = first.map((header) => header.trim());
  const columns = matched(headers, asked);
  const boxes = rest.map((row, i) => boxOf(row, headers, columns, i + 2));
  return { headers, columns, boxes };
}

/** The sign that divides the first line most often. */
function delimiterOf(text: string): string {
  const line = text.slice(0, 4000).split('\n')[0] ?? '';
  const times = (sign: string) => line.split(sign).length;
  return [';', '\t', '|'].reduce((best, sign) => (times(sign) > times(best) ? sign : best), ',');
}

function matched(headers: readonly string[], asked: Partial<Record<EarlierField, string>>): Columns {
  const taken = new Set<string>();
  const find = (field: EarlierField): string | null => {
    const named = asked[field];
    if (named !== undefined) {
      if (named === '') return null;
      const there = headers.find((header) => header.toLowerCase() === named.trim().toLowerCase());
      if (there === undefined)
        throw new EarlierRefused({ code: 'earlier-no-column', with: { column: named, headers } });
      return there;
    }
    return headers.find((header) => !taken.has(header) && USUAL[field].test(plain(header))) ?? null;
  };
  const columns: Record<EarlierField, string | null> = {
    season: null,
    site: null,
    box: null,
    lot: null,
    planted: null,
    lifted: null,
    eggs: null,
    empty: null,
    dead: null,
    note: null,
  };
  for (const field of earlierFields) {
    columns[field] = find(field);
    if (columns[field] !== null) taken.add(columns[field]);
  }
  if (columns.season === null || (columns.box === null && columns.site === null))
    throw new EarlierRefused({ code: 'earlier-columns', with: { headers } });
  return columns;
}

const plain = (header: string): string =>
  header.toLowerCase().replaceAll('œ', 'oe').normalize('NFD').replace(/\p{M}/gu, '');

const DATE = /^\d{4}-\d{2}-\d{2}(?:[ T]00:00(?::00)?)?$/;

function boxOf(
  row: readonly string[],
  headers: readonly string[],
  columns: Columns,
  line: number,
): EarlierBox {
  const pairs = earlierFields.flatMap((field): [string, string][] => {
    const column = columns[field];
    if (column === null) return [];
    const given = (row[headers.indexOf(column)] ?? '').trim();
    if (given === '') return [];
    const shown = { line, column, given: given.slice(0, 60) };
    if (field === 'planted' || field === 'lifted') {
      if (!DATE.test(given)) throw new EarlierRefused({ code: 'earlier-cell', with: shown });
      return [[field, given.slice(0, 10)]];
    }
    const counts = field === 'eggs' || field === 'empty' || field === 'dead';
    if (counts && !/^\d+$/.test(given)) throw new EarlierRefused({ code: 'earlier-cell-count', with: shown });
    return [[field, given]];
  });
  return Object.fromEntries(pairs);
}
