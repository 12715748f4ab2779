import { type FadingModel, fadingSmoother, NORMALS_A_DAY } from '../residual/fading.js';
import { widerFor } from '../windows/few-winters.js';
import type { Member } from './members.js';
import { normalPool } from './normal-pool.js';
import { FILLED_WEIGHT } from './normals.js';

/** Winters for which the pooled spread of a day counts beside the winters at hand (ours, from the hindcast). */
const POOLED_WINTERS = 3;
/** How a winter strays from normal where no winter shows it. */
const WINTER: FadingModel = { slowDays: 60, fastDays: 8, slowShare: 0.5, fastShare: 0.45 };

/**
 * Possible departures from normal, one path a trace, as past winters had them and as a further winter may:
 *
 *     z = w √(1 + 1/M) · ( √a · Σₖ gₖ (rₖ − r̄)/√(M−1) + √(1−a) · c e ),   a = (M−1)/(M−1+3), g standard normal,
 *
 * where rₖ are the M past winters and e an error that fades with the day's pooled spread. Sums of whole winters
 * keep what days of one winter have in common; √(1 + 1/M) is the error of the normals themselves; c undoes that
 * the spread was taken about normals which had followed those same winters.
 */
export function drawnDepartures(
  members: readonly Member[],
  sd: Float64Array,
  seed: number,
  traces: number,
  wider = 1,
): (trace: number, out: Float64Array) => void {
  const length = sd.length;
  const count = members.length;
  const centre = new Float64Array(length);
  for (const { departure } of members) for (let d = 0; d < length; d++) centre[d] += departure[d] / count;
  const worth = effectiveWinters(members);
  const share = count > 1 ? (count - 1) / (count - 1 + POOLED_WINTERS) : 0;
  const further = wider * widerFor(worth) * Math.sqrt(1 + 1 / Math.max(1, worth));
  const ofWinters = count > 1 ? further * Math.sqrt(share / (count - 1)) : 0;
  const pooled = Float64Array.from(sd, (of, d) => {
    let unsure = 0;
    for (const member of members) unsure += member.unsure[d] / count;
    return further * Math.sqrt((1 - share) * unseen(count) * of * of + share * unsure);
  });
  const pairs = (traces + 1) >> 1;
  const normals = normalPool(seed, pairs * length * NORMALS_A_DAY);
  const weights = members.map(({ season }) => normalPool(seed + 7919 * season, pairs));
  const nothing = new Float64Array(length).fill(Number.NaN);
  const free = fadingSmoother(WINTER, pooled, nothing);
  const path = new Float64Array(length);
  let drawn = -1;
  return (trace, out) => {
    const pair = trace >> 1;
    if (pair !== drawn) {
      free.draw(normals, pair * length * NORMALS_A_DAY, path);
      for (let k = 0; k < count && ofWinters > 0; k++) {
        const g = weights[k][pair] * ofWinters;
        const { departure } = members[k];
        for (let d = 0; d < length; d++) path[d] += g * (departure[d] - centre[d]);
      }
      drawn = pair;
    }
    const sign = trace % 2 === 0 ? 1 : -1;
    for (let d = 0; d < length; d++) out[d] = sign * path[d];
  };
}

/** Variance that normals of one winter hide: its slow departures are taken for what is usual (ours). */
const UNSEEN_IN_ONE = 4;

/** How much larger the variance about the true normals is than about those of the winters at hand, c². */
function unseen(winters: number): number {
  if (winters === 0) return 1;
  return winters === 1 ? UNSEEN_IN_ONE : winters / (winters - 1);
}

/**
 * How many winters measured throughout say as much as these, of which some are filled: (Σw)² / Σw², a day filled
 * counting as it does in the normals.
 */
function effectiveWinters(members: readonly Member[]): number {
  let sum = 0;
  let squares = 0;
  for (const { measured, days } of members) {
    const weight = (measured + FILLED_WEIGHT * (days - measured)) / days;
    sum += weight;
    squares += weight * weight;
  }
  return squares > 0 ? (sum * sum) / squares : 0;
}
