import { daily } from '../../../forecasting/quality/hours.js';
import { type Comparison, hourly, type RecordToJudge } from '../../../forecasting/quality/index.js';
import { normals } from '../../../sample-logs/chance.js';

export const HOUR = 3_600_000;
export const DAY = 24 * HOUR;
/** 1 October 2025, UTC. */
export const START = Date.UTC(2025, 9, 1);

interface Wanted {
  readonly kind?: RecordToJudge['kind'];
  readonly days?: number;
  /** °C at an instant, before noise. */
  readonly water?: (at: number) => number;
  readonly noise?: number;
  readonly decimals?: number;
  readonly seed?: number;
  /** A reading in place of the water's, by its number; null leaves it. */
  readonly at?: (i: number, at: number) => number | null;
  readonly neighbours?: readonly Comparison[];
  readonly air?: readonly Comparison[];
}

/** Open water that swings by day, colder towards winter, at 0 °C from December to mid-April. */
export function river(at: number, late = 0): number {
  const day = (at - START) / DAY;
  const season = day < 61 ? 9 - day * 0.14 : day > 195 ? (day - 195) * 0.15 : 0;
  const swing = Math.min(1, season / 2) * 0.9;
  return Math.max(0, season + swing * Math.cos(((at / HOUR - 20 - late) / 24) * 2 * Math.PI));
}

/** Air of that winter: frost from mid-November to April, fronts every few days, a day's swing of ±5 °C. */
export function weather(at: number): number {
  const day = (at - START) / DAY;
  return (
    -4 +
    4 * Math.sin(at / (1.3 * DAY)) +
    12 * Math.cos(((day + 75) / 365) * 2 * Math.PI + 0.2) +
    5 * Math.cos(((at / HOUR - 19) / 24) * 2 * Math.PI)
  );
}

/** An hourly record of an invented stream, a hundredth of a degree fine, with what is put into it. */
export function record(wanted: Wanted = {}): RecordToJudge {
  const { days = 60, water = river, noise = 0.02, decimals = 2, seed = 7, kind = 'stream' } = wanted;
  const draw = normals(seed);
  const length = days * 24;
  const at = Float64Array.from({ length }, (_, i) => START + i * HOUR);
  const value = at.map((instant, i) => {
    const shown = wanted.at?.(i, instant) ?? water(instant) + noise * draw();
    return Math.round(shown * 10 ** decimals) / 10 ** decimals;
  });
  return {
    kind,
    quantity: 'temperature',
    at,
    value,
    offsetMinutes: 0,
    accuracy: 0.2,
    deployments: [],
    batteries: [],
    air: wanted.air ?? [],
    neighbours: wanted.neighbours ?? [],
    history: null,
  };
}

/** A record as another is judged beside it. */
export function beside(station: string, { at, value }: Pick<RecordToJudge, 'at' | 'value'>): Comparison {
  const hours = hourly(at, value);
  const days = daily(hours, 0);
  return { station, hours, days, history: days };
}

/** Two neighbours of that river, and its air, for so many days. */
export function valley(days: number): { neighbours: readonly Comparison[]; air: readonly Comparison[] } {
  return {
    neighbours: [
      beside('upstream', record({ days, seed: 11, water: (at) => river(at, 0.5) })),
      beside('downstream', record({ days, seed: 12, water: (at) => river(at, -0.5) * 1.1 })),
    ],
    air: [beside('air', record({ days, seed: 13, kind: 'air', water: weather, noise: 0.3, decimals: 1 }))],
  };
}
