import type { Remark } from './remark.js';

/** What is wrong with a table: the row (a stage, 'harm 2' or 'table'), the value given, and the rule it broke. */
export interface TableWords {
  'table-not-a-number': { row: string; field: string; value: string };
  'table-no-stages': { row: string };
  'table-stage-twice': { row: string };
  'table-days-rise': { row: string; celsius: number; days: number; before: number };
  'table-temperatures-unsorted': { row: string; celsius: number; before: number };
  'table-too-few-rows': { row: string; rows: number };
  'table-not-positive': { row: string; field: string; value: number };
  'table-law-slows': { row: string; field: string; value: number; celsius: number };
  'table-power-undefined': { row: string; alpha: number; min: number };
  'table-units-never': { row: string; base: number; max: number };
  'table-rows-outside-validity': { row: string; min: number; max: number };
  'table-refers-to-itself': { row: string };
  'table-refers-to-unknown': { row: string; to: string };
  'table-after-later': { row: string; to: string };
  'table-loop': { row: string; loop: string };
  'table-multiple-of-counted': { row: string; to: string };
  'table-out-of-order': { row: string; before: string; celsius: number; days: number; daysBefore: number };
  'table-negative-spread': { row: string; field: string; value: number };
  'table-wide-spread': { row: string; field: string; value: number };
  'table-span-empty': { row: string; field: string; from: number; to: number };
  'table-leaves-box': { row: string; days: number; min: number; max: number };
  'table-hours-negative': { row: string; value: number };
}

export type TableProblem = Remark<TableWords>;

/** A table that cannot be used; `problems` holds every rule it broke, `remark` the first. */
export class TableRefused extends Error {
  readonly exit = 2;
  readonly remark: TableProblem;

  constructor(
    readonly table: string,
    readonly problems: readonly [TableProblem, ...TableProblem[]],
  ) {
    super(`table ${table}: ${problems.map(({ code }) => code).join(', ')}`);
    this.name = 'TableRefused';
    this.remark = problems[0];
  }
}
