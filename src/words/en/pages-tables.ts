import type { TablesPageWords } from '../../pages/tables-words.js';
import { percent, whole } from '../format.js';

const n = (count: number) => whole('en', count);

const part = (of: number) => `${percent('en', Math.abs(of), 1)} ${of < 0 ? 'less' : 'more'}`;

/** Development tables in English. */
export const pagesTables: { [Code in keyof TablesPageWords]: (words: TablesPageWords[Code]) => string } = {
  'page-tables-title': () => 'Development tables',
  'page-tables-answer': ({ tables, own }) =>
    `${n(tables)} tables say what each stage needs${own === 0 ? '; none of them is your own yet.' : `, ${own === 1 ? 'one' : n(own)} of them your own.`}`,
  'page-tables-shipped': () => 'Shipped with the program',
  'page-tables-own': () => 'Your own',
  'page-tables-beside': () => 'Two side by side',
  'page-tables-left': () => 'one table',
  'page-tables-right': () => 'the other',
  'page-tables-compare': () => 'Compare',
  'page-table-title': ({ table }) => table,
  'page-table-answer': ({ days, cold }) =>
    `Half of the eggs hatch after ${n(days)} days at a constant 5 °C, and after ${n(cold)} days at 1 °C.`,
  'page-table-answer-plain': ({ table }) =>
    `What each stage of ${table} needs, and where every number comes from.`,
  'page-table-days': ({ table }) => `${table}: the colder the water, the longer each stage takes`,
  'page-table-x': () => 'constant temperature (°C)',
  'page-table-y': () => 'days from fertilisation',
  'page-table-broken': () => 'Dotted where the row is not known to hold.',
  'page-table-needs': () => 'needs',
  'page-table-holds': () => 'known to hold',
  'page-table-holds-from': ({ min, max }) => `${min} to ${max} °C`,
  'page-table-spread': () => 'spread between eggs',
  'page-table-sources': () => 'sources',
  'page-table-limits': () => 'What harms, and the span in which eggs must not be handled',
  'page-table-multiple': ({ factor, stage }) => `${factor} × ${stage}`,
  'page-table-same': ({ stage }) => `same as ${stage}`,
  'page-table-add': () => 'Add one of your own',
  'page-table-add-what': () =>
    'From days to hatch at constant temperatures, as papers and hatchery records give them. Other forms can be written in the season file.',
  'page-table-name': () => 'name',
  'page-table-id': () => 'short name, for the season file',
  'page-table-species': () => 'species',
  'page-table-rows': () => 'days to hatch, a line a temperature',
  'page-table-rows-what': () => 'First °C, then days, as in “2\u00a0180”. At least two lines, coldest first.',
  'page-table-eye': () => 'eye-up, as a share of the way to hatch',
  'page-table-button': () => 'button-up, as a multiple of the way to hatch',
  'page-table-source': () => 'where the numbers come from',
  'page-stock-title': () => 'What your own lots have shown',
  'page-stock-none': () =>
    'Nothing yet. Where eggs of a lot are looked at and counted (so many of so many eyed or hatched), it is set beside the published table here.',
  'page-stock-shown': ({ table, lots, shown, adjustment, spread, weight }) =>
    `${table}: ${lots === 1 ? 'one lot' : `${lots} lots`} of yours needed ${part(shown)} than it says. Pulled to the published table, the more so the fewer lots there are (${percent('en', weight)} is theirs): ${part(adjustment)}, give or take ${percent('en', spread, 1)}.`,
  'page-stock-beside': () => 'Days to half hatched at a constant temperature',
  'page-stock-published': () => 'Published',
  'page-stock-own': () => 'With your lots',
  'page-stock-note': () =>
    'The forecast goes by the published table and by what was seen of each lot this season; the adjustment stands beside it. Several looks at one lot are one lot.',
  'page-stock-link': () => 'What it changes in days',
  'page-table-species-name': ({ species }) => species,
};
