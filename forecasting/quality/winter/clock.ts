import type { Finding } from '../finding.js';
import { DAY, HOUR, median } from '../hours.js';
import { type Judged, seesDays } from '../record.js';
import { type Lag, lags, middleLags, swingOnly, WINDOW_DAYS } from './lag.js';

/** A clock that is another zone's is off by hours; neighbouring water differs by up to this by itself (ours). */
const ZONE_HOURS = 3.5;
/** Least change of a clock that water does not make, hours: a jump, and a drift over the record (ours). */
const JUMP_HOURS = 0.75;
const DRIFT_HOURS = 1;
/** Stretches needed on each side of a jump, and in all (ours). */
const LEAST_BESIDE = 3;
const LEAST_IN_ALL = 5;

/**
 * The clock against the neighbours: a day's swing in the same valley comes at the same hours, so that the lag of the
 * best cross-correlation tells a clock that jumped, drifted, or kept another zone. Under the ice plateau there is no
 * swing and nothing is said. The correction is offered, in ms to add.
 */
export function clock(record: Judged): Finding[] {
  if (record.kind === 'tank' || !seesDays(record)) return [];
  const places = record.kind === 'air' ? record.air : record.neighbours;
  const own = swingOnly(record.hours);
  const each = places.flatMap(({ hours }) => {
    if (hours === null) return [];
    const found = lags(own, swingOnly(hours));
    return found.length < LEAST_IN_ALL ? [] : [found];
  });
  if (each.length === 0) return [];
  const usual = each.map((found) => median(found.map(({ lag }) => lag)));
  const changes = middleLags(
    each.map((found, i) => found.map(({ hour, lag }) => ({ hour, lag: lag - usual[i] }))),
  );
  const moved = jumpOrDrift(record, changes);
  return moved === null ? zone(record, each, usual) : [moved];
}

function zone(record: Judged, each: readonly (readonly Lag[])[], usual: readonly number[]): Finding[] {
  const off = median(usual);
  const agree = usual.every((one) => Math.abs(one - off) <= 2);
  const steady = each.every((found, i) => median(found.map(({ lag }) => Math.abs(lag - usual[i]))) <= 0.7);
  if (!agree || !steady || Math.abs(off) < ZONE_HOURS) return [];
  const hours = Math.round(off * 2) / 2;
  const { at } = record;
  return [
    {
      kind: 'clock',
      from: at[0],
      to: at[at.length - 1],
      flag: 3,
      figures: { hours, neighbours: each.length, change: 0 },
      offer: { quantity: 'clock', add: -hours * HOUR, course: 'step' },
    },
  ];
}

/** The better of a step and a straight line through the lags, where it is large and leaves little beside. */
function jumpOrDrift(record: Judged, row: readonly Lag[]): Finding | null {
  if (row.length < LEAST_IN_ALL) return null;
  const step = bestStep(row);
  const line = straightLine(row);
  const { at } = record;
  const last = at[at.length - 1];
  const drifts =
    Math.abs(line.rise) >= DRIFT_HOURS && line.left < 0.7 * (step?.left ?? Number.POSITIVE_INFINITY);
  if (drifts && line.scatter < Math.abs(line.rise) / 3) {
    return {
      kind: 'clock',
      from: at[0],
      to: last,
      flag: 3,
      figures: { hours: line.rise, change: 2, stretches: row.length },
      offer: { quantity: 'clock', add: -Math.round(line.rise * 60) * 60_000, course: 'rising' },
    };
  }
  if (step === null || Math.abs(step.size) < JUMP_HOURS || step.scatter > Math.abs(step.size) / 3)
    return null;
  return {
    kind: 'clock',
    from: Math.min(last, Math.max(at[0], step.hour * HOUR + (WINDOW_DAYS / 2) * DAY)),
    to: last,
    flag: 3,
    figures: { hours: step.size, change: 1, stretches: row.length },
    offer: { quantity: 'clock', add: -Math.round(step.size * 4) * 15 * 60_000, course: 'step' },
  };
}

function bestStep(row: readonly Lag[]): { hour: number; size: number; left: number; scatter: number } | null {
  let best: { hour: number; size: number; left: number; scatter: number } | null = null;
  for (let i = LEAST_BESIDE; i <= row.length - LEAST_BESIDE; i++) {
    const [before, after] = [row.slice(0, i), row.slice(i)].map((side) => side.map(({ lag }) => lag));
    const [low, high] = [median(before), median(after)];
    const off = [...before.map((one) => Math.abs(one - low)), ...after.map((one) => Math.abs(one - high))];
    const left = off.reduce((sum, one) => sum + Math.min(one, 3), 0);
    if (best !== null && left >= best.left) continue;
    best = { hour: (row[i - 1].hour + row[i].hour) / 2, size: high - low, left, scatter: median(off) };
  }
  return best;
}

/** Theil-Sen: the middle of all slopes between two stretches. */
function straightLine(row: readonly Lag[]): { rise: number; left: number; scatter: number } {
  const slopes: number[] = [];
  for (let i = 0; i < row.length; i++)
    for (let j = i + 1; j < row.length; j++)
      slopes.push((row[j].lag - row[i].lag) / (row[j].hour - row[i].hour));
  const slope = median(slopes);
  const level = median(row.map(({ hour, lag }) => lag - slope * hour));
  const off = row.map(({ hour, lag }) => Math.abs(lag - slope * hour - level));
  return {
    rise: slope * (row[row.length - 1].hour - row[0].hour),
    left: off.reduce((sum, one) => sum + Math.min(one, 3), 0),
    scatter: median(off),
  };
}
