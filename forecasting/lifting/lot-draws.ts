import jStat from 'jstat';
import type { LotInput } from '../forecast.js';
import type { DevelopmentTable, StageName } from '../table.js';
import { type Ensemble, normalsFor } from '../windows/ensemble.js';
import type { StageDraws } from '../windows/stage-draws.js';

/** The possible winters of a lot in a box, draw by draw; draw k is the same winter wherever it stands. */
export interface LotDraws {
  readonly stages: Readonly<Record<string, StageDraws>>;
  /** Days an alevin needs to leave the box after hatch: one value a draw, the same for the whole lot. */
  readonly leaves: Float64Array;
}

export function lotDraws(
  all: Ensemble,
  { lot, table }: LotInput,
  draws: ReadonlyMap<StageName, StageDraws>,
): LotDraws {
  const normals = normalsFor(all, 'leaves', lot);
  return { stages: Object.fromEntries(draws), leaves: leavingDays(normals, table.leavesBox) };
}

/**
 * Days to leave the box, drawn from the triangle of the table's least, usual and most days: nothing better is known
 * than those three (common practice, no source).
 *
 * @param normals standard normal draws
 * @example leavingDays(normals, { days: 10, min: 5, max: 20 }) // mean 11.7, from 5 to 20
 */
export function leavingDays(
  normals: Float64Array,
  { days, min, max }: Pick<DevelopmentTable['leavesBox'], 'days' | 'min' | 'max'>,
): Float64Array {
  const below = max > min ? (days - min) / (max - min) : 0;
  return normals.map((z) => {
    if (max <= min) return days;
    const u = jStat.normal.cdf(z, 0, 1);
    return u < below
      ? min + Math.sqrt(u * (max - min) * (days - min))
      : max - Math.sqrt((1 - u) * (max - min) * (max - days));
  });
}
