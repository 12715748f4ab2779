import type { ForecastInput, LotForecast, LotInput, OldRuleAnswer, StageWindow } from '../forecast.js';
import { lotDraws } from '../lifting/lot-draws.js';
import { wayTo } from '../needs.js';
import { keptDraws } from '../observations/reweight.js';
import { oldRule } from '../old-rule.js';
import type { DevelopmentTable, Law, StageName } from '../table.js';
import type { DayTime, Progress } from '../units.js';
import { mixture } from '../windows/mixture.js';
import type { StageDraws } from '../windows/stage-draws.js';
import { eggWater } from './egg-water.js';
import type { PartCourse } from './part-course.js';
import { stageWindow } from './stage-windows.js';
import type { StationEnsemble, StationWater } from './station-waters.js';
import { leansOutside } from './validity.js';

/** The fills of one lot in one box, each on its own course. */
export interface LotParts {
  readonly lot: LotInput;
  readonly parts: readonly PartCourse[];
  readonly counts: readonly number[];
  /** The draws that evidence on the lot has left; null where there is none. */
  readonly kept: Int32Array | null;
}

export interface LotCourse {
  readonly forecast: LotForecast;
  /** When its eggs come to each stage, draw by draw. */
  readonly draws: ReadonlyMap<StageName, StageDraws>;
  readonly kept: Int32Array | null;
}

/** The forecast for the eggs of one lot in a box; several fills of it count by their eggs. */
export function lotForecast(
  input: ForecastInput,
  place: StationWater,
  { all }: StationEnsemble,
  { lot, parts, counts, kept }: LotParts,
  moment: DayTime,
): LotCourse {
  const { table } = lot;
  const main = parts[counts.indexOf(Math.max(...counts))];
  const water = eggWater(main.eggs, place.central);
  const draws = new Map(
    table.stages.map(({ stage }) => [stage, keptDraws(mixedDraws(parts, counts, stage), kept)]),
  );
  const canProject = place.water.projection.kind !== 'none';
  const dated = windowsOf(table, draws, (stage, of) =>
    stageWindow(stage, of, all, moment, canProject, false),
  );
  const medians = new Map(dated.map(({ stage, median }) => [stage, median.p50]));
  const windows = dated.map((window, i) => ({
    ...window,
    outsideValidity: leansOutside(table, table.stages[i], water, lot.fertilised, medians),
  }));
  const forecast: LotForecast = {
    lot: lot.lot,
    eggs: counts.reduce((sum, eggs) => sum + eggs, 0),
    stage: stageNow(windows, lot.fertilised, moment),
    progress: meanProgress(table, parts, counts, (part, stage) =>
      kept === null ? part.progress[stage] : keptProgress(part, stage, kept, moment),
    ),
    thermalUnits: main.thermalUnits,
    windows,
    oldRule: oldRule(input.oldRule, water, lot.fertilised, medians.get('hatch') ?? null, hatchLaw(table)),
    draws: lotDraws(all, lot, draws),
  };
  return { forecast, draws, kept };
}

/** What the fixed rule says where nothing is known of the water. */
export function ruleWithoutWater(input: ForecastInput): OldRuleAnswer {
  const { thermalUnits } = input.oldRule;
  return { thermalUnits, hatch: null, why: { code: 'old-rule-no-water', with: { rule: thermalUnits } } };
}

function windowsOf(
  table: DevelopmentTable,
  draws: ReadonlyMap<StageName, StageDraws>,
  window: (stage: StageName, of: StageDraws) => StageWindow,
): StageWindow[] {
  return table.stages.flatMap(({ stage }) => {
    const of = draws.get(stage);
    return of === undefined ? [] : [window(stage, of)];
  });
}

function mixedDraws(parts: readonly PartCourse[], counts: readonly number[], stage: StageName): StageDraws {
  return mixture(
    parts.flatMap((part, i) => {
      const course = part.stages.get(stage);
      return course === undefined ? [] : [{ draws: course.draws, eggs: counts[i] }];
    }),
  );
}

function stageNow(
  windows: readonly StageWindow[],
  fertilised: DayTime,
  moment: DayTime,
): LotForecast['stage'] {
  if (moment <= fertilised) return 'not-fertilised';
  return windows.filter(({ passed }) => passed).at(-1)?.stage ?? 'fertilised';
}

function meanProgress(
  { stages }: DevelopmentTable,
  parts: readonly PartCourse[],
  counts: readonly number[],
  progressOf: (part: PartCourse, stage: StageName) => Progress,
): Record<string, Progress> {
  const total = counts.reduce((sum, eggs) => sum + eggs, 0);
  const weight = (i: number) => (parts.length === 1 ? 1 : total > 0 ? counts[i] / total : 1 / parts.length);
  return Object.fromEntries(
    stages.map(({ stage }) => [
      stage,
      parts.reduce((sum, part, i) => sum + weight(i) * progressOf(part, stage), 0),
    ]),
  );
}

function keptProgress(part: PartCourse, stage: StageName, kept: Int32Array, moment: DayTime): Progress {
  const course = part.stages.get(stage);
  if (course === undefined) return part.progress[stage];
  const each = Float64Array.from(kept, (k) => course.progress(k, moment)).sort();
  return each[(each.length - 1) >> 1];
}

/** The law behind hatch; null where the table has no hatch or counts it from another stage. */
function hatchLaw(table: DevelopmentTable): Law | null {
  if (!table.stages.some(({ stage }) => stage === 'hatch')) return null;
  const way = wayTo(table, 'hatch');
  return way.after === null && way.factor === 1 ? way.law : null;
}
