import jStat from 'jstat';

/** So many of so many, each box or each group of eggs. */
export interface Counted {
  readonly seen: number;
  readonly of: number;
}

/** A share, 0 to 1, with the interval that holds at its stated level. */
export interface ShareInterval {
  readonly share: number;
  readonly from: number;
  readonly to: number;
}

/** Intervals of survival hold 95 times in 100. */
export const LEVEL = 0.95;

/**
 * Wilson's score interval of one binomial share:
 *
 *     (p + z²/2n ± z √(p q / n + z²/4n²)) / (1 + z²/n)
 *
 * Wilson 1927, J. Am. Stat. Assoc. 22:209-212; method 3 of Newcombe 1998, Statistics in Medicine 17:857-872.
 *
 * @param of the number looked at; need not be whole where counting error has made it worth less
 * @returns null where nothing was looked at: there is no share of no eggs.
 * @example wilson({ seen: 81, of: 263 }) // 0.308, from 0.2553 to 0.3662
 */
export function wilson({ seen, of }: Counted, level = LEVEL): ShareInterval | null {
  if (!(of > 0) || !(seen >= 0)) return null;
  const share = Math.min(1, seen / of);
  const z = jStat.normal.inv(0.5 + level / 2, 0, 1);
  const middle = share + z ** 2 / (2 * of);
  const half = z * Math.sqrt((share * (1 - share)) / of + z ** 2 / (4 * of ** 2));
  const scale = 1 + z ** 2 / of;
  return {
    share,
    from: share === 0 ? 0 : Math.max(0, (middle - half) / scale),
    to: share === 1 ? 1 : Math.min(1, (middle + half) / scale),
  };
}
