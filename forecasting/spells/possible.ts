import { Origin } from '../day-series.js';
import type { HarmLimit } from '../table.js';
import type { Celsius } from '../units.js';
import type { Water } from '../water.js';
import type { Candidate } from './candidate.js';
import type { BoxAtRisk, LotAtRisk, SpellInput } from './input.js';
import { dayTime, instant, longEnough, passed, severityOf } from './measured.js';
import { PLAUSIBLE, StageClock } from './stage-clock.js';
import type { Stretch } from './stretches.js';
import { hoursAbove, type Swing, UsualSwing } from './swing.js';

/**
 * Spells that filled or projected water may hold: how many of the possible winters have one, while the eggs of that
 * same winter are in the limit's span. The hours of a day come from its mean and the usual swing of the season; a change
 * within an hour is hidden altogether, and no filled water is ever colder than freezing, so neither ice nor sudden change
 * is told from it: warm water, and water too cold for fry near emergence, are.
 *
 * @param measured when readings speak for the box: they are judged in place of these days.
 */
export function possibleSpells(
  input: SpellInput,
  measured: (box: string) => readonly Stretch[],
  accuracy: (station: string) => Celsius,
): Candidate[] {
  return input.boxes.flatMap((box) => {
    const { water } = box;
    if (water === null || water.traces.length === 0) return [];
    const open = openDays(water, measured(box.box), input);
    return box.lots.flatMap((lot) =>
      lot.table.harm.flatMap((limit) => {
        const isTemperature = limit.kind === 'warm' || limit.kind === 'cold';
        if (!isTemperature || limit.severity === 'advice' || lot.draws === null) return [];
        return ofLimit(box, { ...lot, draws: lot.draws }, water, limit, open, accuracy(water.station), input);
      }),
    );
  });
}

/** 1 for each day of the water that is not measured, by whichever of the box's stations. */
function openDays({ days }: Water, measured: readonly Stretch[], { dayOffset }: SpellInput): Uint8Array {
  return Uint8Array.from(days.origin, (origin, d) => {
    if (origin !== Origin.filled && origin !== Origin.projected) return 0;
    const noon = instant(days.firstDay + d + 0.5, dayOffset);
    return measured.some(({ from, to }) => from <= noon && noon <= to) ? 0 : 1;
  });
}

interface DrawnRun {
  readonly first: number;
  readonly last: number;
  readonly peak: Celsius;
  readonly hours: number;
  readonly degreeHours: number;
}

/** A limit on a day's hours: by more than the logger's accuracy, about the day's mean by its usual swing. */
interface DayLimit {
  readonly limit: HarmLimit;
  readonly accuracy: Celsius;
  /** Of each day of the water. */
  readonly swing: (d: number) => Swing;
}

function ofLimit(
  box: BoxAtRisk,
  lot: LotAtRisk & { readonly draws: NonNullable<LotAtRisk['draws']> },
  water: Water,
  limit: HarmLimit,
  open: Uint8Array,
  accuracy: Celsius,
  input: SpellInput,
): Candidate[] {
  const { dayOffset } = input;
  const clock = StageClock.of(lot.table, dayTime(lot.fertilised, dayOffset), lot.draws);
  const span = clock.span(limit.fromProgress, limit.toProgress);
  const { firstDay } = water.days;
  const begin = Math.max(0, Math.floor(Math.max(span.from, dayTime(lot.planted, dayOffset))) - firstDay);
  const lifted = box.lifted === null ? Number.POSITIVE_INFINITY : dayTime(box.lifted, dayOffset);
  const end = Math.min(open.length, Math.ceil(Math.min(span.to, lifted)) - firstDay + 1);
  const usual = box.swing ?? NO_SWING;
  const judged: DayLimit = { limit, accuracy, swing: (d) => usual.on(firstDay + d) };
  if (begin >= end || !anyBeyond(water, judged, begin, end)) return [];
  const draws = lot.draws.leaves.length;
  const counts = new Float64Array(end);
  const drawn: DrawnRun[][] = [];
  for (let k = 0; k < draws; k++) {
    const from = clock.median(limit.fromProgress, k) - firstDay;
    const to = clock.median(limit.toProgress, k) - firstDay;
    const trace = water.traces[k % water.traces.length];
    const runs = runsOfDays(
      trace,
      judged,
      open,
      Math.max(begin, Math.floor(from)),
      Math.min(end, Math.ceil(to)),
    );
    for (const { first, last } of runs) for (let d = first; d <= last; d++) counts[d]++;
    drawn.push(runs);
  }
  return stretchesOf(counts, PLAUSIBLE * draws).map(({ first, last }) => {
    const hit = drawn.flatMap((runs) =>
      runs.filter((run) => run.first <= last && run.last >= first).slice(0, 1),
    );
    const from = instant(firstDay + first, dayOffset);
    const to = instant(firstDay + last + 1, dayOffset);
    return {
      kind: limit.kind === 'warm' ? 'too-warm' : 'too-cold',
      station: water.station,
      box: box.box,
      lot: lot.lot,
      eggs: lot.eggs,
      severity: severityOf(limit),
      certainty: 'possible',
      origin: water.days.origin.subarray(first, last + 1).includes(Origin.filled) ? 'filled' : 'projected',
      from,
      to,
      hours: middle(hit.map((run) => run.hours)),
      degreeHours: middle(hit.map((run) => run.degreeHours)),
      peak: middle(hit.map((run) => run.peak)),
      chance: hit.length / draws,
      limit: passed(limit),
      stages: clock.stages(dayTime(from, dayOffset), dayTime(to, dayOffset)),
      mortality: limit.mortality === undefined ? [] : [limit.mortality],
      sign: null,
    } satisfies Candidate;
  });
}

const NO_SWING = new UsualSwing([]);

/** Whether any trace has hours beyond the limit: the farthest one of each day has, or none. */
function anyBeyond(water: Water, limit: DayLimit, begin: number, end: number): boolean {
  const { least, most } = extremesOf(water);
  const farthest = limit.limit.kind === 'warm' ? most : least;
  for (let d = begin; d < end; d++) if (beyond(farthest[d], limit, d).hours > 0) return true;
  return false;
}

/** The coldest and the warmest trace of each day. */
interface Extremes {
  readonly least: Float64Array;
  readonly most: Float64Array;
}

/** Boxes at one station share its water, and every limit asks. */
const extremes = new WeakMap<Water, Extremes>();

function extremesOf(water: Water): Extremes {
  const known = extremes.get(water);
  if (known !== undefined) return known;
  const length = water.days.mean.length;
  const made = {
    least: new Float64Array(length).fill(Number.POSITIVE_INFINITY),
    most: new Float64Array(length).fill(Number.NEGATIVE_INFINITY),
  };
  for (const trace of water.traces)
    for (let d = 0; d < length; d++) {
      if (trace[d] < made.least[d]) made.least[d] = trace[d];
      if (trace[d] > made.most[d]) made.most[d] = trace[d];
    }
  extremes.set(water, made);
  return made;
}

/** Hours of day d beyond the limit by more than the accuracy, and its farthest hour. */
function beyond(mean: Celsius, { limit, accuracy, swing }: DayLimit, d: number) {
  const { up, down } = swing(d);
  const warm = limit.kind === 'warm';
  const sign = warm ? 1 : -1;
  const about = warm ? { up, down } : { up: down, down: up };
  const { hours } = hoursAbove(sign * mean, sign * limit.limit + accuracy, about);
  return { hours, about, farthest: sign * mean + about.up - sign * limit.limit };
}

/** Runs of open days with hours beyond a limit, of which enough in a row last its hours. */
function runsOfDays(
  trace: Float64Array,
  judged: DayLimit,
  open: Uint8Array,
  begin: number,
  end: number,
): DrawnRun[] {
  const runs: DrawnRun[] = [];
  const { limit } = judged;
  const sign = limit.kind === 'warm' ? 1 : -1;
  for (let d = begin; d < end; d++) {
    const first = d;
    let [inARow, longest, hours, degreeHours, farthest] = [0, 0, 0, 0, 0];
    for (; d < end && open[d] !== 0; d++) {
      const day = beyond(trace[d], judged, d);
      if (!(day.hours > 0)) break;
      // The hours of a day that is not wholly beyond lie about its afternoon or its dawn: half of them join its neighbour.
      const whole = day.hours >= 24 - 1e-9;
      longest = Math.max(longest, day.hours, inARow + (whole ? 24 : day.hours / 2));
      inARow = whole ? inARow + 24 : day.hours / 2;
      hours += day.hours;
      degreeHours += hoursAbove(sign * trace[d], sign * limit.limit, day.about).degreeHours;
      farthest = Math.max(farthest, day.farthest);
    }
    if (d > first && longEnough({ hours: longest }, limit))
      runs.push({ first, last: d - 1, peak: limit.limit + sign * farthest, hours, degreeHours });
  }
  return runs;
}

/** Runs of days that enough of the possible winters have in a run; a day's pause is none. */
function stretchesOf(counts: Float64Array, enough: number): { first: number; last: number }[] {
  const found: { first: number; last: number }[] = [];
  for (let d = 0; d < counts.length; d++) {
    if (counts[d] < enough) continue;
    const last = found.at(-1);
    if (last !== undefined && d - last.last <= 2) last.last = d;
    else found.push({ first: d, last: d });
  }
  return found;
}

function middle(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[(sorted.length - 1) >> 1] ?? 0;
}
