import jStat from 'jstat';
import { holm } from './holm.js';
import { type LogitShare, logitShare } from './quasi-binomial.js';
import type { Counted } from './wilson.js';

export interface NamedGroup {
  readonly name: string;
  readonly boxes: readonly Counted[];
}

/** Two groups beside each other. */
export interface Compared {
  readonly higher: string;
  readonly lower: string;
  /** Difference of the logits, not negative. */
  readonly difference: number;
  /** Chance of a difference as large were there none, before and after it is corrected for all that were compared. */
  readonly p: number;
  readonly corrected: number;
}

/**
 * Every pair of groups, with one dispersion from the boxes within all groups: φ = ΣX²/(N − G), at least 1 (ours), and
 * t(N − G) on the difference of logits, as a quasi-binomial regression on the group does it; corrected by Holm.
 *
 * @returns empty where no group has two boxes: nothing then tells how far boxes of one group differ, so nothing can be
 * compared.
 */
export function compareGroups(groups: readonly NamedGroup[]): Compared[] {
  const shares = groups.flatMap(({ name, boxes }) => {
    const share = logitShare(boxes);
    return share === null ? [] : [{ name, ...share }];
  });
  const boxes = shares.reduce((sum, one) => sum + one.boxes, 0);
  const freedom = boxes - shares.length;
  if (shares.length < 2 || freedom < 1) return [];
  const dispersion = Math.max(1, shares.reduce((sum, one) => sum + one.pearson, 0) / freedom);
  const pairs = shares.flatMap((one, i) =>
    shares.slice(i + 1).map((other) => pair(one, other, dispersion, freedom)),
  );
  const corrected = holm(pairs.map(({ p }) => p));
  return pairs.map((one, i) => ({ ...one, corrected: corrected[i] ?? 1 }));
}

type Named = LogitShare & { readonly name: string };

function pair(one: Named, other: Named, dispersion: number, freedom: number) {
  const [higher, lower] = one.logit >= other.logit ? [one, other] : [other, one];
  const difference = higher.logit - lower.logit;
  const t = difference / Math.sqrt(dispersion * (one.error ** 2 + other.error ** 2));
  return { higher: higher.name, lower: lower.name, difference, p: 2 * (1 - jStat.studentt.cdf(t, freedom)) };
}
