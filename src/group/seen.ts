import { observedAtLifting } from '../../forecasting/index.js';
import type { StageObservation } from '../../forecasting/observations/likelihood.js';
import type { Season } from '../season/index.js';

const DAY = 86_400_000;
/** Eggs a crew looks at where it wrote down no numbers (ours). */
export const LOOKED_AT = 20;

/**
 * So many of those had come, at the least, to a stage noted without numbers: a few fry are seen over the gravel, any
 * other stage is noted once half of the eggs have come to it (ours).
 */
export function leastSeen(stage: string): number {
  return stage === 'emergence' ? 1 : LOOKED_AT / 2;
}

/** Living ones and empty compartments found in a box on a day, whether it was lifted then or put back. */
export interface Opened {
  readonly box: string;
  readonly part: string | null;
  readonly date: string;
  readonly lifted: boolean;
  readonly alive: number;
  readonly empty: number | null;
  /** Of the living, eggs that have not hatched; null where they were not told apart. */
  readonly aliveEggs: number | null;
}

/** Boxes opened and counted where they lay. Two people's counts of one box are one opening: their mean. */
export function openings({ checkedAndPutBack, tallies }: Season): Opened[] {
  const back = checkedAndPutBack.map((one) => ({ ...one, part: null, lifted: false }));
  const lifted = tallies
    .filter(({ found, empty }) => found === 'in-place' && empty !== null)
    .map((one) => ({ ...one, lifted: true }));
  const found = new Map<string, Opened[]>();
  for (const { box, part, when, lifted: out, alive, empty, aliveEggs } of [...back, ...lifted]) {
    if (alive === null) continue;
    const key = JSON.stringify([box, part, when.date, out]);
    const one = { box, part, date: when.date, lifted: out, alive, empty, aliveEggs };
    found.set(key, [...(found.get(key) ?? []), one]);
  }
  return [...found.values()].map((same) => {
    const alive = mean(same.map((one) => one.alive)) ?? 0;
    const told = mean(same.flatMap((one) => one.aliveEggs ?? []));
    return {
      ...same[0],
      alive,
      empty: mean(same.flatMap((one) => one.empty ?? [])),
      aliveEggs: told === null ? null : Math.min(told, alive),
    };
  });
}

/** An opening in which eggs were told from alevins, as bounds on its lot's hatch; null where it tells nothing of one lot. */
export function hatchSeen(opened: Opened, season: Season): StageObservation | null {
  const { box, part, date, alive, empty, aliveEggs } = opened;
  const fills = season.boxes.find(({ id }) => id === box)?.fills ?? [];
  const counted = fills.some((fill) => fill.part === part)
    ? fills.filter((fill) => fill.part === part)
    : fills;
  const [lot, ...others] = new Set(counted.map((fill) => fill.lot));
  if (lot === undefined || others.length > 0 || aliveEggs === null || empty === null) return null;
  const day = Date.parse(`${date}T00:00Z`) / DAY;
  return observedAtLifting(lot, box, day, { eggs: aliveEggs, alevins: alive - aliveEggs, empty });
}

function mean(values: readonly number[]): number | null {
  return values.length === 0 ? null : Math.round(values.reduce((a, b) => a + b, 0) / values.length);
}
