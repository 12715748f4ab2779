import type { StageName } from '../table.js';
import { tableBase, thermalUnits } from '../thermal-units.js';
import type { DayTime, Progress, ThermalUnits } from '../units.js';
import type { Eggs } from '../windows/eggs.js';
import { type StageCourse, stageCourse } from '../windows/stage-draws.js';
import { eggWater } from './egg-water.js';
import type { StationEnsemble, StationWater } from './station-waters.js';

/** How eggs planted together come through the winter: every stage of their table, draw by draw. */
export interface PartCourse {
  readonly eggs: Eggs;
  readonly stages: ReadonlyMap<StageName, StageCourse>;
  /** The middle draw's progress at the moment asked for. */
  readonly progress: Readonly<Record<string, Progress>>;
  readonly thermalUnits: ThermalUnits | null;
}

/** Worked out once for all boxes that hold eggs of the same lot, planted at the same moment in the same water. */
export function partCourse(
  place: StationWater,
  shared: StationEnsemble,
  eggs: Eggs,
  moment: DayTime,
): PartCourse {
  const key = [eggs.lot, eggs.planted, moment].join('\u001f');
  let course = shared.parts.get(key);
  if (course === undefined) {
    course = workOut(place, shared, eggs, moment);
    shared.parts.set(key, course);
  }
  return course;
}

function workOut(place: StationWater, { all }: StationEnsemble, eggs: Eggs, moment: DayTime): PartCourse {
  const stages = new Map(eggs.table.stages.map((row) => [row.stage, stageCourse(all, eggs, row)]));
  const progress: Record<string, Progress> = {};
  for (const [stage, course] of stages) progress[stage] = middleProgress(course, all.draws, moment);
  const until = Math.max(eggs.fertilised, moment);
  return {
    eggs,
    stages,
    progress,
    thermalUnits: thermalUnits(eggWater(eggs, place.central), eggs.fertilised, until, tableBase(eggs.table)),
  };
}

function middleProgress(course: StageCourse, draws: number, moment: DayTime): Progress {
  const each = Float64Array.from({ length: draws }, (_, k) => course.progress(k, moment)).sort();
  return each[(draws - 1) >> 1];
}
