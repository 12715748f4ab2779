import type { GapRow, HindcastCase, HindcastRow, MonthDay, PlainMethod } from './contract.js';

/** How a set of hidden winters was forecast, for one case, lead and stage. Days throughout. */
export interface HindcastResult {
  readonly case: HindcastCase;
  /** MM-DD. */
  readonly lead: string;
  readonly stage: string;
  /** Winters with a date and a forecast. */
  readonly n: number;
  /** Winters whose record ends before the stage. */
  readonly notReached: number;
  /** Winters that reached the stage where the median course never does. */
  readonly neverForecast: number;
  readonly mae: number | null;
  readonly bias: number | null;
  /** 90th percentile of the absolute error. */
  readonly p90: number | null;
  readonly coverage80: number | null;
  readonly width80: number | null;
  readonly crps: number | null;
  /** Standard errors with a network's winter taken as one: what happens in a year happens to all its stations. */
  readonly standardError: { readonly coverage80: number | null; readonly bias: number | null };
  /** Each plain method on the winters where it has an answer, and our error on the same winters. */
  readonly reference: Readonly<Partial<Record<PlainMethod, Reference>>>;
  /** Fair score of the plain ensemble and ours on the same winters. */
  readonly ensembleCrps: { readonly n: number; readonly crps: number; readonly own: number } | null;
}

export interface Reference {
  readonly n: number;
  readonly mae: number;
  readonly bias: number;
  readonly ownMae: number;
}

/** How hidden days were filled, °C. */
export interface GapFigures {
  readonly n: number;
  readonly rmse: number;
  readonly coverage80: number;
  readonly width80: number;
}

/**
 * Gaps of one length. The figures and both references are on the same days: those on which both plain methods have an
 * answer, where there are any. Else they are on all days, and a reference on those where it has one.
 */
export interface GapResult extends GapFigures {
  readonly days: number;
  /** On every hidden day that could be filled. */
  readonly all: GapFigures;
  readonly reference: { readonly line: GapReference; readonly bestNeighbour: GapReference };
}

export interface GapReference {
  readonly rmse: number | null;
  /** Our error on the same days. */
  readonly ownRmse: number | null;
  readonly n: number;
}

const METHODS: readonly PlainMethod[] = [
  'ensemble',
  'bestNeighbour',
  'bestNeighbourBeyond1km',
  'persistence',
];

export function monthDay({ month, day }: MonthDay): string {
  return `${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
}

/** One result for each case, lead and stage among the rows, in the order they first come. */
export function summarise(rows: readonly HindcastRow[]): HindcastResult[] {
  const groups = new Map<string, HindcastRow[]>();
  for (const row of rows) {
    const key = `${row.case} ${monthDay(row.lead)} ${row.stage}`;
    const group = groups.get(key);
    if (group === undefined) groups.set(key, [row]);
    else group.push(row);
  }
  return [...groups.values()].map(oneResult);
}

interface Judged {
  readonly row: HindcastRow;
  readonly observed: number;
  readonly error: number;
}

function oneResult(rows: readonly HindcastRow[]): HindcastResult {
  const judged: Judged[] = [];
  const came: HindcastRow[] = [];
  // a course that never arrives is later than any date: it counts in the coverage, and has no error in days
  const coverage: number[] = [];
  for (const row of rows) {
    const { observed, p10, p50, p90 } = row;
    if (observed === null) continue;
    came.push(row);
    coverage.push(p10 <= observed && observed <= p90 ? 1 : 0);
    if (Number.isFinite(p50)) judged.push({ row, observed, error: p50 - observed });
  }
  const neverForecast = came.length - judged.length;
  const errors = judged.map(({ error }) => error);
  const widths = judged.map(({ row }) => row.p90 - row.p10).filter(Number.isFinite);
  const scores = judged.flatMap(({ row }) => (row.crps === null ? [] : [row.crps]));
  return {
    case: rows[0].case,
    lead: monthDay(rows[0].lead),
    stage: rows[0].stage,
    n: judged.length,
    notReached: rows.filter(({ observed }) => observed === null).length,
    neverForecast,
    mae: mean(errors.map(Math.abs)),
    bias: mean(errors),
    p90: quantile(errors.map(Math.abs), 0.9),
    coverage80: mean(coverage),
    width80: mean(widths),
    crps: mean(scores),
    standardError: {
      coverage80: clusteredError(came, coverage),
      bias: clusteredError(
        judged.map(({ row }) => row),
        errors,
      ),
    },
    reference: references(judged),
    ensembleCrps: sameScores(judged),
  };
}

function references(judged: readonly Judged[]): HindcastResult['reference'] {
  const found: Partial<Record<PlainMethod, Reference>> = {};
  for (const method of METHODS) {
    const errors: number[] = [];
    const own: number[] = [];
    for (const { row, observed, error } of judged) {
      const said = row.reference[method];
      if (said === undefined) continue;
      errors.push(said - observed);
      own.push(Math.abs(error));
    }
    const mae = mean(errors.map(Math.abs));
    const bias = mean(errors);
    const ownMae = mean(own);
    if (mae !== null && bias !== null && ownMae !== null)
      found[method] = { n: errors.length, mae, bias, ownMae };
  }
  return found;
}

function sameScores(judged: readonly Judged[]): HindcastResult['ensembleCrps'] {
  const both = judged.flatMap(({ row: { crps, ensembleCrps } }) =>
    crps === null || ensembleCrps === null ? [] : [{ own: crps, plain: ensembleCrps }],
  );
  const own = mean(both.map((of) => of.own));
  const crps = mean(both.map((of) => of.plain));
  return own === null || crps === null ? null : { n: both.length, crps, own };
}

/**
 * √Σ(cluster sums of departures)² / n, a cluster being a winter of a network (Liang & Zeger 1986: memory); null below
 * two.
 */
function clusteredError(rows: readonly HindcastRow[], values: readonly number[]): number | null {
  const centre = mean(values);
  if (centre === null) return null;
  const sums = new Map<string, number>();
  rows.forEach(({ network, winter }, i) => {
    const cluster = `${network} ${winter}`;
    sums.set(cluster, (sums.get(cluster) ?? 0) + values[i] - centre);
  });
  if (sums.size < 2) return null;
  let squares = 0;
  for (const sum of sums.values()) squares += sum * sum;
  return Math.sqrt(squares) / values.length;
}

/** One result for each length of gap. */
export function summariseGaps(rows: readonly GapRow[]): GapResult[] {
  return [...new Set(rows.map(({ days }) => days))].map((days) => {
    const mine = rows.filter((row) => row.days === days);
    const all = gapFigures(mine);
    const shared = mine.map((row) => row.shared);
    const beside = gapFigures(shared);
    if (beside.n === 0) {
      const [line, bestNeighbour] = [gapReference(mine, 'line'), gapReference(mine, 'bestNeighbour')];
      return { days, ...all, all, reference: { line, bestNeighbour } };
    }
    const reference = (of: 'line' | 'bestNeighbour') => ({
      rmse: root(
        total(shared, (row) => row[of]),
        beside.n,
      ),
      ownRmse: beside.rmse,
      n: beside.n,
    });
    return {
      days,
      ...beside,
      all,
      reference: { line: reference('line'), bestNeighbour: reference('bestNeighbour') },
    };
  });
}

function gapFigures(rows: readonly Pick<GapRow, 'n' | 'squares' | 'covered' | 'width'>[]): GapFigures {
  const n = total(rows, (row) => row.n);
  return {
    n,
    rmse: Math.sqrt(total(rows, (row) => row.squares) / n),
    coverage80: total(rows, (row) => row.covered) / n,
    width80: total(rows, (row) => row.width) / n,
  };
}

function gapReference(rows: readonly GapRow[], of: 'line' | 'bestNeighbour'): GapReference {
  const n = total(rows, (row) => row[of].n);
  return {
    rmse: root(
      total(rows, (row) => row[of].plain),
      n,
    ),
    ownRmse: root(
      total(rows, (row) => row[of].own),
      n,
    ),
    n,
  };
}

function total<Row>(rows: readonly Row[], of: (row: Row) => number): number {
  return rows.reduce((sum, row) => sum + of(row), 0);
}

function root(squares: number, n: number): number | null {
  return n > 0 ? Math.sqrt(squares / n) : null;
}

function mean(values: readonly number[]): number | null {
  return values.length === 0 ? null : values.reduce((sum, value) => sum + value, 0) / values.length;
}

/** Quantile straight between the two values around it (type 7); null of nothing. */
function quantile(values: readonly number[], q: number): number | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const x = q * (sorted.length - 1);
  const i = Math.floor(x);
  return i + 1 < sorted.length ? sorted[i] + (x - i) * (sorted[i + 1] - sorted[i]) : sorted[i];
}
