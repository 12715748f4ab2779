import { checkLaw } from './check-law.js';
import { checkHarm, checkSpans } from './check-spans.js';
import { daysToStage } from './law.js';
import { type Way, wayTo } from './needs.js';
import type { DevelopmentTable, Needs, StageName, StageRow } from './table.js';
import { type TableProblem, TableRefused } from './table-problem.js';

/**
 * Every rule a development table breaks, with the row, the value and the rule; none when it can be used. Days may
 * not rise with temperature, listed temperatures rise, a stage rests in the end on a law of its own, stages stand
 * in the order the eggs pass them, no spread is negative.
 */
export function checkTable(table: DevelopmentTable): TableProblem[] {
  const { stages } = table;
  if (stages.length === 0) return [{ code: 'table-no-stages', with: { row: 'table' } }];
  const problems = stages.flatMap((row, i) => [
    ...checkTwice(stages, row, i),
    ...checkReference(stages, row, i),
    ...checkNumbers(row),
  ]);
  if (problems.length === 0) problems.push(...checkOrder(table));
  return [...problems, ...checkSpans(table), ...checkHarm(table.harm)];
}

/** @throws TableRefused with every rule the table broke. */
export function refuseInvalid(table: DevelopmentTable): void {
  const [first, ...others] = checkTable(table);
  if (first !== undefined) throw new TableRefused(table.id, [first, ...others]);
}

function checkTwice(stages: readonly StageRow[], { stage: row }: StageRow, i: number): TableProblem[] {
  const first = stages.findIndex(({ stage }) => stage === row);
  return first < i ? [{ code: 'table-stage-twice', with: { row } }] : [];
}

function checkNumbers(row: StageRow): TableProblem[] {
  const { needs, validity, eggSpread, stage } = row;
  const problems: TableProblem[] = [];
  const spread = { row: stage, field: 'eggSpread', value: eggSpread };
  if (!Number.isFinite(eggSpread))
    problems.push({ code: 'table-not-a-number', with: { ...spread, value: String(eggSpread) } });
  else if (eggSpread < 0) problems.push({ code: 'table-negative-spread', with: spread });
  else if (eggSpread > 0.3) problems.push({ code: 'table-wide-spread', with: spread });
  if (!(validity.min < validity.max)) {
    const span = { row: stage, field: 'validity', from: validity.min, to: validity.max };
    return [...problems, { code: 'table-span-empty', with: span }];
  }
  if ('law' in needs) problems.push(...checkLaw(row, needs.law));
  if ('multipleOf' in needs && !(needs.factor > 0))
    problems.push({ code: 'table-not-positive', with: { row: stage, field: 'factor', value: needs.factor } });
  return problems;
}

/** The stage a row leans on, if any. */
function leansOn(needs: Needs): StageName | null {
  if ('sameAs' in needs) return needs.sameAs;
  if ('multipleOf' in needs) return needs.multipleOf;
  return 'after' in needs ? needs.after : null;
}

function checkReference(stages: readonly StageRow[], row: StageRow, i: number): TableProblem[] {
  const { stage, needs } = row;
  const to = leansOn(needs);
  if (to === null) return [];
  if (to === stage) return [{ code: 'table-refers-to-itself', with: { row: stage } }];
  const other = stages.findIndex((candidate) => candidate.stage === to);
  if (other < 0) return [{ code: 'table-refers-to-unknown', with: { row: stage, to } }];
  const loop = loopFrom(stages, stage);
  if (loop !== null) return [{ code: 'table-loop', with: { row: stage, loop: loop.join(' → ') } }];
  if ('after' in needs && other > i) return [{ code: 'table-after-later', with: { row: stage, to } }];
  if ('multipleOf' in needs && restsOnAfter(stages, to))
    return [{ code: 'table-multiple-of-counted', with: { row: stage, to } }];
  return [];
}

/** The stages a stage leans on, one after the other, beginning with itself; ends where one would come again. */
function leaningPath(stages: readonly StageRow[], start: StageName): StageName[] {
  const path = [start];
  for (;;) {
    const row = stages.find(({ stage }) => stage === path[path.length - 1]);
    const to = row === undefined ? null : leansOn(row.needs);
    if (to === null) return path;
    path.push(to);
    if (path.indexOf(to) < path.length - 1) return path;
  }
}

/** The path back to a stage that leans on itself by way of others; null where it does not. */
function loopFrom(stages: readonly StageRow[], start: StageName): StageName[] | null {
  const path = leaningPath(stages, start);
  return path.length > 1 && path[path.length - 1] === start ? path : null;
}

function restsOnAfter(stages: readonly StageRow[], stage: StageName): boolean {
  return leaningPath(stages, stage).some((name) =>
    stages.some((row) => row.stage === name && 'after' in row.needs),
  );
}

/** Days from fertilisation to a stage at one constant temperature. */
export function daysAtConstant(way: Way, celsius: number): number {
  const own = way.factor * daysToStage(way.law, celsius);
  return way.after === null ? own : own + daysAtConstant(way.after, celsius);
}

/** Where both rows hold, no stage may come before the one listed before it. */
function checkOrder(table: DevelopmentTable): TableProblem[] {
  return table.stages.slice(1).flatMap((row, i): TableProblem[] => {
    const before = table.stages[i];
    const min = Math.max(row.validity.min, before.validity.min);
    const max = Math.min(row.validity.max, before.validity.max);
    for (let celsius = min; celsius <= max; celsius += Math.max(0.25, (max - min) / 40)) {
      const days = daysAtConstant(wayTo(table, row.stage), celsius);
      const daysBefore = daysAtConstant(wayTo(table, before.stage), celsius);
      if (days < daysBefore * (1 - 1e-9)) {
        const order = { row: row.stage, before: before.stage, celsius, days, daysBefore };
        return [{ code: 'table-out-of-order', with: order }];
      }
    }
    return [];
  });
}
