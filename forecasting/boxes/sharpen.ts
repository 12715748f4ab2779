import { whenReached } from '../accumulate.js';
import type { StationDays } from '../day-series.js';
import type { BoxInput, ForecastInput, ForecastRemark } from '../forecast.js';
import { stageRow, wayTo } from '../needs.js';
import type { StageName } from '../table.js';
import type { DayNumber } from '../units.js';
import type { Eggs } from '../windows/eggs.js';
import { eggWater } from './egg-water.js';
import { measuredDays } from './leading-station.js';
import type { LotCourse } from './lot-forecast.js';
import { leftByStation, narrowerByLooking, narrowerByWater } from './narrowing.js';
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

/** Days below which nothing is worth a walk. */
const WORTH = 0.5;
/** So many eggs a crew looks at in a box. */
const LOOKED_AT = 20;

/**
 * What would narrow the next window: the logger not yet read, one more station, a look at some eggs. How much is worked
 * out from the same draws, with the water up to today made known or with what may be seen weighed. It never proposes
 * what would open a box while its eggs must not be handled, under ice or on a blocked day, nor a walk onto ice: then
 * it says why, and names downloads and stations only.
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
  // Without days to come there is no window that anything else could narrow.
  if (place.water.projection.kind === 'none') return [...remarks, { code: 'history-or-curve', with: {} }];
  const next = lot.forecast.windows.find(({ passed }) => !passed);
  const days = outstanding(question);
  if (!leading.reports && measuredDays(leading) > 0 && next !== undefined && days > 0)
    remarks.push(readLogger(question, next.stage, days));
  if (next !== undefined)
    remarks.push(...oneMoreStation(question, next.stage), ...looking(question, next.stage));
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
  const figures = { station, days, narrower: narrowerByWater(question, stage), stage };
  if (opensBox(question) && handlingKills(question))
    return { code: 'read-logger-after-eggs', with: { ...figures, until: handlingEnds(question) } };
  if (underIce(question)) return { code: 'read-logger-after-ice', with: figures };
  if (opensBox(question) && blockedToday(question)) return { code: 'read-logger-other-day', with: figures };
  return { code: 'read-logger', with: figures };
}

/** A station in the same water that reports: it would have said what the logger keeps, and goes on saying it. */
function oneMoreStation(question: SharpenQuestion, stage: StageName): ForecastRemark[] {
  const left = leftByStation(question);
  if (left === 1) return [];
  const narrower = narrowerByWater(question, stage, left);
  return narrower < WORTH ? [] : [{ code: 'one-more-station', with: { narrower, stage } }];
}

/** A look at some eggs for the stage that tells most of the next window, or why not now. */
function looking(question: SharpenQuestion, stage: StageName): ForecastRemark[] {
  let best = { seen: stage, narrower: 0 };
  for (const { stage: seen } of question.lot.forecast.windows) {
    const narrower = narrowerByLooking(question, stage, seen, LOOKED_AT);
    if (narrower > best.narrower) best = { seen, narrower };
  }
  if (best.narrower < WORTH) return [];
  const why = notToOpen(question);
  if (why !== null) return [{ code: 'observe-not-now', with: { ...best, stage, why } }];
  return [{ code: 'observe-stage', with: { ...best, stage, eggs: LOOKED_AT } }];
}

function notToOpen(question: SharpenQuestion): 'handling' | 'ice' | 'blocked' | null {
  if (handlingKills(question)) return 'handling';
  if (underIce(question)) return 'ice';
  return blockedToday(question) ? 'blocked' : null;
}

function blockedToday({ input, box }: SharpenQuestion): boolean {
  return (input.blocked ?? []).some(
    ({ from, to, site }) => from <= input.asOf && input.asOf <= to && (site === null || site === box.site),
  );
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
