import type { Normals } from '../projection/normals.js';
import { SEASON_DAYS, type SeasonAxis } from '../season-axis.js';
import type { SeasonalCurve } from '../water.js';

const MS_DAY = 86_400_000;

/** The monthly normals a group states, straight between the 15th of each month, as normals of the season's days. */
export function curveNormals(axis: SeasonAxis, curve: SeasonalCurve): Normals {
  const start = axis.starts(2001);
  const mean = Float64Array.from({ length: SEASON_DAYS }, (_, d) => onCurve(curve, start + d));
  return { mean, sd: new Float64Array(SEASON_DAYS).fill(Math.max(0.1, curve.spread)) };
}

function onCurve({ monthly }: SeasonalCurve, day: number): number {
  const date = new Date(day * MS_DAY);
  const year = date.getUTCFullYear();
  const month = date.getUTCDate() >= 15 ? date.getUTCMonth() : date.getUTCMonth() - 1;
  const from = Date.UTC(year, month, 15) / MS_DAY;
  const to = Date.UTC(year, month + 1, 15) / MS_DAY;
  const before = monthly[(month + 12) % 12];
  return before + ((monthly[(month + 1) % 12] - before) * (day - from)) / (to - from);
}
