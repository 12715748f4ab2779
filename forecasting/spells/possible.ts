import { Origin } from '../day-series.js';
import type { HarmLimit } from '../table.js';
import type { Celsius } from '../units.js';
import type { Water } from '../water.js';
import type { Candidate } from './candidate.js';
import type { BoxAtRisk, LotAtRisk, SpellInput } from './input.js';
import { dayTime, instant, passed, severityOf } from './measured.js';
import { PLAUSIBLE, StageClock } from './stage-clock.js';
import type { Stretch } from './stretches.js';

/**
 * Spells that filled or projected water may hold: how many of the possible winters have one, while the eggs of that
 * same winter are in the limit's span. A day's mean hides the hours of the day, and a change within an hour altogether;
 * no filled water is ever colder than freezing, so neither ice nor sudden change is told from it.
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
  readonly degreeHours: number;
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
  if (begin >= end || !anyBeyond(water, limit, accuracy, begin, end)) return [];
  const draws = lot.draws.leaves.length;
  const counts = new Float64Array(end);
  const drawn: DrawnRun[][] = [];
  for (let k = 0; k < draws; k++) {
    const from = clock.median(limit.fromProgress, k) - firstDay;
    const to = clock.median(limit.toProgress, k) - firstDay;
    const trace = water.traces[k % water.traces.length];
    const runs = runsOfDays(
      trace,
      limit,
      accuracy,
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
      hours: middle(hit.map((run) => 24 * (run.last - run.first + 1))),
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

function anyBeyond(
  { traces }: Water,
  limit: HarmLimit,
  accuracy: Celsius,
  begin: number,
  end: number,
): boolean {
  return traces.some((trace) => {
    for (let d = begin; d < end; d++) if (isBeyond(trace[d], limit, accuracy)) return true;
    return false;
  });
}

function isBeyond(celsius: Celsius, { kind, limit }: HarmLimit, accuracy: Celsius): boolean {
  return kind === 'warm' ? celsius > limit + accuracy : celsius < limit - accuracy;
}

/** Runs of open days beyond a limit that last its hours; only a run with an open day in it counts. */
function runsOfDays(
  trace: Float64Array,
  limit: HarmLimit,
  accuracy: Celsius,
  open: Uint8Array,
  begin: number,
  end: number,
): DrawnRun[] {
  const runs: DrawnRun[] = [];
  for (let d = begin; d < end; d++) {
    if (open[d] === 0 || !isBeyond(trace[d], limit, accuracy)) continue;
    const first = d;
    let degreeHours = 0;
    let farthest = 0;
    for (; d < end && open[d] !== 0 && isBeyond(trace[d], limit, accuracy); d++) {
      const by = Math.abs(trace[d] - limit.limit);
      degreeHours += 24 * by;
      farthest = Math.max(farthest, by);
    }
    const peak = limit.limit + (limit.kind === 'warm' ? farthest : -farthest);
    if (24 * (d - first) >= limit.hours) runs.push({ first, last: d - 1, peak, degreeHours });
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
