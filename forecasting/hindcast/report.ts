import type { HindcastOptions, HindcastRow, HindcastRows, PlainMethod } from './contract.js';
import { type GapResult, type HindcastResult, monthDay, summarise, summariseGaps } from './summary.js';

/** What `underice hindcast --json`, the API and the page show. */
export interface HindcastReport {
  readonly table: string;
  /** MM-DD. */
  readonly fertilised: string;
  readonly results: readonly HindcastResult[];
  readonly gaps: readonly GapResult[];
  /** The same for icy winters alone: 60 or more days at or below 0.5 °C in the first 182. */
  readonly icy: { readonly results: readonly HindcastResult[]; readonly gaps: readonly GapResult[] };
  /** Under the ice, winters by whether the stage had come at the lead date, which nobody could know. */
  readonly alreadyPassed: readonly HindcastResult[];
  readonly stillToCome: readonly HindcastResult[];
  /** With nothing but the winters before each; empty where not asked for. */
  readonly pastOnly: readonly HindcastResult[];
  /** The same for each station. */
  readonly byStation: readonly StationResult[];
  readonly rows: readonly HindcastReportRow[];
  readonly notes: HindcastRows['notes'];
}

export interface StationResult extends HindcastResult {
  readonly station: string;
}

export interface HindcastReportRow {
  readonly case: HindcastRow['case'];
  readonly lead: string;
  readonly stage: string;
  readonly station: string;
  readonly network: number;
  readonly winter: number;
  /** ISO dates; null where the stage is not reached. */
  readonly observed: string | null;
  readonly p10: string | null;
  readonly p50: string | null;
  readonly p90: string | null;
  /** Decimal days from 00:00 on the fertilisation day. */
  readonly observedDays: number | null;
  readonly p10Days: number | null;
  readonly p50Days: number | null;
  readonly p90Days: number | null;
  readonly icy: boolean;
  /** A plain method without an answer is missing. */
  readonly reference: Readonly<Partial<Record<PlainMethod, number>>>;
}

/** Puts what was found of one or more parts together. */
export function hindcastReport(
  options: HindcastOptions,
  found: readonly HindcastRows[],
  past: readonly HindcastRows[] = [],
): HindcastReport {
  const rows = found.flatMap((of) => of.rows);
  const gaps = found.flatMap((of) => of.gaps);
  const underIce = rows.filter((row) => row.case === 'under-ice');
  return {
    table: options.table.id,
    fertilised: monthDay(options.fertilised),
    results: summarise(rows),
    gaps: summariseGaps(gaps),
    icy: {
      results: summarise(rows.filter(({ icy }) => icy)),
      gaps: summariseGaps(gaps.filter(({ icy }) => icy)),
    },
    alreadyPassed: byLead(options, summarise(underIce.filter(({ passed }) => passed))),
    stillToCome: byLead(options, summarise(underIce.filter(({ passed }) => !passed))),
    pastOnly: summarise(past.flatMap((of) => of.rows)),
    byStation: byStation(rows),
    rows: rows.map(reportRow),
    notes: found.flatMap((of) => of.notes),
  };
}

/** In the order the lead dates were asked for: the winter that comes first may lack the first of them. */
function byLead({ leads }: HindcastOptions, results: readonly HindcastResult[]): HindcastResult[] {
  const at = new Map(leads.map((lead, i) => [monthDay(lead), i]));
  return [...results].sort((a, b) => (at.get(a.lead) ?? 0) - (at.get(b.lead) ?? 0));
}

function byStation(rows: readonly HindcastRow[]): StationResult[] {
  const stations = new Map<string, HindcastRow[]>();
  for (const row of rows) {
    const mine = stations.get(row.station);
    if (mine === undefined) stations.set(row.station, [row]);
    else mine.push(row);
  }
  return [...stations].flatMap(([station, mine]) => summarise(mine).map((of) => ({ station, ...of })));
}

function reportRow(row: HindcastRow): HindcastReportRow {
  const date = (days: number | null) => (days === null ? null : isoDay(row.fertilised + days));
  const known = (days: number) => (Number.isFinite(days) ? days : null);
  const [p10Days, p50Days, p90Days] = [known(row.p10), known(row.p50), known(row.p90)];
  return {
    case: row.case,
    lead: monthDay(row.lead),
    stage: row.stage,
    station: row.station,
    network: row.network,
    winter: row.winter,
    observed: date(row.observed),
    p10: date(p10Days),
    p50: date(p50Days),
    p90: date(p90Days),
    observedDays: row.observed,
    p10Days,
    p50Days,
    p90Days,
    icy: row.icy,
    reference: row.reference,
  };
}

function isoDay(day: number): string {
  return new Date(Math.floor(day) * 86_400_000).toISOString().slice(0, 10);
}
