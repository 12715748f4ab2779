import { whenReached } from '../accumulate.js';
import type { StationDays } from '../day-series.js';
import type { BoxInput, ForecastInput, ForecastRemark } from '../forecast.js';
import { stageRow, wayTo } from '../needs.js';
import type { StageName } from '../table.js';
import type { DayNumber, DayTime } from '../units.js';
import { type Eggs, eggPaths, settledPaths } from '../windows/eggs.js';
import { pathsOf } from '../windows/ensemble.js';
import { intervalOf } from '../windows/interval.js';
import { stageCourse } from '../windows/stage-draws.js';
import { eggWater } from './egg-water.js';
import { measuredDays } from './leading-station.js';
import type { LotCourse } from './lot-forecast.js';
import type { StationEnsemble, StationWater } from './station-waters.js';

/** Water no warmer than this may lie under ice. */
const MAY_BE_ICE = 0.5;

export interface SharpenQuestion {
  readonly input: ForecastInput;
  readonly box: BoxInput;
  readonly leading: StationDays;
  readonly place: StationWater;
  readonly shared: StationEnsemble;
  readonly lot: LotCourse;
  /** The most numerous eggs of that lot. */
  readonly eggs: Eggs;
}

/**
 * What would narrow the next window most: so far, the logger not yet read. How much is worked out from the same
 * draws with the water up to today made known. It never proposes what would open a box while its eggs must not be
 * handled, nor a walk onto ice: then it says until when to wait.
 */
export function sharpenBy(question: SharpenQuestion): ForecastRemark[] {
  const { input, box, leading, place, lot } = question;
  if (box.lifted !== null && box.lifted <= input.asOf) return [];
  const remarks: ForecastRemark[] = [];
  if (box.stations.length === 0) remarks.push({ code: 'name-a-station', with: {} });
  for (const id of box.stations) {
    if (id === leading.station) break;
    const silent = input.stations.find(({ station }) => station === id);
    if (silent?.reports) continue;
    const days = input.asOf + 1 - Math.floor(question.eggs.planted);
    if (days > 0) remarks.push({ code: 'read-logger-to-lead', with: { station: id, days } });
  }
  const next = lot.forecast.windows.find(({ passed }) => !passed);
  const days = outstanding(question);
  if (!leading.reports && measuredDays(leading) > 0 && next !== undefined && days > 0)
    remarks.push(readLogger(question, next.stage, days));
  if (place.water.projection.kind === 'none') remarks.push({ code: 'history-or-curve', with: {} });
  return remarks;
}

/** Days since the eggs came that its download would turn from filled to measured. */
function outstanding({ input, leading, place, eggs }: SharpenQuestion): number {
  const last = place.water.lastMeasured ?? Number.NEGATIVE_INFINITY;
  const since = Math.max(Math.floor(eggs.planted) - 1, last);
  return leading.reports ? 0 : input.asOf - since;
}

function readLogger(question: SharpenQuestion, stage: StageName, days: number): ForecastRemark {
  const { station } = question.leading;
  const figures = { station, days, narrower: narrowing(question, stage), stage };
  if (opensBox(question) && handlingKills(question))
    return { code: 'read-logger-after-eggs', with: { ...figures, until: handlingEnds(question) } };
  if (underIce(question)) return { code: 'read-logger-after-ice', with: figures };
  return { code: 'read-logger', with: figures };
}

/** Days by which the 80 % interval of the median narrows when the water up to today is known. */
function narrowing({ input, shared, eggs }: SharpenQuestion, stage: StageName): number {
  const row = stageRow(eggs.table, stage);
  if (row === undefined) return 0;
  const moment: DayTime = input.asOf + 1;
  const { all } = shared;
  const count = all.winters.traces.length;
  const known = { ...all, knownTo: moment };
  const after = stageCourse(known, eggs, row, (law) =>
    settledPaths(eggPaths(eggs, law, pathsOf(all, law)), count, moment),
  );
  const before = stageCourse(all, eggs, row);
  const narrower = width(before.draws.median) - width(after.draws.median);
  return Number.isFinite(narrower) ? Math.max(0, narrower) : 0;
}

function width(moments: Float64Array): number {
  const { p10, p90 } = intervalOf(moments);
  return p10 === null || p90 === null ? Number.NaN : p90 - p10;
}

function opensBox({ box, leading }: SharpenQuestion): boolean {
  return (box.withEggs ?? []).includes(leading.station);
}

function handlingKills({ eggs, lot }: SharpenQuestion): boolean {
  const { from, to } = eggs.table.doNotHandle;
  const { hatch } = lot.forecast.progress;
  return hatch === undefined || (hatch >= from && hatch < to);
}

/** The day by which the middle water has brought the eggs past the span, with the stage's spread between eggs. */
function handlingEnds({ eggs, place }: SharpenQuestion): DayNumber | null {
  const row = stageRow(eggs.table, 'hatch');
  if (row === undefined) return null;
  const way = wayTo(eggs.table, 'hatch');
  if (way.after !== null) return null;
  const target = way.factor * (eggs.table.doNotHandle.to + 2 * row.eggSpread);
  const day = whenReached(way.law, eggWater(eggs, place.central), eggs.fertilised, target);
  return day === null ? null : Math.ceil(day);
}

function underIce({ input, box, place }: SharpenQuestion): boolean {
  const seen = input.sightings
    .filter(
      ({ kind, station, day }) => kind !== 'hand' && day <= input.asOf && box.stations.includes(station),
    )
    .sort((a, b) => a.day - b.day)
    .at(-1);
  if (seen !== undefined) return seen.kind !== 'ice-out';
  const today = place.central.mean[input.asOf - place.central.firstDay];
  return today !== undefined && today <= MAY_BE_ICE;
}
