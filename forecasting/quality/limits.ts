import type { StationKind } from '../day-series.js';

/** What is recorded at a station, as the store names it. */
export type RecordedQuantity = 'temperature' | 'level' | 'discharge';

/**
 * Limits of the QARTOD tests for one kind of record. The manual leaves their values to the operator: these are ours,
 * in °C, m or m³/s; a rate is per hour.
 */
export interface Limits {
  /** Gross range: outside `fail` no such instrument or medium reads; outside `suspect` it would be extraordinary. */
  readonly fail: readonly [number, number];
  readonly suspect: readonly [number, number];
  /** Spike: how far a reading may stand off the mean of the two beside it. null: not evaluated. */
  readonly spike: { readonly suspect: number; readonly fail: number } | null;
  /** Rate of change: never suspected below this, however quiet the day before was. null: not evaluated. */
  readonly rate: number | null;
  /** Whether equal readings are looked at, and whether the ice plateau spares them. */
  readonly flatLine: 'everywhere' | 'off-the-plateau' | 'not';
}

const WATER: Limits = {
  fail: [-5, 40],
  suspect: [-3, 32],
  spike: { suspect: 1.5, fail: 3 },
  rate: 2,
  flatLine: 'off-the-plateau',
};

const BY_KIND: Readonly<Record<StationKind, Limits>> = {
  stream: WATER,
  gravel: { ...WATER, suspect: [-1, 25], spike: { suspect: 1, fail: 2 }, rate: 1 },
  gauge: WATER,
  tank: { ...WATER, fail: [-2, 40], suspect: [-0.5, 20], spike: { suspect: 2, fail: 5 }, rate: 5 },
  air: {
    fail: [-60, 55],
    suspect: [-48, 42],
    spike: { suspect: 6, fail: 15 },
    rate: 12,
    flatLine: 'off-the-plateau',
  },
};

const LEVEL: Limits = {
  fail: [-100, 10_000],
  suspect: [-100, 10_000],
  spike: null,
  rate: null,
  flatLine: 'everywhere',
};
const DISCHARGE: Limits = { ...LEVEL, fail: [0, 500_000], suspect: [0, 200_000] };

export function limitsFor(kind: StationKind, quantity: RecordedQuantity = 'temperature'): Limits {
  if (quantity === 'level') return LEVEL;
  return quantity === 'discharge' ? DISCHARGE : BY_KIND[kind];
}

/**
 * On the ice plateau, |T| ≤ 0.3 °C, water stands still for months: there 70 % of hourly readings at a resolution of
 * 0.1 °C would fail the flat-line test (computed on winters of ice-covered rivers), so it spares them.
 */
export const PLATEAU = 0.3;
