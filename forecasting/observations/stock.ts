import jStat from 'jstat';
import type { DevelopmentTable, Law, StageName } from '../table.js';
import type { Progress } from '../units.js';

/** What one lot showed: where its median egg stood by the table when so many of so many had come to a stage. */
export interface ObservedLot {
  readonly lot: string;
  readonly stage: StageName;
  /** Progress to that stage by the published table, in the water of its box, on the day it was seen. */
  readonly progress: Progress;
  /** One standard deviation of that progress, from what is not known of the water. */
  readonly waterSpread: Progress;
  readonly seen: number;
  readonly of: number;
}

/** How the group's own eggs differ from the published table. */
export interface StockAdjustment {
  readonly lots: number;
  /** Part of the way more (or less) than the table says; 0.03: eggs need 3 % more. Shrunk. */
  readonly adjustment: Progress;
  /** One standard deviation of it. */
  readonly spread: Progress;
  /** The mean the lots themselves show, before it was shrunk to the published table. */
  readonly shown: Progress;
  /** Share of the lots' own mean in the adjustment, 0 to 1. */
  readonly weight: number;
}

/**
 * A lot of which a share s had come to a stage at progress P of its median needs 1 + δ of the way:
 *
 *     δ = P − 1 − σ Φ⁻¹(s),   var δ = σ² s (1 − s) / (n φ²) + water²,   s = (seen + ½) / (of + 1)
 *
 * with σ the spread between eggs. Lots differ by the table's lotSpread; what they have in common is the stock's, a
 * priori 0 ± ownSpread, so μ = Σ w δ / (Σ w + 1/own²), w = 1 / (var δ + lot²): normal shrinkage (Morris 1983, J. Am.
 * Stat. Assoc. 78:47-55: memory). Several observations of one lot are averaged first: they are no further lots.
 *
 * Null without a lot that tells something.
 */
export function stockAdjustment(
  table: DevelopmentTable,
  observed: readonly ObservedLot[],
): StockAdjustment | null {
  const byLot = new Map<string, { delta: number; variance: number }[]>();
  for (const one of observed) {
    const row = table.stages.find(({ stage }) => stage === one.stage);
    if (row === undefined || one.of < 1 || one.seen < 0 || one.seen > one.of) continue;
    byLot.set(one.lot, [...(byLot.get(one.lot) ?? []), lateness(one, row.eggSpread)]);
  }
  if (byLot.size === 0) return null;
  let sum = 0;
  let weights = 0;
  for (const seen of byLot.values()) {
    const delta = seen.reduce((total, one) => total + one.delta, 0) / seen.length;
    const variance = seen.reduce((total, one) => total + one.variance, 0) / seen.length ** 2;
    const weight = 1 / (variance + table.lotSpread ** 2);
    sum += weight * delta;
    weights += weight;
  }
  const published = 1 / table.ownSpread ** 2;
  return {
    lots: byLot.size,
    adjustment: table.ownSpread > 0 ? sum / (weights + published) : 0,
    spread: table.ownSpread > 0 ? Math.sqrt(1 / (weights + published)) : 0,
    shown: sum / weights,
    weight: table.ownSpread > 0 ? weights / (weights + published) : 0,
  };
}

function lateness(
  { progress, waterSpread, seen, of }: ObservedLot,
  eggSpread: Progress,
): { delta: number; variance: number } {
  const share = (seen + 0.5) / (of + 1);
  const z = jStat.normal.inv(share, 0, 1);
  const density = jStat.normal.pdf(z, 0, 1);
  return {
    delta: progress - 1 - eggSpread * z,
    variance: (eggSpread ** 2 * share * (1 - share)) / (of * density ** 2) + waterSpread ** 2,
  };
}

/**
 * The published table with what the group's own lots have shown: every stage needs 1 + adjustment of the way, and the
 * table itself is as sure as the adjustment is. The published one stays beside it.
 */
export function adjustedTable(
  table: DevelopmentTable,
  { adjustment, spread }: StockAdjustment,
): DevelopmentTable {
  const longer = 1 + adjustment;
  return {
    ...table,
    id: `${table.id}+stock`,
    ownSpread: spread,
    stages: table.stages.map((row) => {
      const { needs } = row;
      if (!('law' in needs)) return row;
      return { ...row, needs: { ...needs, law: longerLaw(needs.law, longer) } };
    }),
  };
}

function longerLaw(law: Law, by: number): Law {
  switch (law.form) {
    case 'thermal-units':
      return { ...law, units: law.units * by };
    case 'power':
      return { ...law, log10a: law.log10a + Math.log10(by) };
    case 'log-quadratic':
      return { ...law, d0: law.d0 * by };
    case 'days-at':
      return { ...law, rows: law.rows.map(({ celsius, days }) => ({ celsius, days: days * by })) };
  }
}
