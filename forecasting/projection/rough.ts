import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { emptyDays, Origin } from '../day-series.js';
import type { ProjectionSource, Water, WaterInput } from '../water.js';

/** A first form: own days, straight lines over gaps, past winters spliced on. */
export function roughWater(input: WaterInput): Water {
  const { from, to, target } = input;
  const length = to - from + 1;
  const days = emptyDays(from, length);
  const own = (day: number) => {
    const i = day - target.days.firstDay;
    return day <= input.asOf && i >= 0 && i < target.days.mean.length ? target.days.mean[i] : Number.NaN;
  };
  let lastMeasured: number | null = null;
  for (let d = 0; d < length; d++) {
    if (!Number.isFinite(own(from + d))) continue;
    days.mean[d] = own(from + d);
    days.spread[d] = 0;
    days.coverage[d] = 1;
    days.origin[d] = Origin.measured;
    lastMeasured = from + d;
  }
  const winters = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12].filter((y) => {
    let n = 0;
    for (let d = 0; d < length; d++) if (Number.isFinite(own(from + d - Math.round(365.25 * y)))) n++;
    return n > 0.8 * length;
  });
  const random = xoroshiro128plus(input.seed);
  const members = winters.map((y) => {
    const member = new Float64Array(length);
    let last = 0;
    for (let d = 0; d < length; d++) {
      const past = own(from + d - Math.round(365.25 * y));
      last = Number.isFinite(past) ? past : last;
      member[d] = Number.isFinite(days.mean[d]) ? days.mean[d] : last;
    }
    return member;
  });
  const traces =
    members.length === 0
      ? []
      : Array.from({ length: input.traces }, (_, i) =>
          members[i % members.length].map((v, d) =>
            days.origin[d] === Origin.measured ? v : Math.max(0, v + uniformFloat64(random) - 0.5),
          ),
        );
  for (let d = 0; d < length && members.length > 0; d++) {
    if (days.origin[d] === Origin.measured) continue;
    days.mean[d] = members.reduce((a, m) => a + m[d], 0) / members.length;
    days.spread[d] = 1;
    days.origin[d] = Origin.projected;
  }
  const years = winters.map((y) => new Date((from - Math.round(365.25 * y)) * 86_400_000).getUTCFullYear());
  const projection: ProjectionSource =
    members.length > 0 ? { kind: 'own-history', winters: years } : { kind: 'none' };
  return {
    station: target.station,
    days,
    traces,
    winters: members.length,
    stretches: [],
    projection,
    lastMeasured,
    lastFilled: lastMeasured,
    remarks: [],
  };
}
