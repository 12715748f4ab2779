import {
  checkTable,
  type DevelopmentTable,
  shippedTables,
  type TableProblem,
} from '../../../forecasting/index.js';
import type { SeasonPath } from '../problem.js';
import type { Season } from '../season.js';
import type { Found } from './index.js';

/** The group's own tables: names that do not hide a shipped one, and every rule of forecasting's `checkTable`. */
export function tables({ tables }: Season): Found[] {
  const shipped = new Set(shippedTables.map(({ id }) => id));
  return tables.flatMap((table, i): Found[] => [
    ...(shipped.has(table.id)
      ? [
          {
            path: ['tables', i, 'id'],
            trouble: { code: 'season.shipped-table-id', with: { id: table.id } },
          } as const,
        ]
      : []),
    ...checkTable(table).map(
      (problem): Found => ({
        path: ['tables', i, ...placeOf(problem, table)],
        trouble: { code: 'season.table-rule', with: { table: table.id, problem } },
      }),
    ),
  ]);
}

/** Where in the table the row lies that broke a rule: a stage, `harm 2`, or the table itself. */
function placeOf({ with: { row } }: TableProblem, table: DevelopmentTable): SeasonPath {
  const stage = table.stages.findLastIndex((one) => one.stage === row);
  if (stage >= 0) return ['stages', stage];
  const limit = /^harm (\d+)$/.exec(row);
  return limit ? ['harm', Number(limit[1]) - 1] : [];
}
