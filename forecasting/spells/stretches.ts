import type { EpochMillis } from '../units.js';
import { HOLE, type Readings } from './runs.js';

/** A stretch of time. */
export interface Stretch {
  readonly from: EpochMillis;
  readonly to: EpochMillis;
}

/** Stretches in order, those that touch, or lie no farther apart than `apart`, as one. */
export function united(stretches: readonly Stretch[], apart = 0): Stretch[] {
  const all: { from: number; to: number }[] = [];
  for (const { from, to } of [...stretches].sort((a, b) => a.from - b.from)) {
    const last = all.at(-1);
    if (last !== undefined && from <= last.to + apart) last.to = Math.max(last.to, to);
    else all.push({ from, to });
  }
  return all;
}

/** What of `whole` lies outside `taken` (in order, apart from each other). */
export function without(whole: readonly Stretch[], taken: readonly Stretch[]): Stretch[] {
  return whole.flatMap(({ from, to }) => {
    const left: Stretch[] = [];
    let begin = from;
    for (const gone of taken) {
      if (gone.to <= begin || gone.from >= to) continue;
      if (gone.from > begin) left.push({ from: begin, to: gone.from });
      begin = Math.max(begin, gone.to);
    }
    if (begin < to) left.push({ from: begin, to });
    return left;
  });
}

/** What two lists of stretches have in common. */
export function common(a: readonly Stretch[], b: readonly Stretch[]): Stretch[] {
  return a.flatMap((one) =>
    b.flatMap((other) => {
      const from = Math.max(one.from, other.from);
      const to = Math.min(one.to, other.to);
      return from <= to ? [{ from, to }] : [];
    }),
  );
}

export const meet = (a: Stretch, b: Stretch): boolean => a.from <= b.to && b.from <= a.to;

/** Where a record speaks: usable readings no more than 6 h apart. */
export function covered({ at, usable }: Readings): Stretch[] {
  const all: { from: number; to: number }[] = [];
  for (let i = 0; i < at.length; i++) {
    if (usable !== null && usable[i] === 0) continue;
    const last = all.at(-1);
    if (last !== undefined && at[i] - last.to <= HOLE) last.to = at[i];
    else all.push({ from: at[i], to: at[i] });
  }
  return all;
}
