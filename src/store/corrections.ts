import type { Check, DeploymentEntry, EpochMillis, FlagEntry, LoadNumber } from './entries.js';
import type { SeriesColumns } from './reading-store.js';

const DAY = 86_400_000;
/**
 * How far outside a deployment a download is trimmed (ours): a logger is started in the office and read some time
 * after it was taken out. What lies further away is no start or end of that deployment but a record of its own,
 * such as an agency's, loaded for the same station.
 */
export const TRIM_REACH = 60 * DAY;

/** What a load brought to a series, instants as its file gave them. */
export interface LoadSpan {
  readonly first: EpochMillis;
  readonly last: EpochMillis;
  readonly readings: number;
}

/** By load, standing ones only. */
export type LoadSpans = ReadonlyMap<LoadNumber, LoadSpan>;

/** What `checks` add at an instant: a straight line between two checks, level before the first and after the last. */
export function correctionAt(checks: readonly Check[], at: EpochMillis): number {
  if (checks.length === 0) return 0;
  const after = checks.findIndex((check) => check.at > at);
  if (after === 0) return checks[0].add;
  if (after === -1) return checks[checks.length - 1].add;
  const a = checks[after - 1];
  const b = checks[after];
  return a.add + ((b.add - a.add) * (at - a.at)) / (b.at - a.at);
}

/** The farthest any clock of these deployments is set right by, milliseconds. */
export function farthestShift(deployments: readonly DeploymentEntry[]): number {
  return deployments.reduce(
    (most, { clock }) => clock.reduce((far, { add }) => Math.max(far, Math.abs(add)), most),
    0,
  );
}

/**
 * Readings as the water had them: instants set right by the deployment's clock checks, values by its checks in
 * melting ice, readings of its downloads from before it was in the water or after it was out left away. Nothing
 * stored is changed.
 */
export function corrected(
  columns: SeriesColumns,
  deployments: readonly DeploymentEntry[],
  spans: LoadSpans,
): SeriesColumns {
  if (deployments.length === 0) return columns;
  const trimmed = new Map([...spans].map(([load, span]) => [load, touches(deployments, span)]));
  const { length } = columns.at;
  const at = new Float64Array(length);
  const value = new Float64Array(length);
  const load = new Int32Array(length);
  let kept = 0;
  for (let i = 0; i < length; i++) {
    const stored = columns.at[i];
    const deployment = deployments.find((one) => lay(one, stored + correctionAt(one.clock, stored)));
    if (deployment === undefined) {
      if (trimmed.get(columns.load[i]) === true && withinReach(deployments, stored)) continue;
      at[kept] = stored;
      value[kept] = columns.value[i];
    } else {
      at[kept] = stored + correctionAt(deployment.clock, stored);
      // Corrections keep the resolution of the store: 1e-4.
      value[kept] =
        Math.round((columns.value[i] + correctionAt(deployment.temperature, at[kept])) * 1e4) / 1e4;
    }
    load[kept++] = columns.load[i];
  }
  return { at: at.subarray(0, kept), value: value.subarray(0, kept), load: load.subarray(0, kept) };
}

function lay({ from, to }: DeploymentEntry, at: EpochMillis): boolean {
  return at >= from && (to === null || at <= to);
}

function touches(deployments: readonly DeploymentEntry[], { first, last }: LoadSpan): boolean {
  return deployments.some(
    ({ from, to, clock }) =>
      last + correctionAt(clock, last) >= from && (to === null || first + correctionAt(clock, first) <= to),
  );
}

function withinReach(deployments: readonly DeploymentEntry[], stored: EpochMillis): boolean {
  return deployments.some(({ from, to, clock }) => {
    const at = stored + correctionAt(clock, stored);
    return at >= from - TRIM_REACH && (to === null || at <= to + TRIM_REACH);
  });
}

/** The flag of a reading no test has judged: QARTOD's "not evaluated". */
const NOT_EVALUATED = 2;
/** What a person said goes before what a test says. */
const RULINGS = ['person', 'ruling'];

/**
 * QARTOD flag of each instant. The gravest of the tests counts (4 before 3 before 1); a person's ruling goes
 * before every test, the newest ruling before older ones.
 */
export function flagged(at: Float64Array, flags: readonly FlagEntry[]): Uint8Array {
  const flag = new Uint8Array(at.length).fill(NOT_EVALUATED);
  const gravity = (code: number) => (code === NOT_EVALUATED ? 0 : code);
  for (const one of flags.filter(({ set }) => !RULINGS.includes(set))) {
    for (let i = firstFrom(at, one.from); i < at.length && at[i] <= one.to; i++) {
      if (gravity(one.flag) > gravity(flag[i])) flag[i] = one.flag;
    }
  }
  const rulings = flags.filter(({ set }) => RULINGS.includes(set)).sort((a, b) => a.at - b.at);
  for (const one of rulings) {
    for (let i = firstFrom(at, one.from); i < at.length && at[i] <= one.to; i++) flag[i] = one.flag;
  }
  return flag;
}

/** Failed and missing readings are not used; good, unevaluated and suspect but kept ones are. */
export function isUsable(flag: number): boolean {
  return flag <= 3;
}

/** 1 where the reading is used; null where all are. */
export function usable(flag: Uint8Array): Uint8Array | null {
  for (let i = 0; i < flag.length; i++) {
    if (!isUsable(flag[i])) return flag.map((code) => (isUsable(code) ? 1 : 0));
  }
  return null;
}

/** Index of the first instant that is not before `from`. */
function firstFrom(at: Float64Array, from: EpochMillis): number {
  let low = 0;
  let high = at.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (at[middle] < from) low = middle + 1;
    else high = middle;
  }
  return low;
}
