import type { HindcastReport, HindcastReportRow } from '../../forecasting/hindcast/index.js';

const METHODS = ['ensemble', 'bestNeighbour', 'bestNeighbourBeyond1km', 'persistence'] as const;
const COLUMNS = [
  'case',
  'lead',
  'stage',
  'station',
  'winter',
  'icy',
  'observed',
  'p10',
  'p50',
  'p90',
  'observed_days',
  'p10_days',
  'p50_days',
  'p90_days',
  ...METHODS.map((method) => `${method}_days`),
] as const;

/** Every hidden winter as a line; a date that never comes, or a method without an answer, is empty. */
export function* hindcastLines(
  { rows }: Pick<HindcastReport, 'rows'>,
  text: (value: string) => string,
): Generator<string> {
  yield COLUMNS.join(',');
  for (const row of rows) yield line(row, text);
}

function line(row: HindcastReportRow, text: (value: string) => string): string {
  const days = (value: number | null | undefined) => (value == null ? '' : value.toFixed(2));
  return [
    row.case,
    row.lead,
    text(row.stage),
    text(row.station),
    row.winter,
    row.icy ? 1 : 0,
    row.observed ?? '',
    row.p10 ?? '',
    row.p50 ?? '',
    row.p90 ?? '',
    days(row.observedDays),
    days(row.p10Days),
    days(row.p50Days),
    days(row.p90Days),
    ...METHODS.map((method) => days(row.reference[method])),
  ].join(',');
}
