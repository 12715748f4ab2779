import type {
  GapResult,
  HindcastReport,
  HindcastResult,
  PlainMethod,
  StationResult,
} from '../../forecasting/hindcast/index.js';
import { allIcy, CASES, stageAsked } from '../hindcast/index.js';
import { decimal, percent, whole, words } from '../words/index.js';
import type { Face } from './face.js';
import { columns, paragraph } from './terminal-table.js';

/** A hindcast as a table for each case, error against lead date, the plain method beside it. */
export function hindcastText(report: HindcastReport, face: Face): string {
  const { language } = face;
  const width = Math.min(face.columns, 110);
  const parts = tablesOf(report.results, report.gaps, face);
  if (parts.length === 0) parts.push(words(language, 'hindcast-no-winter', {}));
  const { table, fertilised } = report;
  for (const name of new Set(report.results.map(({ stage }) => stage))) {
    const stage = stageAsked(name, language);
    parts.unshift(paragraph(words(language, 'hindcast-asked', { stage, table, fertilised }), width));
  }
  const icy = tablesOf(report.icy.results, report.icy.gaps, face);
  if (allIcy(report)) parts.push(paragraph(words(language, 'hindcast-all-icy', {}), width));
  else if (icy.length > 0) parts.push(words(language, 'hindcast-icy', {}), ...icy);
  parts.push(...apart(report, face));
  const notReached = report.results.reduce((sum, of) => sum + of.notReached, 0);
  const notes = report.notes.map(({ kind, station, winter }) =>
    kind === 'one-winter' && winter !== null
      ? words(language, 'hindcast-one-winter', { station, winter })
      : words(language, 'hindcast-no-whole-winter', { station }),
  );
  if (notReached > 0) notes.unshift(words(language, 'hindcast-not-reached', { count: notReached }));
  notes.unshift(words(language, 'hindcast-legend', {}));
  return [...parts, notes.map((note) => paragraph(note, width, '- ')).join('\n')].join('\n\n');
}

/** What tells one kind of winter, or one station, from the others. */
function apart(report: HindcastReport, face: Face): string[] {
  const { language } = face;
  const parts: string[] = [];
  const { alreadyPassed, stillToCome, pastOnly } = report;
  if (alreadyPassed.length > 0) {
    parts.push(`${words(language, 'hindcast-already-passed', {})}\n${caseTable(alreadyPassed, face)}`);
    parts.push(`${words(language, 'hindcast-still-to-come', {})}\n${caseTable(stillToCome, face)}`);
  }
  const past = tablesOf(pastOnly, [], face);
  if (past.length > 0) parts.push(words(language, 'page-hindcast-past-only', {}), ...past);
  const stations = stationTables(report.byStation, face);
  if (stations.length > 0) parts.push(words(language, 'hindcast-by-station', {}), ...stations);
  return parts;
}

function tablesOf(results: readonly HindcastResult[], gaps: readonly GapResult[], face: Face): string[] {
  const { language } = face;
  const tables: string[] = [];
  for (const of of CASES) {
    const mine = results.filter((result) => result.case === of);
    if (of === 'gaps' || mine.length === 0) continue;
    tables.push(`${words(language, `hindcast-case-${of}`, {})}\n${caseTable(mine, face)}`);
    tables.push(`${words(language, 'hindcast-beside', {})}\n${plainTable(mine, face)}`);
  }
  if (gaps.length > 0) tables.push(`${words(language, 'hindcast-gaps', {})}\n${gapTable(gaps, face)}`);
  return tables;
}

function caseTable(results: readonly HindcastResult[], { language }: Face): string {
  const days = (value: number | null | undefined) =>
    value === null || value === undefined ? '–' : decimal(language, value, 1);
  return columns(
    [
      words(language, 'hindcast-column-lead', {}),
      words(language, 'hindcast-column-n', {}),
      words(language, 'hindcast-column-error', {}),
      words(language, 'hindcast-column-bias', {}),
      words(language, 'hindcast-column-p90', {}),
      words(language, 'hindcast-column-holds', {}),
      words(language, 'hindcast-column-width', {}),
      words(language, 'hindcast-column-crps', {}),
    ],
    results.map((of) => [
      of.lead,
      whole(language, of.n),
      days(of.mae),
      days(of.bias),
      days(of.p90),
      of.coverage80 === null ? '–' : percent(language, of.coverage80),
      days(of.width80),
      days(of.crps),
    ]),
    [1, 2, 3, 4, 5, 6, 7],
  );
}

function plainTable(results: readonly HindcastResult[], { language }: Face): string {
  const named: readonly (readonly [PlainMethod, string])[] = [
    ['ensemble', words(language, 'hindcast-plain-ensemble', {})],
    ['bestNeighbour', words(language, 'hindcast-plain-neighbour', {})],
    ['bestNeighbourBeyond1km', words(language, 'hindcast-plain-far-neighbour', {})],
    ['persistence', words(language, 'page-hindcast-persistence', {})],
  ];
  const methods = named.filter(([method]) =>
    results.some(({ reference }) => reference[method] !== undefined),
  );
  return columns(
    [words(language, 'hindcast-column-lead', {}), ...methods.map(([, name]) => name)],
    results.map(({ lead, reference }) => [
      lead,
      ...methods.map(([method]) => {
        const found = reference[method];
        return found === undefined
          ? '–'
          : `${decimal(language, found.mae, 1)} (${decimal(language, found.ownMae, 1)})`;
      }),
    ]),
    methods.map((_, i) => i + 1),
  );
}

/** For each case a row a station, its error at each lead date. */
function stationTables(results: readonly StationResult[], { language }: Face): string[] {
  return CASES.flatMap((of) => {
    const mine = results.filter((result) => result.case === of);
    if (of === 'gaps' || mine.length === 0) return [];
    const leads = [...new Set(mine.map(({ lead }) => lead))];
    const rows = [...new Set(mine.map(({ station }) => station))].map((station) => [
      station,
      ...leads.map((lead) => {
        const found = mine.find((result) => result.station === station && result.lead === lead);
        return found === undefined || found.mae === null
          ? '–'
          : `${decimal(language, found.mae, 1)} (${whole(language, found.n)})`;
      }),
    ]);
    const head = [words(language, 'hindcast-column-station', {}), ...leads];
    const right = leads.map((_, i) => i + 1);
    return [`${words(language, `hindcast-case-${of}`, {})}\n${columns(head, rows, right)}`];
  });
}

function gapTable(gaps: readonly GapResult[], { language }: Face): string {
  const degrees = (value: number | null) =>
    value === null || !Number.isFinite(value) ? '–' : decimal(language, value, 2);
  return columns(
    [
      words(language, 'hindcast-column-days', {}),
      words(language, 'hindcast-column-n', {}),
      words(language, 'hindcast-column-error', {}),
      words(language, 'hindcast-column-holds', {}),
      words(language, 'hindcast-plain-line', {}),
      words(language, 'hindcast-plain-neighbour', {}),
    ],
    gaps.map((of) => [
      whole(language, of.days),
      whole(language, of.n),
      degrees(of.rmse),
      Number.isFinite(of.coverage80) ? percent(language, of.coverage80) : '–',
      degrees(of.reference.line.rmse),
      degrees(of.reference.bestNeighbour.rmse),
    ]),
    [0, 1, 2, 3, 4, 5],
  );
}
