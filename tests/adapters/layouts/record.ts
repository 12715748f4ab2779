import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/** What was recorded at one station. Values in °C (m, m³/s where the quantity says so), in whole hundredths. */
export interface InventedSeries {
  readonly station: string;
  readonly quantity: 'temperature' | 'level' | 'discharge';
  readonly at: readonly number[];
  readonly value: readonly number[];
}

/** The truth a download is written from. */
export type InventedRecord = readonly InventedSeries[];

export interface Plan {
  readonly seed: number;
  readonly stations: readonly string[];
  /** Instant of the first reading. */
  readonly first: number;
  readonly stepMinutes: number;
  readonly readings: number;
}

const round2 = (x: number): number => Math.round(x * 100) / 100 + 0;

/** A river cooling towards freezing, with a day's swing that the ice takes away, and a jitter drawn from the seed. */
function inventSeries(plan: Plan, station: string, index: number): InventedSeries {
  const random = xoroshiro128plus(plan.seed + 7919 * index);
  const at: number[] = [];
  const value: number[] = [];
  for (let i = 0; i < plan.readings; i++) {
    const instant = plan.first + i * plan.stepMinutes * 60_000;
    const share = i / plan.readings;
    const mean = 7.5 * (1 - share) ** 2 - 0.03 + index * 0.21;
    const swing = 0.9 * (1 - share) * Math.sin((2 * Math.PI * instant) / 86_400_000);
    at.push(instant);
    value.push(round2(Math.max(-0.08, mean + swing + uniformInt(random, -9, 9) / 100)));
  }
  return { station, quantity: 'temperature', at, value };
}

/** The same plan gives the same record, always. */
export const invent = (plan: Plan): InventedRecord =>
  plan.stations.map((station, index) => inventSeries(plan, station, index));

const midnight = (at: number): number => Math.floor(at / 86_400_000) * 86_400_000;

/** A record with one value a day, each at 00:00 UTC of its date: the date is what counts. */
export const inventDaily = (plan: Omit<Plan, 'stepMinutes'>): InventedRecord =>
  invent({ ...plan, first: midnight(plan.first), stepMinutes: 1440 });
