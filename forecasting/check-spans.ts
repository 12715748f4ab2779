import type { DevelopmentTable, HarmLimit } from './table.js';
import type { TableProblem } from './table-problem.js';

/** Lot and own spread, the span without handling, and the days an alevin takes to leave the box. */
export function checkSpans(table: DevelopmentTable): TableProblem[] {
  const row = 'table';
  const problems: TableProblem[] = [];
  for (const [field, value] of [
    ['lotSpread', table.lotSpread],
    ['ownSpread', table.ownSpread],
  ] as const) {
    if (!Number.isFinite(value))
      problems.push({ code: 'table-not-a-number', with: { row, field, value: String(value) } });
    else if (value < 0) problems.push({ code: 'table-negative-spread', with: { row, field, value } });
    else if (value > 0.3) problems.push({ code: 'table-wide-spread', with: { row, field, value } });
  }
  const { from, to } = table.doNotHandle;
  if (!(from >= 0 && from < to))
    problems.push({ code: 'table-span-empty', with: { row, field: 'doNotHandle', from, to } });
  const { days, min, max } = table.leavesBox;
  if (!(min >= 0 && min <= days && days <= max))
    problems.push({ code: 'table-leaves-box', with: { row, days, min, max } });
  return problems;
}

/** Rows are named 'harm 1', 'harm 2' … in the order given. */
export function checkHarm(harm: readonly HarmLimit[]): TableProblem[] {
  return harm.flatMap(({ fromProgress: from, toProgress: to, limit, hours }, i): TableProblem[] => {
    const row = `harm ${i + 1}`;
    const problems: TableProblem[] = [];
    if (!(from >= 0 && from < to))
      problems.push({ code: 'table-span-empty', with: { row, field: 'progress', from, to } });
    if (!Number.isFinite(limit))
      problems.push({ code: 'table-not-a-number', with: { row, field: 'limit', value: String(limit) } });
    if (!(hours >= 0)) problems.push({ code: 'table-hours-negative', with: { row, value: hours } });
    return problems;
  });
}
