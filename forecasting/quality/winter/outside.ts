import { nearby } from '../expected.js';
import type { Finding } from '../finding.js';
import { DAY, HOUR, hourAt, median, startOfHour } from '../hours.js';
import { type Judged, seesDays } from '../record.js';

/** How far from either end of a record a step into or out of the water is looked for (ours). */
const REACH = 5 * DAY;
/** A step that water does not make in two hours, °C (ours). */
const STEP = 4;
/** How far the neighbours' water may be from the logger's once it is in, and has to be while it is not, °C (ours). */
const IN = 2.5;
const OUT = 3.5;

/**
 * Ran before it was placed, or after it was taken out, where no deployment says when that was: the last great step
 * near an end of the record with something else than water on its far side. Readings beyond the step fail; where no
 * neighbour vouches for the water they are only suspect.
 */
export function outsideDeployment(record: Judged): Finding[] {
  if (record.kind === 'air' || !seesDays(record)) return [];
  const { at } = record;
  const [start, end] = [at[0], at[at.length - 1]];
  const said = record.deployments;
  const findings: Finding[] = [];
  if (end - start < 2 * REACH) return findings;
  if (!said.some(({ from }) => Math.abs(from - start) <= REACH)) {
    const step = stepNear(record, 'start');
    if (step !== null) findings.push(finding(record, start, startOfHour(step.hour) - 1, step, 0));
  }
  if (!said.some(({ to }) => to !== null && Math.abs(to - end) <= REACH)) {
    const step = stepNear(record, 'end');
    if (step !== null) findings.push(finding(record, startOfHour(step.hour + 1), end, step, 1));
  }
  return findings;
}

interface Step {
  /** First hour in the water, or the last. */
  readonly hour: number;
  readonly size: number;
  readonly vouched: boolean;
}

function stepNear(record: Judged, side: 'start' | 'end'): Step | null {
  const { hours } = record;
  const length = Math.min(REACH / HOUR, hours.mean.length - 24);
  const direction = side === 'start' ? 1 : -1;
  const edge = side === 'start' ? hours.first : hours.first + hours.mean.length - 1;
  const value = (steps: number) => hourAt(hours, edge + direction * steps);
  const around = nearby(record);
  let found: Step | null = null;
  for (let inside = 1; inside < length; inside++) {
    const outer = Number.isNaN(value(inside - 1)) ? value(inside - 2) : value(inside - 1);
    const after = Array.from({ length: 12 }, (_, i) => value(inside + 1 + i));
    const level = median(after);
    if (!(Math.abs(outer - level) >= STEP && Math.abs(value(inside + 1) - level) < 1.5)) continue;
    if (Math.max(...after.filter(Number.isFinite)) - Math.min(...after.filter(Number.isFinite)) > STEP)
      continue;
    const day = Math.floor((edge + direction * (inside + 6)) / 24);
    const { water } = around(day);
    const vouched = Math.abs(level - water) <= IN && Math.abs(outer - water) >= OUT;
    if (!Number.isNaN(water) && !vouched) continue;
    found = { hour: edge + direction * inside, size: outer - level, vouched };
  }
  return found;
}

function finding(record: Judged, from: number, to: number, step: Step, after: number): Finding {
  return {
    kind: 'outside-deployment',
    from,
    to: Math.max(from, to),
    flag: step.vouched ? 4 : 3,
    figures: { step: step.size, hours: (to - from) / HOUR, after, limit: STEP, accuracy: record.accuracy },
    offer: null,
  };
}
