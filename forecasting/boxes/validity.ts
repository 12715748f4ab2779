import type { DailyMeans } from '../accumulate.js';
import { dailyRate } from '../law.js';
import { stageRow, wayTo } from '../needs.js';
import type { DevelopmentTable, Law, StageRow } from '../table.js';
import type { Celsius, DayTime } from '../units.js';

/** A reading may lie this far outside by the logger's error alone: water at 0.0 ± 0.2 °C is a normal winter. */
const LOGGER: Celsius = 0.2;
/** A window leans on water outside its range when more than this share of the way was made there (ours). */
const LEANS = 0.1;

type Validity = StageRow['validity'];

/**
 * Whether a stage's date leans on water its row, or the row whose law it borrows, is not known to hold in: more
 * than a tenth of the way made there, or, for a row judged at the stage, the water of the three days around it.
 *
 * `medians` gives the median date of each stage of the table; where there is none the water is judged to its end.
 */
export function leansOutside(
  table: DevelopmentTable,
  row: StageRow,
  water: DailyMeans,
  fertilised: DayTime,
  medians: ReadonlyMap<string, DayTime | null>,
): boolean {
  const end = water.firstDay + water.mean.length;
  const here = medians.get(row.stage) ?? null;
  const { law } = wayTo(table, row.stage);
  if (row.validity.judged === 'at-stage') {
    if (here !== null && outsideAround(row.validity, water, here)) return true;
  } else if (shareOutside(row.validity, water, law, fertilised, here ?? end) > LEANS) return true;
  const owner = lawOwner(table, row);
  if (owner === row || owner.validity.judged === 'at-stage') return false;
  const until = Math.min(here ?? end, medians.get(owner.stage) ?? end);
  return shareOutside(owner.validity, water, law, fertilised, until) > LEANS;
}

/** The row that states the law a row rests on. */
function lawOwner(table: DevelopmentTable, row: StageRow): StageRow {
  const { needs } = row;
  const other = 'sameAs' in needs ? needs.sameAs : 'multipleOf' in needs ? needs.multipleOf : null;
  const next = other === null ? undefined : stageRow(table, other);
  return next === undefined ? row : lawOwner(table, next);
}

function outside({ min, max }: Validity, celsius: Celsius): boolean {
  return celsius < min - LOGGER || celsius > max + LOGGER;
}

function outsideAround(validity: Validity, water: DailyMeans, moment: DayTime): boolean {
  let sum = 0;
  let days = 0;
  for (let day = Math.floor(moment) - 1; day <= Math.floor(moment) + 1; day++) {
    const celsius = water.mean[day - water.firstDay];
    if (celsius === undefined || !Number.isFinite(celsius)) continue;
    sum += celsius;
    days++;
  }
  return days > 0 && outside(validity, sum / days);
}

function shareOutside(validity: Validity, water: DailyMeans, law: Law, from: DayTime, to: DayTime): number {
  let all = 0;
  let beyond = 0;
  for (let day = Math.floor(from); day < to; day++) {
    const celsius = water.mean[day - water.firstDay];
    if (celsius === undefined || !Number.isFinite(celsius)) continue;
    const rate = dailyRate(law, celsius);
    all += rate;
    if (outside(validity, celsius)) beyond += rate;
  }
  return all > 0 ? beyond / all : 0;
}
