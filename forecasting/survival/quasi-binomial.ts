import jStat from 'jstat';
import { type Counted, LEVEL, type ShareInterval } from './wilson.js';

/** A group's share on the logit scale. */
export interface LogitShare {
  readonly boxes: number;
  readonly logit: number;
  /** Standard error of the logit before it is widened by the dispersion. */
  readonly error: number;
  /** Pearson's X² of the boxes about the group's share. */
  readonly pearson: number;
}

export const logit = (share: number): number => Math.log(share / (1 - share));
export const unlogit = (value: number): number => 1 / (1 + Math.exp(-value));

/**
 * What several boxes have in common: the logit of their pooled share, its binomial error, and how far the boxes stand from
 * it. Where every egg, or none, came through, half an egg is added on both sides (Haldane 1956, Ann. Hum. Genet.
 * 20:309: memory), for a logit has no end there.
 *
 * @returns null where no eggs were looked at.
 */
export function logitShare(boxes: readonly Counted[]): LogitShare | null {
  const counted = boxes.filter(({ of }) => of > 0);
  const seen = counted.reduce((sum, one) => sum + Math.min(one.seen, one.of), 0);
  const of = counted.reduce((sum, one) => sum + one.of, 0);
  if (of === 0) return null;
  const open = seen > 0 && seen < of;
  const share = open ? seen / of : (seen + 0.5) / (of + 1);
  const total = open ? of : of + 1;
  const pearson = counted.reduce(
    (sum, one) => sum + (Math.min(one.seen, one.of) - one.of * share) ** 2 / (one.of * share * (1 - share)),
    0,
  );
  const error = 1 / Math.sqrt(total * share * (1 - share));
  return { boxes: counted.length, logit: logit(share), error, pearson: open ? pearson : 0 };
}

/** A share of a group of boxes, and how many times more than chance they differ (as computed: chance itself is 1). */
export interface GroupShare extends ShareInterval {
  readonly dispersion: number;
}

/**
 * The share of a group of boxes with a quasi-binomial logit: dispersion φ = X²/(k − 1), interval
 * logit p ± t(k − 1)·√φ·error, back from the logit (McCullagh & Nelder 1989, Generalized Linear Models, ch. 4.5). φ below
 * 1 counts as 1 in the interval (ours): boxes do not differ less than chance.
 *
 * @returns null for fewer than two boxes with eggs: nothing then tells how far boxes differ.
 * @example quasiBinomial(crowder1978) // dispersion 2.43991, from 0.2489 to 0.4971
 */
export function quasiBinomial(boxes: readonly Counted[], level = LEVEL): GroupShare | null {
  const common = logitShare(boxes);
  if (common === null || common.boxes < 2) return null;
  const freedom = common.boxes - 1;
  const dispersion = common.pearson / freedom;
  const t = jStat.studentt.inv(0.5 + level / 2, freedom);
  const half = t * common.error * Math.sqrt(Math.max(1, dispersion));
  const of = boxes.reduce((sum, one) => sum + one.of, 0);
  const seen = boxes.reduce((sum, one) => sum + Math.min(one.seen, one.of), 0);
  return {
    share: seen / of,
    from: seen === 0 ? 0 : unlogit(common.logit - half),
    to: seen === of ? 1 : unlogit(common.logit + half),
    dispersion,
  };
}
