import type { NeighbourRecord } from '../gaps/candidate.js';
import type { PairSums } from '../gaps/pair-sums.js';
import type { StageName } from '../table.js';
import { waterMoments } from '../water-window.js';
import { sortedQuantile } from '../windows/draws.js';
import type { HindcastCase, HindcastOptions, HindcastRow, MonthDay, PlainMethod } from './contract.js';
import { eggOfStage } from './egg-of-stage.js';
import { hiddenWinter } from './hidden-winter.js';
import {
  type BestNeighbour,
  bestNeighbour,
  mapped,
  median,
  NEAR_KM,
  pastWinters,
  persisted,
  spliced,
} from './plain-methods.js';
import { fairCrps } from './scores.js';
import { type StageClock, stageClock } from './stage-clock.js';
import {
  type HindcastRecord,
  type HindcastStation,
  straightOver,
  type Winter,
  wholeWinters,
} from './winter.js';

/** What one hidden winter is judged with. */
export interface Hidden {
  readonly record: HindcastRecord;
  readonly target: HindcastStation;
  readonly winters: readonly Winter[];
  readonly winter: Winter;
  readonly pairsWith: (neighbour: NeighbourRecord) => PairSums;
  readonly options: HindcastOptions;
}

/** Every case, lead and stage of one hidden winter. */
export function winterRows(hidden: Hidden): HindcastRow[] {
  const { record, target, winter, options } = hidden;
  const cases = options.cases.filter((of): of is HindcastCase => of !== 'gaps');
  const forecasts = hiddenWinter(record, target, winter, hidden.pairsWith, options);
  const clocks = options.stages.map((stage) => ({ stage, clock: stageClock(options.table, stage) }));
  const observed = new Map(clocks.map(({ stage, clock }) => [stage, clock(winter.measured)]));
  const rows: HindcastRow[] = [];
  for (const of of cases) {
    for (const lead of options.leads) {
      const days = leadDays(record.fertilised, lead, winter.year);
      const asked = clocks.filter(({ stage }) => of === 'under-ice' || !((observed.get(stage) ?? 0) <= days));
      if (asked.length === 0) continue;
      const waters = forecasts.forecast(of, days);
      const { from, start } = winter.window;
      const traces = waters.traces.map((trace) => trace.subarray(from - start));
      const window = waterMoments({ firstDay: 0, traces }, options.table, 0, days, options.seed);
      const moments = (from: typeof window, name: StageName) => {
        const asked = eggOfStage(options.table, name);
        return asked === null ? new Float64Array() : from(asked.stage, asked.egg);
      };
      const plain = plainCourses(hidden, of, days);
      for (const { stage, clock } of asked) {
        rows.push(
          row(hidden, of, lead, days, stage, clock, moments(window, stage), plain, forecasts.winters(of)),
        );
      }
    }
  }
  return rows;
}

/** Days from the fertilisation day of `year` to the lead day on or after it. */
export function leadDays(fertilised: MonthDay, lead: MonthDay, year: number): number {
  const begins = Date.UTC(year, fertilised.month - 1, fertilised.day);
  const same = Date.UTC(year, lead.month - 1, lead.day);
  const at = same >= begins ? same : Date.UTC(year + 1, lead.month - 1, lead.day);
  return Math.round((at - begins) / 86_400_000);
}

type PlainCourses = Partial<Record<PlainMethod, Float64Array[]>>;

function row(
  hidden: Hidden,
  of: HindcastCase,
  lead: MonthDay,
  days: number,
  stage: StageName,
  clock: StageClock,
  drawn: Float64Array,
  plain: PlainCourses,
  winters: number,
): HindcastRow {
  const { target, winter, record } = hidden;
  const dates = drawn.slice().sort();
  const reached = clock(winter.measured);
  const observed = Number.isFinite(reached) ? reached : null;
  const reference: Partial<Record<PlainMethod, number>> = {};
  let ensembleCrps: number | null = null;
  for (const [name, methods] of Object.entries(plain)) {
    const answers = methods.map(clock);
    const answer = median(answers);
    if (!Number.isFinite(answer)) continue;
    if (isPlainMethod(name)) reference[name] = answer;
    if (name === 'ensemble' && observed !== null) ensembleCrps = fairCrps(answers, observed);
  }
  return {
    case: of,
    lead,
    stage,
    station: target.station.station,
    network: target.network,
    winter: winter.year,
    fertilised: record.axis.first + winter.window.from,
    observed,
    p10: dates.length > 0 ? sortedQuantile(dates, 0.1) : Number.POSITIVE_INFINITY,
    p50: dates.length > 0 ? sortedQuantile(dates, 0.5) : Number.POSITIVE_INFINITY,
    p90: dates.length > 0 ? sortedQuantile(dates, 0.9) : Number.POSITIVE_INFINITY,
    crps: observed === null ? null : fairCrps(dates, observed),
    reference,
    ensembleCrps,
    icy: winter.icy,
    passed: reached <= days,
    winters,
  };
}

const METHODS: readonly PlainMethod[] = [
  'ensemble',
  'bestNeighbour',
  'bestNeighbourBeyond1km',
  'persistence',
];

function isPlainMethod(name: string): name is PlainMethod {
  return METHODS.some((method) => method === name);
}

function plainCourses(hidden: Hidden, of: HindcastCase, lead: number): PlainCourses {
  const { target, winter, winters, options } = hidden;
  const { start, from, to } = winter.window;
  const before = target.mean.subarray(start, from);
  const ownLead = of === 'under-ice' ? 0 : lead;
  const own = winter.measured;
  const allowed = (year: number) => options.winters === 'leave-one-out' || year < winter.year;
  const courses: PlainCourses = {};
  const pasts = pastWinters(winters, winter.year, allowed);
  if (pasts.length > 0) courses.ensemble = spliced(own, pasts, ownLead);
  const persistent = persisted(own, before, ownLead, to - from);
  if (persistent !== null) courses.persistence = [persistent];
  if (of === 'history') return courses;
  const near = courseOfNeighbour(hidden, of, lead, (km) => km === null || km <= NEAR_KM);
  if (near !== null) courses.bestNeighbour = near;
  const apart = courseOfNeighbour(hidden, of, lead, (km) => km === null || (km <= NEAR_KM && km >= 1));
  if (apart !== null) courses.bestNeighbourBeyond1km = apart;
  return courses;
}

function courseOfNeighbour(
  hidden: Hidden,
  of: HindcastCase,
  lead: number,
  near: (km: number | null) => boolean,
): Float64Array[] | null {
  const { record, target, winter, options } = hidden;
  const { from, to } = winter.window;
  const last = of === 'late-download' ? from + 242 : from + lead;
  const pairs = options.winters === 'past-only' ? null : hidden.pairsWith;
  if (pairs === null) return null;
  const best = bestNeighbour(target, record.stations, winter.season, pairs, near, from, last);
  if (best === null) return null;
  if (of === 'late-download') return spliced(winter.measured, [mapped(best, from, to)], lead);
  return mappedPasts(hidden, best, lead);
}

/** The neighbour to the lead day and its own past winters after it, all through the line. */
function mappedPasts({ record, winter }: Hidden, best: BestNeighbour, lead: number): Float64Array[] | null {
  const { from } = winter.window;
  const { slope, intercept } = best.line;
  const through = (x: number) => intercept + slope * x;
  const known = straightOver(best.neighbour.mean, from, from + lead).map(through);
  if (known.length < lead) return null;
  const pasts = pastWinters(wholeWinters(record, best.neighbour), winter.year, () => true);
  return pasts.length === 0
    ? null
    : spliced(
        known,
        pasts.map((past) => past.map(through)),
        lead,
      );
}
