import jStat from 'jstat';
import { type Counted, LEVEL, type ShareInterval } from './wilson.js';

/**
 * Survival of the eggs that were fertilised: the share of all eggs over the share of a control sample that was fertilised
 * (Abbott 1925, J. Econ. Entomol. 18:265-267: memory). Errors of both add up on the log scale, the survival's being what
 * its own interval shows: log s ± √(half² + z²(1 − f)/(n f)) (Katz et al. 1978, Biometrics 34:469-474: memory).
 *
 * @param survival share and interval of all eggs
 * @param control so many fertilised of so many looked at
 * @returns null without a control that tells anything; never above 1.
 */
export function ofFertilised(survival: ShareInterval, control: Counted, level = LEVEL): ShareInterval | null {
  if (!(control.of > 0) || !(control.seen > 0)) return null;
  const rate = Math.min(1, control.seen / control.of);
  const z = jStat.normal.inv(0.5 + level / 2, 0, 1);
  const ofControl = (z ** 2 * (1 - rate)) / (control.of * rate);
  const share = survival.share / rate;
  const within = (bound: number, sign: 1 | -1) => {
    if (survival.share === 0 || bound === 0) return bound / rate;
    const half = Math.log(bound / survival.share);
    return share * Math.exp(sign * Math.sqrt(half ** 2 + ofControl));
  };
  return {
    share: Math.min(1, share),
    from: Math.min(1, within(survival.from, -1)),
    to: Math.min(1, within(survival.to, 1)),
  };
}
