import { Origin } from '../day-series.js';
import type { GapRow } from './contract.js';
import { hiddenWinter } from './hidden-winter.js';
import { bestNeighbour, NEAR_KM } from './plain-methods.js';
import type { Hidden } from './winter-rows.js';

/** Gaps begin on the first of November to April, counted from a fertilisation day of 1 November. */
const BEGIN_AFTER = [0, 30, 61, 92, 120, 151];
/** 80 % of a normal error lies within so many standard deviations. */
const Z80 = 1.2815515655446004;

/** Stretches hidden in a measured winter, neighbours kept: what the fill says against what was measured. */
export function gapRows(hidden: Hidden): GapRow[] {
  const { winter, target, options } = hidden;
  const forecasts = hiddenWinter(hidden.record, target, winter, hidden.pairsWith, options);
  const rows: GapRow[] = [];
  for (const days of options.gapDays) {
    for (const begin of BEGIN_AFTER) {
      if (winter.window.from + begin + days > winter.window.to) continue;
      const row = gapRow(hidden, forecasts, begin, days);
      if (row !== null) rows.push(row);
    }
  }
  return rows;
}

function gapRow(
  hidden: Hidden,
  forecasts: ReturnType<typeof hiddenWinter>,
  begin: number,
  days: number,
): GapRow | null {
  const { target, winter, record } = hidden;
  const { from, start } = winter.window;
  const first = from + begin;
  const waters = forecasts.withGap(begin, begin + days);
  const near = bestNeighbour(
    target,
    record.stations,
    winter.season,
    hidden.pairsWith,
    (km) => km === null || km <= NEAR_KM,
    first,
    first + days,
  );
  const left = target.mean[first - 1];
  const right = target.mean[first + days];
  const row = { n: 0, squares: 0, covered: 0, width: 0 };
  const line = { n: 0, own: 0, plain: 0 };
  const neighbour = { n: 0, own: 0, plain: 0 };
  const shared = { n: 0, squares: 0, covered: 0, width: 0, line: 0, bestNeighbour: 0 };
  for (let d = 0; d < days; d++) {
    const truth = target.mean[first + d];
    const at = first + d - start;
    if (Number.isNaN(truth) || waters.origin[at] !== Origin.filled) continue;
    const error = waters.mean[at] - truth;
    const width = 2 * Z80 * waters.spread[at];
    const covered = Math.abs(error) <= width / 2 ? 1 : 0;
    row.n++;
    row.squares += error * error;
    row.width += width;
    row.covered += covered;
    const straight = left + ((right - left) * (d + 1)) / (days + 1) - truth;
    const said =
      near === null
        ? Number.NaN
        : Math.max(0, near.line.intercept + near.line.slope * near.neighbour.mean[first + d]) - truth;
    compare(line, error, straight);
    compare(neighbour, error, said);
    if (Number.isNaN(straight + said)) continue;
    shared.n++;
    shared.squares += error * error;
    shared.width += width;
    shared.covered += covered;
    shared.line += straight * straight;
    shared.bestNeighbour += said * said;
  }
  if (row.n === 0) return null;
  return {
    days,
    station: target.station.station,
    winter: winter.year,
    from: record.axis.first + first,
    ...row,
    line,
    bestNeighbour: neighbour,
    shared,
    icy: winter.icy,
  };
}

function compare(sums: { n: number; own: number; plain: number }, own: number, plain: number): void {
  if (Number.isNaN(plain)) return;
  sums.n++;
  sums.own += own * own;
  sums.plain += plain * plain;
}
