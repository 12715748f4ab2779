import { Origin, type StationDays } from '../day-series.js';
import type {
  BoxForecast,
  BoxInput,
  ForecastInput,
  ForecastRemark,
  LotInput,
  StageWindow,
} from '../forecast.js';
import type { LotEvidence } from '../observations/evidence.js';
import type { DayTime } from '../units.js';
import type { Eggs } from '../windows/eggs.js';
import { type ArrivedFill, arrival } from './before-planting.js';
import { fewWinters, missingStages, outsideRemarks, standing, uniqueRemarks } from './box-remarks.js';
import { boxWindows } from './box-windows.js';
import { type LotCourse, lotForecast, ruleWithoutWater } from './lot-forecast.js';
import { partCourse } from './part-course.js';
import { sharedOffset } from './shared-offset.js';
import { sharpenBy } from './sharpen.js';
import { unknownWindow } from './stage-windows.js';
import type { StationEnsemble, StationWater } from './station-waters.js';
import { tableRemarks } from './table-remarks.js';

/** A box with everything looked up that its forecast needs. */
export interface BoxQuestion {
  readonly box: BoxInput;
  readonly fills: readonly ArrivedFill[];
  readonly leading: StationDays;
  /** Remarks met while looking up: lots and stations that are not there. */
  readonly remarks: readonly ForecastRemark[];
}

export function arrivals(
  box: BoxInput,
  lot: (id: string) => LotInput | null,
  station: (id: string) => StationDays | null,
): { fills: ArrivedFill[]; remarks: ForecastRemark[] } {
  const fills: ArrivedFill[] = [];
  const remarks: ForecastRemark[] = [];
  for (const fill of box.fills) {
    const of = lot(fill.lot);
    if (of === null) remarks.push({ code: 'unknown-lot', with: { lot: fill.lot } });
    else fills.push({ fill, lot: of, arrived: arrival(of, fill, station) });
  }
  return { fills, remarks };
}

/** The forecast of one box, in the water of its leading station. */
export function boxForecast(
  input: ForecastInput,
  question: BoxQuestion,
  place: StationWater,
  evidence: ReadonlyMap<string, LotEvidence>,
): BoxForecast {
  const { box, fills, leading } = question;
  const offset = sharedOffset(box, leading);
  const shared = place.ensemble(offset.spread);
  if (fills.length === 0 || shared === null) return withoutWindows(input, question, place);
  const moment = Math.min(input.asOf + 1, lastKnown(box));
  const lots = groupByLot(fills).map((of) => lotCourse(input, place, shared, of, moment, evidence));
  const windows = boxWindows(place, shared, lots, moment);
  const main = lots.reduce((most, next) => (next.forecast.eggs > most.forecast.eggs ? next : most));
  const mainEggs = eggsOf(mostEggs(fills.filter(({ lot }) => lot.lot === main.forecast.lot)));
  return {
    ...frame(question, place),
    lots: lots.map(({ forecast }) => forecast),
    days: countDays(place, fills, windows, lastKnown(box)),
    windows,
    oldRule: main.forecast.oldRule,
    assumptions: [
      ...question.remarks,
      ...standing(input, box, fills),
      ...offset.remarks,
      ...fewWinters(place),
      ...uniqueRemarks(fills.flatMap(({ arrived }) => arrived.remarks)),
      ...uniqueRemarks(fills.flatMap(({ lot }) => evidence.get(lot.lot)?.remarks ?? [])),
      ...uniqueRemarks(fills.flatMap(({ lot }) => tableRemarks(lot.table))),
      ...outsideRemarks(fills, lots),
      ...missingStages(lots),
    ],
    sharpenBy: sharpenBy({ input, box, leading, place, shared, lot: main, eggs: mainEggs }),
  };
}

function frame({ box, fills }: BoxQuestion, place: StationWater) {
  const tables = uniqueRemarks(
    fills.map(({ lot }): ForecastRemark => ({ code: 'rate-summation', with: { table: lot.table.name } })),
  );
  return {
    box: box.box,
    site: box.site,
    eggs: box.fills.reduce((sum, { eggs }) => sum + eggs, 0),
    water: place.water,
    dataThrough: place.water.lastMeasured,
    method: [...place.water.remarks, ...tables],
  };
}

function lotCourse(
  input: ForecastInput,
  place: StationWater,
  shared: StationEnsemble,
  fills: readonly ArrivedFill[],
  moment: DayTime,
  evidence: ReadonlyMap<string, LotEvidence>,
): LotCourse {
  return lotForecast(
    input,
    place,
    shared,
    {
      lot: fills[0].lot,
      parts: fills.map((fill) => partCourse(place, shared, eggsOf(fill), moment)),
      counts: fills.map(({ fill }) => fill.eggs),
      kept: evidence.get(fills[0].lot.lot)?.kept ?? null,
    },
    moment,
  );
}

export function eggsOf({ fill, lot, arrived }: ArrivedFill): Eggs {
  return {
    lot: lot.lot,
    table: lot.table,
    count: fill.eggs,
    fertilised: lot.fertilised,
    planted: arrived.planted,
    before: arrived.before,
  };
}

export function mostEggs(fills: readonly ArrivedFill[]): ArrivedFill {
  return fills.reduce((most, next) => (next.fill.eggs > most.fill.eggs ? next : most));
}

function groupByLot(fills: readonly ArrivedFill[]): ArrivedFill[][] {
  const groups = new Map<string, ArrivedFill[]>();
  for (const fill of fills) groups.set(fill.lot.lot, [...(groups.get(fill.lot.lot) ?? []), fill]);
  return [...groups.values()];
}

/** A box of which nothing can be said: no eggs, or no water. */
function withoutWindows(input: ForecastInput, question: BoxQuestion, place: StationWater): BoxForecast {
  const { box, fills, leading, remarks } = question;
  const needs = box.stations.length === 0 ? 'station' : 'readings';
  const why: ForecastRemark = { code: 'cannot-say', with: { needs, station: leading.station } };
  const rule = ruleWithoutWater(input);
  const lots = groupByLot(fills).map((of) => ({
    lot: of[0].lot.lot,
    eggs: of.reduce((sum, { fill }) => sum + fill.eggs, 0),
    stage: input.asOf + 1 <= of[0].lot.fertilised ? ('not-fertilised' as const) : ('unknown' as const),
    progress: {},
    thermalUnits: null,
    windows: of[0].lot.table.stages.map(({ stage }) => unknownWindow(stage, why)),
    oldRule: rule,
  }));
  const stages = [...new Set(lots.flatMap(({ windows }) => windows.map(({ stage }) => stage)))];
  const sharpen: ForecastRemark =
    box.stations.length === 0 ? { code: 'name-a-station', with: {} } : { code: 'history-or-curve', with: {} };
  return {
    ...frame(question, place),
    lots,
    days: { measured: 0, filled: 0, projected: 0 },
    windows: stages.map((stage) => unknownWindow(stage, why)),
    oldRule: rule,
    assumptions: [...remarks, ...standing(input, box, fills)],
    sharpenBy: fills.length === 0 ? [] : [sharpen],
  };
}

/** Until when a box's eggs are known to lie in its water. */
export function lastKnown({ lifted, notFound }: BoxInput): DayTime {
  return lifted ?? notFound ?? Number.POSITIVE_INFINITY;
}

/** Days the eggs gather from this water, from the first that came to the last stage, by where their value is from. */
function countDays(
  { water }: StationWater,
  fills: readonly ArrivedFill[],
  windows: readonly StageWindow[],
  until: DayTime,
): BoxForecast['days'] {
  const { origin, firstDay } = water.days;
  const start = Math.floor(Math.min(...fills.map(({ arrived }) => arrived.planted)));
  const ends = windows.map(({ last, median }) => last.p50 ?? median.p50);
  const dated = ends.filter((end) => end !== null);
  const allDated = dated.length === ends.length;
  const end = Math.min(allDated ? Math.max(...dated) : firstDay + origin.length - 1, until);
  const days = origin.subarray(Math.max(0, start - firstDay), Math.floor(end) - firstDay + 1);
  const count = (wanted: Origin) => days.reduce((n, one) => n + (one === wanted ? 1 : 0), 0);
  return {
    measured: count(Origin.measured),
    filled: count(Origin.filled),
    projected: count(Origin.projected),
  };
}
