import type { Finding, QualityFlag } from '../../../forecasting/quality/finding.js';
import { epochMillis, type Ruling, type Verdict } from '../../season/index.js';
import type { FlagEntry } from '../../store/index.js';

/** The season's moments are kept to the second: a ruling that ends in the same second as its finding covers it. */
const SECOND = 1000;

export const flagOfVerdict: Readonly<Record<Verdict, QualityFlag>> = { good: 1, suspect: 3, fail: 4 };

type NewFlag = Pick<FlagEntry, 'from' | 'to' | 'flag' | 'set' | 'note'>;

/** The ruling that stands over the whole of a finding; the newest where there are several. */
export function rulingOn(finding: Finding, rulings: readonly Ruling[]): Ruling | null {
  const covering = rulings.filter(
    ({ check, from, to }) =>
      check === finding.kind &&
      epochMillis(from) <= finding.from + SECOND &&
      epochMillis(to) + SECOND >= finding.to,
  );
  return covering.reduce<Ruling | null>(
    (newest, one) => (newest === null || one.at >= newest.at ? one : newest),
    null,
  );
}

/**
 * Flags of a year's readings. Those the checks did not doubt pass, but for the newest, which the spike test has not
 * judged yet. A finding doubts its stretch, but for what a person ruled of the same check; "suspect" and "fail" are
 * said by the ruling itself.
 */
export function flagsOf(
  reach: { readonly first: number; readonly beforeLast: number } | null,
  findings: readonly Finding[],
  rulings: readonly Ruling[],
): NewFlag[] {
  const passed: NewFlag[] =
    reach === null || reach.beforeLast < reach.first
      ? []
      : [{ from: reach.first, to: reach.beforeLast, flag: 1, set: 'judged', note: '' }];
  const doubted = findings
    .filter(({ flag }) => flag === 3 || flag === 4)
    .flatMap((finding) =>
      without(
        finding,
        rulings.filter(({ check }) => check === finding.kind),
      ).map(({ from, to }) => ({ from, to, flag: finding.flag, set: finding.kind, note: '' })),
    );
  const ruled = rulings
    .filter(({ verdict }) => verdict !== 'good')
    .map(
      ({ from, to, verdict, reason }): NewFlag => ({
        from: epochMillis(from),
        to: epochMillis(to) + SECOND - 1,
        flag: flagOfVerdict[verdict],
        set: 'ruling',
        note: reason,
      }),
    );
  return [...passed, ...doubted, ...ruled];
}

interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** A stretch without those that rulings speak about. */
function without({ from, to }: Stretch, rulings: readonly Ruling[]): Stretch[] {
  let left: Stretch[] = [{ from, to }];
  for (const ruling of rulings) {
    const [start, end] = [epochMillis(ruling.from), epochMillis(ruling.to) + SECOND - 1];
    left = left.flatMap((one) => {
      if (end < one.from || start > one.to) return [one];
      return [
        ...(start > one.from ? [{ from: one.from, to: start - 1 }] : []),
        ...(end < one.to ? [{ from: end + 1, to: one.to }] : []),
      ];
    });
  }
  return left;
}
