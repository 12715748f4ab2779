import { COLDEST } from './law.js';
import type { Law, StageRow } from './table.js';
import type { TableProblem } from './table-problem.js';

type LawOf<Form extends Law['form']> = Extract<Law, { form: Form }>;

/** Rules a law must keep in the water its row claims to hold in: defined, positive, never slower when warmer. */
export function checkLaw(row: StageRow, law: Law): TableProblem[] {
  const odd = notNumbers(row.stage, law);
  if (odd.length > 0) return odd;
  switch (law.form) {
    case 'thermal-units':
      return checkUnits(row, law);
    case 'power':
      return checkPower(row, law);
    case 'log-quadratic':
      return checkQuadratic(row, law);
    case 'days-at':
      return checkRows(row, law);
  }
}

function notNumbers(row: string, law: Law): TableProblem[] {
  const figures: [string, number][] =
    law.form === 'days-at'
      ? law.rows.flatMap(({ celsius, days }): [string, number][] => [
          ['celsius', celsius],
          ['days', days],
        ])
      : Object.entries(law).flatMap(([field, value]): [string, number][] =>
          typeof value === 'number' ? [[field, value]] : [],
        );
  return figures
    .filter(([, value]) => !Number.isFinite(value))
    .map(([field, value]) => ({ code: 'table-not-a-number', with: { row, field, value: String(value) } }));
}

function checkUnits({ stage: row, validity }: StageRow, law: LawOf<'thermal-units'>): TableProblem[] {
  if (law.units <= 0)
    return [{ code: 'table-not-positive', with: { row, field: 'units', value: law.units } }];
  if (law.base < validity.max) return [];
  return [{ code: 'table-units-never', with: { row, base: law.base, max: validity.max } }];
}

function checkPower({ stage: row, validity }: StageRow, law: LawOf<'power'>): TableProblem[] {
  const problems: TableProblem[] = [];
  if (law.b >= 0)
    problems.push({
      code: 'table-law-slows',
      with: { row, field: 'b', value: law.b, celsius: validity.min },
    });
  if (law.alpha >= validity.min)
    problems.push({ code: 'table-power-undefined', with: { row, alpha: law.alpha, min: validity.min } });
  return problems;
}

/** Days fall with temperature while c1 + 2 c2 T stays below 0; its largest value lies at one end of the range. */
function checkQuadratic({ stage: row, validity }: StageRow, law: LawOf<'log-quadratic'>): TableProblem[] {
  if (law.d0 <= 0) return [{ code: 'table-not-positive', with: { row, field: 'd0', value: law.d0 } }];
  const slope = (t: number) => law.c1 + 2 * law.c2 * t;
  for (const [field, value, celsius] of [
    ['c1', law.c1, Math.min(COLDEST, validity.min)],
    ['c2', law.c2, validity.max],
  ] as const) {
    if (slope(celsius) >= 0) return [{ code: 'table-law-slows', with: { row, field, value, celsius } }];
  }
  return [];
}

function checkRows({ stage: row, validity }: StageRow, law: LawOf<'days-at'>): TableProblem[] {
  const { rows } = law;
  if (rows.length < 2) return [{ code: 'table-too-few-rows', with: { row, rows: rows.length } }];
  const problems: TableProblem[] = [];
  rows.forEach(({ celsius, days }, i) => {
    if (days <= 0) problems.push({ code: 'table-not-positive', with: { row, field: 'days', value: days } });
    const before = rows[i - 1];
    if (before === undefined) return;
    if (celsius <= before.celsius)
      problems.push({ code: 'table-temperatures-unsorted', with: { row, celsius, before: before.celsius } });
    else if (days >= before.days)
      problems.push({ code: 'table-days-rise', with: { row, celsius, days, before: before.days } });
  });
  const [min, max] = [rows[0].celsius, rows[rows.length - 1].celsius];
  if (problems.length === 0 && (validity.min < min || validity.max > max))
    problems.push({ code: 'table-rows-outside-validity', with: { row, min, max } });
  return problems;
}
