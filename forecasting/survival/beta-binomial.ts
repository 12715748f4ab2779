import jStat from 'jstat';
import { logit, unlogit } from './quasi-binomial.js';
import { type Counted, LEVEL, type ShareInterval } from './wilson.js';

export interface BetaBinomial extends ShareInterval {
  /** How alike eggs of one box are: 0 by chance alone, 1 all or none. */
  readonly rho: number;
  readonly minusLogLikelihood: number;
}

/** Logits of ρ that are looked at: from 1e-6, which is chance alone to any box, to 0.98. */
const RHO_FROM = -14;
const RHO_TO = 4;
/** How far around the pooled logit the mean is looked for, and the step of the curvature. */
const MEAN_AROUND = 3;
const STEP = 1e-3;

/**
 * The mean share of a group of boxes that differ more than chance, each box's own share drawn from a beta distribution
 * with mean μ and correlation ρ = 1/(α + β + 1), by maximum likelihood (Crowder 1978, Applied Statistics 27:34-37). Interval:
 * logit μ ± z/√(curvature of the profile log-likelihood).
 *
 * @returns null for fewer than two boxes with eggs, or where all eggs or none came through.
 * @example betaBinomial(crowder1978) // mean 0.36867, rho 0.01732
 */
export function betaBinomial(boxes: readonly Counted[], level = LEVEL): BetaBinomial | null {
  const counted = boxes.filter(({ of }) => of > 0).map(({ seen, of }) => ({ seen: Math.min(seen, of), of }));
  const seen = counted.reduce((sum, one) => sum + one.seen, 0);
  const of = counted.reduce((sum, one) => sum + one.of, 0);
  if (counted.length < 2 || seen === 0 || seen === of) return null;
  const fixed = counted.reduce((sum, one) => sum + logChoose(one), 0);
  const profile = (mean: number) =>
    lowest((rho) => minusLog(counted, unlogit(mean), unlogit(rho)), RHO_FROM, RHO_TO);
  const pooled = logit(seen / of);
  const best = lowest((mean) => profile(mean).value, pooled - MEAN_AROUND, pooled + MEAN_AROUND);
  const [below, above] = [profile(best.at - STEP).value, profile(best.at + STEP).value];
  const curvature = (below - 2 * best.value + above) / STEP ** 2;
  const half = jStat.normal.inv(0.5 + level / 2, 0, 1) / Math.sqrt(Math.max(1e-9, curvature));
  return {
    share: unlogit(best.at),
    from: unlogit(best.at - half),
    to: unlogit(best.at + half),
    rho: unlogit(profile(best.at).at),
    minusLogLikelihood: best.value - fixed,
  };
}

/** Without the binomial coefficients, which bear on nothing that is looked for. */
function minusLog(boxes: readonly Counted[], mean: number, rho: number): number {
  const size = 1 / rho - 1;
  const [alpha, beta] = [mean * size, (1 - mean) * size];
  const lead = jStat.gammaln(alpha) + jStat.gammaln(beta) - jStat.gammaln(size);
  return boxes.reduce(
    (sum, { seen, of }) =>
      sum + lead - jStat.gammaln(seen + alpha) - jStat.gammaln(of - seen + beta) + jStat.gammaln(of + size),
    0,
  );
}

const logChoose = ({ seen, of }: Counted): number =>
  jStat.gammaln(of + 1) - jStat.gammaln(seen + 1) - jStat.gammaln(of - seen + 1);

const GOLDEN = (Math.sqrt(5) - 1) / 2;
const NEAR = 1e-7;

/** Where a function with one valley is lowest between two places, by golden section. */
function lowest(
  of: (at: number) => number,
  from: number,
  to: number,
): { readonly at: number; readonly value: number } {
  let [left, right] = [from, to];
  let [a, b] = [right - GOLDEN * (right - left), left + GOLDEN * (right - left)];
  let [valueA, valueB] = [of(a), of(b)];
  while (right - left > NEAR * Math.max(1, to - from)) {
    if (valueA <= valueB) {
      [right, b, valueB] = [b, a, valueA];
      a = right - GOLDEN * (right - left);
      valueA = of(a);
    } else {
      [left, a, valueA] = [a, b, valueB];
      b = left + GOLDEN * (right - left);
      valueB = of(b);
    }
  }
  return valueA <= valueB ? { at: a, value: valueA } : { at: b, value: valueB };
}
